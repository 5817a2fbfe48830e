"""The rule of silence: what was not answered is not wrong."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from assessments.rules.compiler import Run
from assessments.rules.faults import FunctionFailed
from assessments.rules.frame import RawEvent
from assessments.rules.nodes import Path
from assessments.rules.prepare import ReadyPart
from assessments.rules.trace import Event

ANSWER = "answer"
Rests = Mapping[Path, tuple[Path, ...]]


@dataclass(frozen=True, slots=True)
class Settled:
    """What a part of a rule came to: a value, or None for not answered, or a reason why it failed to judge.

    `events` are as they are stored, `whole` the same with whole operands.
    """

    value: Any
    events: tuple[Event, ...]
    whole: tuple[RawEvent, ...]
    failed: str | None = None


def settle(ready: ReadyPart, found: Run, reads: Iterable[Path], case: Mapping[str, Any], rests: Rests) -> Settled:
    """Return what a run of a part comes to, silence told from error; `reads` are the paths of the whole rule.

    A False that turns unknown once `answered(…)` of an unanswered value is unknown rests on silence alone. An unknown
    with nothing unanswered behind it is a failure to judge.
    """
    value, failed = found.value, found.failed
    if failed is None and value is None and not unanswered(reads, case, rests):
        failed = f"The {ready.part.name} came out unknown though every answer it reads was given."
    if value is False and ready.asks_answered and _only_silence(ready, case, rests):
        value = None
    return Settled(value, found.events, found.whole, failed)


def _only_silence(ready: ReadyPart, case: Mapping[str, Any], rests: Rests) -> bool:
    return bool(unanswered(ready.checked.reads, case, rests)) and _silent(ready, case) is None


def _silent(ready: ReadyPart, case: Mapping[str, Any]) -> Any:
    """Return what a part gives where silence leaves `answered(…)` unknown."""
    try:
        return ready.alone.silent(case)[0]
    except FunctionFailed:
        return None


def unanswered(reads: Iterable[Path], case: Mapping[str, Any], rests: Rests) -> list[Path]:
    """Return the answer paths a rule reads, itself or through what rests on them, that hold nothing somewhere.

    >>> unanswered([("answer", "te")], {"answer": {"te": None}}, {})
    [('answer', 'te')]
    """
    paths: list[Path] = []
    for path in sorted(reads):
        paths += [path] if path[0] == ANSWER else _rested(path, rests)
    return [path for path in paths if lacks(case, path)]


def _rested(path: Path, rests: Rests) -> Sequence[Path]:
    """Return the answers behind a computed path: those of the longest declared path it lies under."""
    under = [declared for declared in rests if path[: len(declared)] == declared]
    return rests[max(under, key=len)] if under else ()


def lacks(value: Any, path: Path) -> bool:
    """Return whether nothing is there at a path, in any item where the path walks a list.

    >>> lacks({"rows": [{"n": 1}, {"n": None}]}, ("rows", "[]", "n"))
    True
    """
    if value is None or not path:
        return value is None
    if path[0] == "[]":
        return any(lacks(item, path[1:]) for item in value)
    return lacks(value.get(path[0]), path[1:])


def silenced(case: dict[str, Any], rests: Rests) -> dict[str, Any]:
    """Return the case with everything unknown that rests on an unanswered answer: no plan, no verdict on it.

    >>> silenced({"answer": {"plan": None}, "model": {"film_um": 40.0}}, {("model",): (("answer", "plan"),)})["model"]
    """
    for path, on in rests.items():
        if any(lacks(case, answer) for answer in on):
            case = _without(case, path)
    return case


def _without(value: Any, path: Path) -> Any:
    if not path or value is None:
        return None
    return {**value, path[0]: _without(value.get(path[0]), path[1:])}
