"""Samples for the sheet of parts: each part once in every state. Nothing here is a trainee's."""

from typing import Any
from uuid import UUID

from django import forms

from courses.templatetags.words import DECISIONS, OUTCOMES, STANDINGS, VERDICTS
from courses.views.samples_of_figures import samples_of_figures
from courses.views.samples_of_record import AT, board, deed, elements, events, way

KEY = UUID(int=0)
SYMBOLS = (
    "mark today lesson scenario met partly miss open na none part ready signed due lapsed caution left right "
    "nosignal two key record people school chain up down add take"
)


class EveryField(forms.Form):
    """One field of each kind, as the template pack writes them."""

    plain = forms.CharField(help_text="A line of help.")
    choice = forms.ChoiceField(choices=[("p800", "P800"), ("p1000", "P1000")])
    long = forms.CharField(widget=forms.Textarea(attrs={"rows": 3}), required=False)
    lights = forms.ChoiceField(choices=[("lamp", "Lamp"), ("even", "Even light")], widget=forms.RadioSelect)
    agreed = forms.BooleanField(label="I have read it")


def sheet_of_samples() -> dict[str, Any]:
    """Return what the sheet shows."""
    return {
        "standings": list(STANDINGS),
        "verdicts": list(VERDICTS),
        "outcomes": list(OUTCOMES),
        "findings": findings(),
        "met": [
            _finding("met", "points", "Dew point within half a degree", [("yours", "52.0 °F"), ("key", "52.1 °F")])
        ],
        "not_applicable": [_finding("not_applicable", "needed", "A second humidity meter", [])],
        "tasks": [{"number": number, **task} for number, task in enumerate(tasks(), start=1)],
        "save_url": "#main",
        "form": EveryField({"plain": "x"}),
        "facts": [("Surface", "gel coat, white"), ("Air, humidity", "64.0 °F, 65 %")],
        "symbols": SYMBOLS.split(),
        "decisions": list(DECISIONS),
        "units": way(),
        "elements": elements(),
        "events": events(),
        "deed": deed(),
        **board(),
        **samples_of_figures(),
    }


def _finding(verdict: str, severity: str, title: str, values: list[tuple[str, str]], **rest: Any) -> dict[str, Any]:
    because = "A sentence says why, in the words of the trade."
    return {"verdict": verdict, "severity": severity, "title": title, "values": values, "because": because, **rest}


def findings() -> list[dict[str, Any]]:
    """Return a finding in every state that stands open, with a lesson that is taught and one that is not."""
    taught = {"title": "Air, surface and the dew point", "url": "#found"}
    untaught = {"title": "Rinse water and slurry", "url": ""}
    sheet = {"words": "Estimating condensation before coating", "mark": "read"}
    practice = {"words": "Practice of the trade", "mark": "no published source"}
    limit = [("margin", "1.7 K"), ("limit", "at least 3.0 K")]
    order = [("in order", "3 of 4 steps")]
    where = [("your answer", "none")]
    return [
        _finding(
            "not_met", "critical", "No coating under the limit", limit, lesson=taught, source=sheet, points=0, of=4
        ),
        _finding("partly", "points", "Steps in their order", order, lesson=taught, source=practice, points=1.5, of=2),
        _finding("not_answered", "needed", "Water goes somewhere allowed", where, lesson=untaught, points=0, of=3),
    ]


def _side(words: str, value: str) -> dict[str, Any]:
    return {"words": words, "at": AT, "client_key": KEY, "fields": [("value", value)]}


def tasks() -> list[dict[str, Any]]:
    """Return a task of every kind, and every state an answer can be in."""
    ways = [
        {"id": "now", "words": "Start coating now", "chosen": True},
        {"id": "wait", "words": "Wait", "chosen": False},
    ]
    common = {"client_key": KEY, "seq": 1, "hint": "", "saved_at": None}
    dew = {"kind": "quantity", "title": "Dew point", "ask": "Of the air in the shed", "unit": "°F", **common}
    conflict = {"seen": 2, "mine": _side("53.1 °F", "53.1"), "theirs": _side("52.0 °F", "52")}
    return [
        {"id": "kept", **dew, "value": "52.0", "saved_at": AT},
        {"id": "wrong", **dew, "value": "damp", "error": "Enter a number such as 52.0, or 11.1 °C."},
        {"id": "twice", **dew, "value": "53.1", "conflict": conflict, "saved_at": AT},
        {"id": "late", **dew, "value": "53.1", "late_by": "40 s"},
        {"id": "one", "kind": "choice", "title": "Decision", "ask": "What do you do?", "options": ways, **common},
        {
            "id": "some",
            "kind": "many",
            "title": "Next steps",
            "ask": "Which?",
            "options": ways,
            "none": False,
            **common,
        },
        {"id": "either", "kind": "yes_no", "title": "Call", "ask": "May it start?", "value": "true", **common},
        {
            "id": "why",
            "kind": "text",
            "title": "Why",
            "ask": "In your words",
            "value": "",
            **common,
            "hint": "Two lines.",
        },
    ]
