"""Tries one rule on one case: the `try_rule` door, as a pure function."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from assessments.rules.bind import bind
from assessments.rules.checking.checker import Checked, check
from assessments.rules.evaluate import evaluate
from assessments.rules.faults import Refused, TrialRefused, listed, nearest, offered
from assessments.rules.functions import Function
from assessments.rules.kinds import Schema
from assessments.rules.sentences.explain import explain
from assessments.rules.trace import Event

_KEYS = ("schema", "case", "rule")
_CAME_OUT = {True: "The rule is met", False: "The rule is not met", None: "The rule can't be told"}


def try_rule(request: object, functions: Iterable[Function] = ()) -> dict[str, Any]:
    """Return what a rule gives on a case: verdict, sentence, trace, and every error and warning.

    The verdict is the bare truth value, before the rule of silence. A rule with errors is an answer (`ok` False); a
    request, schema or case that can't be read raises TrialRefused.

    >>> schema = {"t": "rec", "fields": {"te": {"t": "num", "unit": "h"}}}
    >>> try_rule({"schema": schema, "case": {"te": 20}, "rule": "te >= 24"})["sentence"]
    'The rule is not met: te 20\\xa0h is not at least 24\\xa0h.'
    """
    request = _read(request)
    try:
        schema = Schema.of(request["schema"])
        case = bind(schema, request["case"])
    except Refused as refused:
        raise TrialRefused(str(refused)) from None
    checked = check(request["rule"], schema, tuple(functions))
    if not checked.ok:
        return _answer(checked, None, checked.errors[0].message, [])
    verdict, trace = evaluate(checked, case)
    told = explain(checked, trace, case=case)
    because = trace.failed or "; ".join(told)
    sentence = f"{_CAME_OUT[verdict]}: {because}".rstrip(": .") + "."
    events = [_event(checked, event, said) for event, said in zip(trace.events, told, strict=False)]
    return _answer(checked, verdict, sentence, events)


def _read(request: object) -> Mapping[str, Any]:
    if not isinstance(request, Mapping):
        raise TrialRefused('A trial is an object {"schema": …, "case": …, "rule": …}.')
    for key in request:
        if key not in _KEYS:
            raise TrialRefused(offered(f"Nothing reads the key '{key!s:.60}' of a trial", nearest(str(key), _KEYS)))
    absent = [key for key in _KEYS if key not in request]
    if absent:
        raise TrialRefused(f"The trial lacks {listed(absent)}; it has to hold schema, case and rule.")
    return request


def _answer(checked: Checked, verdict: bool | None, sentence: str, events: list[dict[str, Any]]) -> dict[str, Any]:
    return {
        "ok": checked.ok,
        "verdict": verdict,
        "sentence": sentence,
        "trace": events,
        "errors": [fault.as_json() for fault in checked.errors],
        "warnings": [fault.as_json() for fault in checked.warnings],
    }


def _event(checked: Checked, event: Event, said: str) -> dict[str, Any]:
    node = checked.nodes[event[0]]
    return {
        "start": node.start,
        "end": node.end,
        "text": checked.said(node),
        "result": event[1],
        "values": list(event[2:]),
        "sentence": said,
    }
