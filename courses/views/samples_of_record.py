"""Samples of the record for the sheet of parts: standings, what is asked, the board, words to sign, events."""

from datetime import datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from django.utils.safestring import SafeString

from courses.templatetags.words import ASKS

AT = datetime(2026, 4, 14, 10, 42, 7, tzinfo=ZoneInfo("UTC"))
_UNITS = (
    ("INS", "Inspect", "signed", 5, 5, 0),
    ("WAD", "Wash and decontaminate", "lapsed", 3, 4, 1),
    ("PLN", "Plan", "building", 5, 8, 0),
    ("CUT", "Cut and refine", "not_started", 0, 18, 17),
    ("SAF", "Protect people and water", "due", 5, 6, 1),
    ("COA", "Coat and cure", "ready", 6, 6, 0),
    ("HOM", "Hand over and maintain", "not_started", 0, 4, 0),
)
_NEEDS_A_HAND = ("ready", "due", "lapsed")
_WORDS = {
    "met": ("One formal COA-01, satisfactory, within 18 months", ""),
    "open": ("Five formal scenarios on two surfaces", "3 more are asked for; all so far are on one day."),
    "old": ("Bench B7, watched by an examiner", "The one on record is 13 months old; 12 months count."),
    "not_gathered": ("Two days of a log kept on the job", "A log of the job can’t be gathered here yet."),
}


def way() -> list[dict[str, Any]]:
    """Return a unit in every standing."""
    keys = ("code", "title", "standing", "done", "total", "old")
    return [dict(zip(keys, unit, strict=True)) for unit in _UNITS]


def evidence(outcome: str = "satisfactory") -> dict[str, Any]:
    """Return one piece of evidence."""
    return {"url": "#main", "words": "COA-01, paper, attempt 2", "when": AT, "outcome": outcome}


def asks() -> list[dict[str, Any]]:
    """Return one thing asked in every state."""
    have = {"met": (1, 1), "open": (2, 5), "old": (0, 1), "not_gathered": (0, 2)}
    return [
        {
            "words": _WORDS[state][0],
            "missing": _WORDS[state][1],
            "have": have[state][0],
            "count": have[state][1],
            "state": state,
            "evidence": [evidence()] * have[state][0],
        }
        for state in ASKS
    ]


def signature(withdrawn: bool = False) -> dict[str, Any]:
    """Return a signature, one that stands or one that was withdrawn."""
    gone = {"by": "Ines Sample", "when": AT, "reason": "The attempt was somebody else’s."} if withdrawn else None
    return {"by": "Ada Sample", "when": AT, "until": AT + timedelta(days=730), "url": "#main", "withdrawn": gone}


def elements() -> list[dict[str, Any]]:
    """Return an element on its way, one that is signed but questioned, and one whose signature was withdrawn."""
    hand = {"url": "#main", "words": "Sit the paper COA-01"}
    bare: dict[str, Any] = {"until": None, "asks": [], "missing": [], "hand": None, "signature": None}
    until = AT + timedelta(days=730)
    gone = ["The signature was withdrawn."]
    return [
        {**bare, "code": "COA1", "title": "Release the surface", "standing": "building", "asks": asks(), "hand": hand},
        {
            **bare,
            "code": "COA2",
            "title": "Read the day",
            "standing": "signed",
            "until": until,
            "questioned": True,
            "signature": signature(),
        },
        {
            **bare,
            "code": "COA3",
            "title": "Choose, lay, level",
            "standing": "building",
            "missing": gone,
            "signature": signature(withdrawn=True),
        },
    ]


def events() -> list[dict[str, Any]]:
    """Return the newest events of a record: with and without words, with and without a way on."""
    rows = (
        ("signed", "COA2 Read the day: signed", "Ada Sample, until April 14, 2028.", "#main"),
        ("met", "Paper COA-01, attempt 2: satisfactory", "", "#main"),
        ("people", "Became a trainee in Sample", "", ""),
    )
    return [
        {"when": AT - timedelta(days=day), "symbol": symbol, "title": title, "words": words, "url": url}
        for day, (symbol, title, words, url) in enumerate(rows)
    ]


def deed() -> dict[str, Any]:
    """Return words to sign, with what they stand on."""
    words = SafeString(
        "I, <b>Ada Sample</b>, have examined the evidence listed here and judge <b>Tom Sample</b> competent in "
        "<b>COA2 Read the day</b>, requirements version 0, on April 14, 2026, until April 14, 2028."
    )
    return {"words": words, "count": 1, "fingerprint": "7f3a 91c2 0be4 d615", "taught": "none of this"}


def board() -> dict[str, Any]:
    """Return two people on every unit: one in every standing and stuck, one who has not begun."""
    heads = [{"code": unit["code"], "title": unit["title"]} for unit in way()]
    busy = [{**unit, "url": "#main" if unit["standing"] in _NEEDS_A_HAND else None, "stuck": False} for unit in way()]
    busy[2]["stuck"] = True
    idle = [{**unit, "standing": "not_started", "done": 0, "old": 0, "url": None, "stuck": False} for unit in way()]
    rows = [
        {"name": "Tom Sample", "url": "#main", "cells": busy},
        {"name": "Maximiliana Sample-Featherstonehaugh", "url": "#main", "cells": idle},
    ]
    return {"heads": heads, "rows": rows}
