"""A plan as short texts: one step a line, or all steps in one line for a link.

A step is its op and what it was given: ``sand grade=P1500 passes=4 zone=bow``. Steps of a link stand between
semicolons. Whether an op exists and takes these settings is not asked here: the model surface says so.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Final

from courses.trade.errors import TradeError

__all__ = ["PlanTextRefused", "plan_text", "read_plan_text", "read_token", "token"]

BETWEEN: Final = ";"
"""What stands between two steps of a link."""
LISTS: Final = ("speeds_rpm",)
"""Settings that are a list of numbers, with commas between them."""
WORDS: Final = ("op", "zone", "product", "grade")
"""Settings that stay words even where they look like a number."""
_NUMBER: Final = re.compile(r"-?\d{1,7}(\.\d{1,6})?")
_AWKWARD: Final = re.compile(r"[\s;=]+")

Value = str | int | float | bool | list[int | float]


class PlanTextRefused(TradeError):
    """A text that is no step: what stands there, and how it would be right."""


def read_token(text: str) -> dict[str, object]:
    """The step that ``text`` writes, as the doors take it; numbers as numbers, lists as lists.

    Raises `PlanTextRefused` where a part is no ``name=value`` or a name stands twice.

    >>> read_token("cut pad=wool speeds_rpm=600,900,1500 sets=until_clear force_n=30")
    {'op': 'cut', 'pad': 'wool', 'speeds_rpm': [600, 900, 1500], 'sets': 'until_clear', 'force_n': 30}
    """
    op, *parts = text.split()
    step: dict[str, object] = {"op": op}
    for part in parts:
        name, equals, value = part.partition("=")
        if not (name and equals and value):
            raise PlanTextRefused(f"{part[:40]!r} is no setting; write it as name=value, such as grade=P1500.", "plan")
        if name in step:
            raise PlanTextRefused(f"{name[:40]!r} stands twice in one step; keep one.", "plan")
        step[name] = _value(name, value)
    return step


def _value(name: str, text: str) -> Value:
    if name in LISTS:
        numbers = [_number(part) for part in text.split(",")]
        return [one for one in numbers if one is not None] if None not in numbers else text
    if name in WORDS:
        return text.replace("_", " ") if name == "product" else text
    number = _number(text)
    return text if number is None else number


def _number(text: str) -> int | float | None:
    if not _NUMBER.fullmatch(text):
        return None
    return float(text) if "." in text else int(text)


def token(step: Mapping[str, object]) -> str:
    """The text of a ``step``: `read_token` turned round. A blank within a product is written as a low line.

    >>> token({"op": "sand", "grade": "P1500", "passes": 4, "zone": "bow"})
    'sand grade=P1500 passes=4 zone=bow'
    >>> read_token(token({"op": "acid", "product": "rust remover"}))
    {'op': 'acid', 'product': 'rust remover'}
    """
    return " ".join([str(step["op"]), *(f"{name}={_written(step[name])}" for name in step if name != "op")])


def _written(value: object) -> str:
    if isinstance(value, list | tuple):
        return ",".join(_written(one) for one in value)
    if isinstance(value, float):
        return f"{value:.6f}".rstrip("0").rstrip(".")
    return _AWKWARD.sub("_", str(value))


def read_plan_text(text: str) -> list[str]:
    """The texts of the steps in ``text``: of a link, or of a field with one step a line.

    >>> read_plan_text("wash; sand grade=P1500\\n wipe")
    ['wash', 'sand grade=P1500', 'wipe']
    """
    lines = text.replace(BETWEEN, "\n").splitlines()
    return [" ".join(line.split()) for line in lines if line.strip()]


def plan_text(tokens: Iterable[str]) -> str:
    """All steps in one line, for a link.

    >>> plan_text(["wash", "sand grade=P1500"])
    'wash;sand grade=P1500'
    """
    return BETWEEN.join(tokens)
