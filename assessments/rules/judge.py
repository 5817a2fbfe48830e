"""Judges a case by a prepared book: one finding for each rule, and how the whole came out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from assessments.rules.bind import bind
from assessments.rules.checking.checker import Checked
from assessments.rules.compiler import Run
from assessments.rules.findings import Judged, Mark
from assessments.rules.prepare import PreparedBook, ReadyRule
from assessments.rules.rule import Rule
from assessments.rules.sentences.compared import Compared, compared
from assessments.rules.sentences.explain import explain
from assessments.rules.sentences.spoken import Show, plain
from assessments.rules.sentences.unlooked import unlooked
from assessments.rules.silence import Rests, Settled, settle, silenced
from assessments.rules.trace import Trace, packed, unpacked

_DECIMALS = 2
_SLACK = 1e-9
Settlements = dict[str, Settled]
Stored = Mapping[str, Any]
Told = list[tuple[str, list[str]]]
"""Sentences by the name of the part they are about."""


def judge(prepared: PreparedBook, case: Mapping[str, Any]) -> Mark:
    """Return the mark of a case of plain values, which is bound here to the book's schema.

    Raises CaseRefused where it doesn't fit; nothing a rule does can raise.
    """
    bound = silenced(bind(prepared.schema, case), prepared.rests)
    findings, traces, runs = [], [], prepared.compiled.runs(bound)
    for ready in prepared.rules:
        parts = _settled(ready, runs, bound, prepared.rests)
        findings.append(finding_of(ready, parts))
        traces += [(ready.rule.code, name, Trace(found.events)) for name, found in parts.items()]
    return Mark(tuple(findings), prepared.digest, packed(traces))


def explain_finding(
    prepared: PreparedBook, code: str, trace: Stored, show: Show = plain, case: Stored | None = None
) -> Told:
    """Return, for each part of a rule that was looked at, its name and its stored trace in sentences.

    With the case it was judged on, a step that decided is named.
    """
    kept = _looked_at(prepared, code, trace)
    return [(name, explain(checked, found, show, case)) for name, checked, found in kept]


def unlooked_finding(
    prepared: PreparedBook, code: str, trace: Stored, show: Show = plain, case: Stored | None = None
) -> Told:
    """Return, for each part of a rule that was looked at in part, its name and what was left out, in sentences."""
    left_out = [
        (name, unlooked(checked, found, show, case)) for name, checked, found in _looked_at(prepared, code, trace)
    ]
    return [(name, said) for name, said in left_out if said]


def _looked_at(prepared: PreparedBook, code: str, trace: Stored) -> list[tuple[str, Checked, Trace]]:
    """Return the parts of a rule of which a stored trace tells: name, rule text and events."""
    parts = prepared.rule(code).parts
    kept = [(name, part.checked, unpacked(dict(trace), code, name)) for name, part in parts.items()]
    return [each for each in kept if each[2].events]


def _settled(ready: ReadyRule, runs: Sequence[Run], case: Mapping[str, Any], rests: Rests) -> Settlements:
    """Return what the parts of a rule came to; behind a guard that doesn't hold nothing is looked at."""
    found: Settlements = {}
    for name, part in ready.parts.items():
        found[name] = settle(part, runs[part.place], ready.reads, case, rests)
        if name == "when" and found[name].value is not True:
            break
    return found


def finding_of(ready: ReadyRule, parts: Settlements) -> Judged:
    """Return the finding of a rule from what its parts came to, by name; a part that wasn't looked at is left out."""
    rule = ready.rule
    failed = next((found.failed for found in parts.values() if found.failed), None)
    verdict, points = ("not_answered", 0.0) if failed else _verdict(rule, parts)
    return Judged(
        rule.code,
        verdict,
        rule.severity,
        points,
        0 if verdict == "not_applicable" else rule.points,
        rule.sentence,
        rule.because,
        rule.lesson,
        rule.source,
        _values(ready, parts),
        failed,
    )


def _values(ready: ReadyRule, parts: Settlements) -> tuple[Compared, ...]:
    """Return what was compared, each value once; the guard's only where the guard is all that was looked at."""
    shown = {name: found for name, found in parts.items() if name != "when" or len(parts) == 1}
    every = [each for name, found in shown.items() for each in compared(ready.parts[name].checked, found.whole)]
    return tuple(each for place, each in enumerate(every) if each not in every[:place])


def _verdict(rule: Rule, parts: Settlements) -> tuple[str, float]:
    """Return verdict and points of a rule of which no part failed."""
    if rule.when is not None and parts["when"].value is not True:
        return ("not_applicable" if parts["when"].value is False else "not_answered"), 0
    if rule.steps:
        return _by_steps(rule, parts)
    if rule.share is not None:
        return _by_share(rule.points, parts["share"].value)
    return _WHOLE[parts["test"].value], rule.points if parts["test"].value else 0


_WHOLE = {True: "met", False: "not_met", None: "not_answered"}


def _by_steps(rule: Rule, parts: Settlements) -> tuple[str, float]:
    """Each step that holds gives its own points."""
    values = [parts[f"steps[{place}]"].value for place in range(len(rule.steps))]
    earned = sum(step.points for step, value in zip(rule.steps, values, strict=True) if value)
    if all(values):
        return "met", rule.points
    if earned:
        return "partly", earned
    return ("not_met" if False in values else "not_answered"), 0


def _by_share(points: float, share: float | None) -> tuple[str, float]:
    """A share from 0 to 1 gives that part of the points; below is nothing, above is all."""
    if share is None:
        return "not_answered", 0
    if share >= 1 - _SLACK:
        return "met", points
    return ("partly", round(points * share, _DECIMALS)) if share > _SLACK else ("not_met", 0)
