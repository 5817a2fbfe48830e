"""What a task of a plan is made of: the columns of its steps, as the simulator takes them."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from assessments.scenarios.fields import Field, Option
from courses.trade.surface import Parameter, parameters

STEPS: Final = "steps"
"""How a plan is called, so that rules read its steps by one name."""

MOST_STEPS: Final = 40
"""Steps a plan may have where its task says nothing else."""

ALL: Final = "all"
"""The zone of a step that names none: everywhere."""

NEEDED_CUT: Final = Field("needed_cut", "quantity", "Cut the panel needs", "um", 1)
"""What stands on the panel at the start and has to go, in model micrometres: part of the key of every plan."""


_VERDICTS: Final = (Option("pass", "pass"), Option("redo", "redo"), Option("harm", "harm"))
_LENGTHS: Final = (
    Field("film_um", "quantity", "Film left, model µm", "um", 1),
    Field("removed_um", "quantity", "Film taken, model µm", "um", 1),
    Field("tail_um", "quantity", "Deepest stray left, model µm", "um", 2),
    Field("trail_um", "quantity", "Trail left, model µm", "um", 2),
)
_BESIDE: Final = (
    Field("own_tail_um", "quantity", "Stray of the last abrasive, model µm", "um", 2),
    Field("minutes", "quantity", "Time for each m²", "min", 1),
    Field("heat_degc", "quantity", "Hottest", "degc", 1),
    Field("gloss60", "quantity", "Gloss at 60°", "gu", 1),
    Field("gloss20", "quantity", "Gloss at 20°", "gu", 1),
    Field("score", "quantity", "Rank among plans for this panel", "ratio", 6),
    Field("oxidised", "quantity", "Share still oxidised", "ratio", 3),
    Field("swirl_left", "quantity", "Share of the swirls still open", "ratio", 3),
)
_LEFT: Final = (
    Field("kind", "text", "Mark"),
    Field("depth_um", "quantity", "Depth, model µm", "um", 2),
    Field("left", "quantity", "Share still open", "ratio", 3),
)


def model_fields(zones: Sequence[Option]) -> tuple[Field, ...]:
    """Return what a plan comes to, by the names that rules call under ``model``."""
    usual = {"main": Option("main", "the rest"), "edge": Option("edge", "the edge")}
    places = tuple({**usual, **{one.id: one for one in zones}}.values())
    verdict = Field("verdict", "choice", "Verdict of the plan", options=_VERDICTS)
    of_zone = (Field("name", "choice", "Zone", options=places), *_LENGTHS, verdict)
    return (
        verdict,
        *_LENGTHS,
        *_BESIDE,
        Field("zones", "rows", "Zones", columns=of_zone, most=24),
        Field("residual", "rows", "Marks left", columns=_LEFT, most=60),
    )


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
