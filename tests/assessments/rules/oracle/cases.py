"""A schema with everything in it, cases of it drawn by chance, and functions that may know nothing or fail."""

from __future__ import annotations

from random import Random
from typing import Any

from assessments.rules import Function, Kind, Schema, bind, choice, integer, many, num, record, text, truth

WORDS = ("wait", "sand", "wash", "dry")
ROW = record(
    {
        "op": choice(WORDS),
        "kind": choice(WORDS),
        "n": integer(),
        "um": num(),
        "wet": truth(),
        "grit": integer(opt=True),
        "note": text(300, opt=True),
    }
)
LOOSE_ROW = record({**ROW.fields, "op": choice(WORDS, opt=True), "wet": truth(opt=True), "um": num(opt=True)}, opt=True)
"""A row that may be missing, and of which even the act may."""
SCHEMA = Schema(
    {
        "facts": record(
            {
                "film": num(),
                "rh": num(step=0.1),
                "coarse": num(step=0.3),
                "zero": num(),
                "whole": integer(),
                "maybe": num(opt=True),
                "cold": truth(),
                "decision": choice(WORDS),
                "label": text(30),
                "story": text(300),
                "rows": many(ROW, 12),
                "readings": many(num(), 6),
            }
        ),
        "answer": record(
            {
                "margin": num(opt=True),
                "packs": integer(opt=True),
                "decision": choice(WORDS, opt=True),
                "note": text(opt=True),
                "sure": truth(opt=True),
                "picks": many(choice(WORDS), 4, opt=True),
                "steps": many(ROW, 12, opt=True),
                "acts": many(LOOSE_ROW, 6, opt=True),
                "holes": many(record(ROW.fields, opt=True), 6, opt=True),
                "loose": many(num(opt=True), 5, opt=True),
                "place": record({"where": choice(WORDS, opt=True), "at_h": num(opt=True)}, opt=True),
            }
        ),
        "model": record({"film": num(opt=True)}, opt=True),
        "key": record(
            {
                "dew": num(),
                "packs": integer(),
                "decision": choice(WORDS),
                "short": truth(),
                "kit": many(choice(WORDS), 4),
            }
        ),
    }
)
NUMBERS = (0.0, -0.0, 1.0, 2.5, 0.1, 1 / 3, 41.26, 40.0, -7.125, 1e-7, 3.3333333, 1e12, -1e12, 123456.7890123)
TEXTS = ("", "It  stays", "it stays", "left, a BIT.", "Ünïcode ﬁlm", "x" * 45, "stays " * 20)


def draw(chance: Random, kind: Kind, lack: float, full: float) -> Any:
    """Return a value of a kind; `lack` is the share that is missing where it may be, `full` that of full lists."""
    if kind.opt and chance.random() < lack:
        return None
    if kind.name == "rec":
        return {name: draw(chance, each, lack, full) for name, each in kind.fields.items()}
    if kind.name == "list" and kind.item:
        count = kind.max if chance.random() < full else chance.randrange(kind.max + 1)
        return [draw(chance, kind.item, lack, full) for _ in range(count)]
    if kind.name == "str":
        return chance.choice(TEXTS)[: kind.max]
    if kind.name == "enum":
        return chance.choice(kind.vals)
    if kind.name == "num":
        common = round(chance.uniform(-20, 60), chance.choice([1, 2, 7]))
        return chance.choice(NUMBERS) if chance.random() < 0.5 else common
    return chance.random() < 0.5 if kind.name == "bool" else chance.choice([0, 1, 2, 3, 1500, -4, 10**9])


def documents(chance: Random) -> list[dict[str, Any]]:
    """Return cases as a shell hands them in: one full to the limit, one with nothing answered, some by chance."""
    shares = ((0.0, 1.0), (1.0, 0.0), (0.3, 0.0), (0.1, 0.0), (0.5, 0.3), (0.0, 0.0))
    whole = record(SCHEMA.names)
    return [draw(chance, whole, lack, full) for lack, full in shares]


def bound(chance: Random) -> list[dict[str, Any]]:
    """Return cases as rules read them."""
    return [bind(SCHEMA, document) for document in documents(chance)]


def _ends(value: float) -> float:
    if value > 30:
        raise ValueError("the table ends at 30")
    return value / 7


def _half(value: float) -> float | None:
    return None if value < 0 else value / 2


def _odd(value: float) -> bool | None:
    return None if value == 0 else int(value) % 2 == 1


def _whole(value: float) -> int:
    return int(value / 3)


FUNCTIONS = (
    Function("ends", (num(),), num(), 1, _ends),
    Function("half", (num(),), num(opt=True), 1, _half),
    Function("odd", (num(),), truth(), 1, _odd),
    Function("whole", (num(),), integer(), 1, _whole),
)
