"""The one table of minutes a square metre: the simulator's own, read by whoever plans and by whoever quotes."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from courses.trade.constants import Constants
from courses.trade.removal import pass_min_m2, stripe_m
from courses.trade.surface import read_plan
from courses.trade.surface.shop import runs_on

Minutes = Mapping[str, float]
"""Minutes a square metre by the names of `ROWS`; of paper and machines, those of one pass."""

STANDING = ("wash", "chem", "tape", "test_spot", "wipe", "dry", "inspect", "coat")
WORKED: Mapping[str, Mapping[str, str]] = MappingProxyType(
    {
        "sand": {"op": "sand", "grade": "P1500"},
        "rotary": {"op": "cut", "pad": "wool", "machine": "rotary"},
        "da_cut": {"op": "cut", "pad": "foam_cut", "machine": "da"},
        "da_finish": {"op": "finish", "pad": "foam_finish", "machine": "da"},
    }
)
"""Each row of work, and the step of a plan whose usual settings it is timed with."""
ROWS = (*STANDING, *WORKED)
"""The rows of the table."""


def minutes_of(constants: Constants) -> Minutes:
    """The table as the simulator reckons with it: what stands in its constants, and passes at a shop's usual settings.

    Source: model; practice for drying, inspecting and coating.
    """
    standing = {name: constants.minutes[name] for name in STANDING}
    return {**standing, **{name: _pass(step, constants) for name, step in WORKED.items()}}


def _pass(raw: Mapping[str, str], constants: Constants) -> float:
    (step,) = read_plan([raw])
    machine = constants.machines[runs_on(step.op, step.machine)]
    return pass_min_m2(step.arm_m_s, stripe_m(machine.pad_m, step.overlap), constants.film.on_panel)
