"""What a task of a plan is made of: the columns of its steps, as the simulator takes them."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from assessments.scenarios.fields import Field, Option
from courses.trade.surface import Parameter, parameters

STEPS: Final = "steps"
"""How a plan is called, so that rules read its steps by one name."""

MOST_STEPS: Final = 24
"""Steps a plan may have where its task says nothing else."""

ALL: Final = "all"
"""The zone of a step that names none: everywhere."""

NEEDED_CUT: Final = Field("needed_cut", "quantity", "Cut the panel needs", "um", 1)
"""What stands on the panel at the start and has to go, in model micrometres: part of the key of every plan."""


def plan_columns(ops: Sequence[str], zones: Sequence[Option]) -> tuple[Field, ...]:
    """Return the columns of a plan: what is done, where, and every parameter that one of its ``ops`` takes."""
    op = Field("op", "choice", options=tuple(Option(one, one) for one in ops))
    zone = Field("zone", "choice", options=(*zones, Option(ALL, "everywhere")), optional=True)
    return op, zone, *(_column(one) for one in plan_parameters(ops).values())


def plan_parameters(ops: Sequence[str]) -> dict[str, Parameter]:
    """Return every parameter that one of these ops takes, by name; a choice has the options of all of them."""
    found: dict[str, Parameter] = {}
    for one in (one for op in ops for one in parameters(op)):
        known = found.get(one.name, one)
        found[one.name] = replace(known, options=tuple({**dict(one.options), **dict(known.options)}.items()))
    return found


def _column(one: Parameter) -> Field:
    if one.kind == "choice":
        options = tuple(Option(*option) for option in one.options)
        return Field(one.name, "choice", one.label, options=options, optional=True)
    if one.kind == "numbers":
        item = Field("each", "mixed", unit=one.unit)
        return Field(one.name, "list", one.label, items=item, optional=True)
    return Field(one.name, "mixed", one.label, optional=True)
