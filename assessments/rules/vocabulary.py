"""What the words of the language mean, on values that are all there."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping, Sequence
from typing import Any

SLACK = 1e-9
Steps = Sequence[Mapping[str, Any]]


def near(a: float, b: float, tolerance: float) -> bool:
    """Return whether a lies within the tolerance of b, the limit included.

    The slack of one part in a thousand million makes 1.1 lie within 0.1 of 1.0, which in binary fractions it doesn't.

    >>> near(1.1, 1.0, 0.1), abs(1.1 - 1.0) <= 0.1
    (True, False)
    """
    return abs(a - b) <= tolerance + _slack(a, b)


def near_rel(a: float, b: float, percent: float) -> bool:
    """Return whether a lies within so many per cent of b, the limit included.

    >>> near_rel(105.0, 100.0, 5), near_rel(105.1, 100.0, 5)
    (True, False)
    """
    return abs(a - b) <= abs(float(b)) * percent / 100 + _slack(a, b)


def _slack(a: float, b: float) -> float:
    return SLACK * max(1.0, abs(a), abs(b))


def before(steps: Steps, a: str, b: str) -> bool | None:
    """Return whether the last `a` stands before the first `b`; False when one of them is absent, None when an op is.

    >>> before([{"op": "wash"}, {"op": "sand"}], "wash", "sand")
    True
    """
    ops = ops_of(steps)
    return None if ops is None else a in ops and b in ops and _last(ops, a) < ops.index(b)


def starts_before(steps: Steps, a: str, b: str) -> bool | None:
    """Return whether the first `a` stands before the first `b`; False when one of them is absent.

    >>> starts_before([{"op": "call"}, {"op": "flush"}, {"op": "call"}], "call", "flush")
    True
    """
    ops = ops_of(steps)
    return None if ops is None else a in ops and b in ops and ops.index(a) < ops.index(b)


def after_each(steps: Steps, a: str, b: str) -> bool | None:
    """Return whether the step after each `a` is a `b`; True where there is no `a`.

    >>> after_each([{"op": "sand"}, {"op": "wipe"}, {"op": "sand"}], "sand", "wipe")
    False
    """
    ops = ops_of(steps)
    return None if ops is None else all(ops[place + 1 : place + 2] == [b] for place, op in enumerate(ops) if op == a)


def ops_of(steps: Sequence[Mapping[str, Any] | None]) -> list[str] | None:
    """Return the act of each step, None where a step or its act is missing.

    >>> ops_of([{"op": "wash"}, {"op": "sand"}])
    ['wash', 'sand']
    """
    try:
        ops = [step["op"] for step in steps]  # type: ignore[index]
    except TypeError:
        return None
    return None if None in ops else ops


def _last(ops: list[str], op: str) -> int:
    return len(ops) - 1 - ops[::-1].index(op)


def overlap(xs: Sequence[Any], ys: Sequence[Any]) -> int:
    """Return how many items of xs are in ys.

    >>> overlap(["a", "b"], ["b", "c"])
    1
    """
    return sum([x in ys for x in xs])


def norm(text: str) -> str:
    """Return the text in one form: compatible letters, no capitals, trimmed, single spaces.

    >>> norm("  Leave   IT ")
    'leave it'
    """
    if text.isascii():
        return " ".join(text.casefold().split())
    return " ".join(unicodedata.normalize("NFKC", unicodedata.normalize("NFKC", text).casefold()).split())


def mentions(text: str, words: Sequence[str]) -> bool:
    """Return whether one of the words stands in the text, whole.

    >>> mentions("It remains, a bit.", ["remains"]), mentions("remainder", ["remain"])
    (True, False)
    """
    spoken = _spaced(text)
    return any(_spaced(word) in spoken for word in words if _spaced(word).strip())


def _spaced(text: str) -> str:
    letters = "".join(letter if letter.isalnum() else " " for letter in norm(text))
    return f" {' '.join(letters.split())} "
