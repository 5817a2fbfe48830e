"""Runs a checked rule on a bound case."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from assessments.rules.checking.checker import Checked
from assessments.rules.compiler import compile_rule
from assessments.rules.trace import Trace


def evaluate(checked: Checked, case: Mapping[str, Any]) -> tuple[Any, Trace]:
    """Return the value of a rule or value expression on a bound case, and the trace of how it came about.

    A rule with errors is refused.

    >>> from assessments.rules.checking.checker import check
    >>> from assessments.rules.kinds import Schema, num
    >>> checked = check("te >= 15", Schema({"te": num("h", opt=True)}))
    >>> evaluate(checked, {"te": 20.4})
    (True, Trace(events=((2, True, 20.4, 15),), cut=False, failed=None))
    >>> evaluate(checked, {"te": None})[0] is None
    True
    """
    found = compile_rule(checked).run(case)
    return found.value, Trace(found.events, failed=found.failed)
