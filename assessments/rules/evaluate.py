"""Runs a checked rule on a bound case."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from assessments.rules.checker import Checked
from assessments.rules.closures import closure, tested
from assessments.rules.faults import FunctionFailed, Refused
from assessments.rules.frame import Frame, RawEvent, Run
from assessments.rules.trace import Trace, compact


@dataclass(frozen=True, slots=True)
class Judgement:
    """What one run gave: the value (None is unknown), every event whole, and the function that failed, if one did."""

    value: Any
    events: tuple[RawEvent, ...]
    failed: str | None = None


def runnable(checked: Checked) -> Run:
    """Return the closure of a rule, to be kept and run on many cases. A rule with errors is refused."""
    if checked.root is None:
        raise Refused(f"The rule can't be run: {checked.errors[0].message}")
    return tested(checked.root) if checked.root.sort.name == "bool" else closure(checked.root)


def run(rule: Run, case: Mapping[str, Any], silent: frozenset[str] = frozenset()) -> Judgement:
    """Return what a rule gives on a bound case, every event recorded."""
    events: list[RawEvent] = []
    frame = Frame(case, events, silent)
    failed = None
    try:
        value = rule(frame)
    except FunctionFailed as failure:
        value, failed = None, str(failure)
    return Judgement(value, tuple(events), failed)


def evaluate(checked: Checked, case: Mapping[str, Any]) -> tuple[Any, Trace]:
    """Return the value of a rule or value expression on a bound case, and the trace of how it came about.

    >>> from assessments.rules.checker import check
    >>> from assessments.rules.kinds import Schema, num
    >>> checked = check("te >= 15", Schema({"te": num("h", opt=True)}))
    >>> evaluate(checked, {"te": 20.4})
    (True, Trace(events=((2, True, 20.4, 15),), cut=False, failed=None))
    >>> evaluate(checked, {"te": None})[0] is None
    True
    """
    found = run(runnable(checked), case)
    return found.value, compact(found.events, found.failed)
