"""Marking as the closures give it: an independent back end that generated code is held against."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from assessments.rules.bind import bind
from assessments.rules.checking.checker import Checked
from assessments.rules.compiler import DRAWN
from assessments.rules.faults import FunctionFailed, Refused
from assessments.rules.findings import Mark
from assessments.rules.judge import finding_of
from assessments.rules.nodes import Call, Path
from assessments.rules.prepare import PreparedBook, ReadyRule
from assessments.rules.silence import Rests, silenced, unanswered
from assessments.rules.trace import Trace, packed
from tests.assessments.rules.oracle.closures import closure, tested
from tests.assessments.rules.oracle.frame import Frame, RawEvent, Run, compact


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
    """Return the value of a rule or value expression on a bound case, and the trace of how it came about."""
    found = run(runnable(checked), case)
    return found.value, compact(found.events, found.failed)


@dataclass(frozen=True, slots=True)
class Ready:
    """One expression of a rule: its name, checked, as a closure."""

    name: str
    checked: Checked
    run: Run


def asks_answered(ready: Ready) -> bool:
    """Whether it asks if something was answered, so that a False may only mean silence."""
    return any(isinstance(node, Call) and node.name == "answered" for node in ready.checked.nodes)


@dataclass(frozen=True, slots=True)
class Settled:
    """What a part of a rule came to: a value, or None for not answered, or a reason why it failed to judge."""

    value: Any
    whole: tuple[RawEvent, ...]
    failed: str | None = None


def settle(ready: Ready, reads: Iterable[Path], case: Mapping[str, Any], rests: Rests) -> Settled:
    """Return what a part comes to on a bound case, silence told from error; `reads` are the paths of the whole rule.

    A False that turns unknown once `answered(…)` of an unanswered value is unknown rests on silence alone. An unknown
    with nothing unanswered behind it is a failure to judge.
    """
    found = run(ready.run, case)
    if found.failed:
        return Settled(None, found.events, found.failed)
    if found.value is None and not unanswered(reads, case, rests):
        said = f"The {ready.name} came out unknown though every answer it reads was given."
        return Settled(None, found.events, said)
    if found.value is False and asks_answered(ready) and _only_silence(ready, case, rests):
        return Settled(None, found.events)
    return Settled(found.value, found.events)


def _only_silence(ready: Ready, case: Mapping[str, Any], rests: Rests) -> bool:
    again: Judgement = run(ready.run, case, frozenset(case) - DRAWN)
    return again.value is None and bool(unanswered(ready.checked.reads, case, rests))


Settlements = dict[str, Settled]


def judge(prepared: PreparedBook, case: Mapping[str, Any]) -> Mark:
    """Return the mark of a case of plain values, which is bound here to the book's schema.

    Raises CaseRefused where it doesn't fit; nothing a rule does can raise.
    """
    bound = silenced(bind(prepared.schema, case), prepared.rests)
    findings, traces = [], []
    for ready in prepared.rules:
        parts = _settled(ready, bound, prepared.rests)
        findings.append(finding_of(ready, parts))
        traces += [(ready.rule.code, name, compact(found.whole)) for name, found in parts.items()]
    return Mark(tuple(findings), prepared.book.digest, packed(traces))


def _settled(ready: ReadyRule, case: Mapping[str, Any], rests: Rests) -> Settlements:
    """Return what the parts of a rule came to; behind a guard that doesn't hold nothing is looked at."""
    found: Settlements = {}
    for name, part in ready.parts.items():
        found[name] = settle(Ready(name, part.checked, runnable(part.checked)), ready.reads, case, rests)
        if name == "when" and found[name].value is not True:
            break
    return found
