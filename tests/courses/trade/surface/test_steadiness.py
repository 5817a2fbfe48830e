"""Whether a verdict stands when a fitted constant is a little wrong."""

import pytest

from courses.trade.constants import FITTED
from courses.trade.surface import read_plan, unsteady
from courses.trade.surface.steadiness import FACTORS
from tests.courses.trade.model import constants
from tests.courses.trade.surface.plans import CLEAR, FOURTEEN, SWIRL_OUT, SWIRLED, SWIRLS, panel


def flips(name: str) -> tuple[str, ...]:
    """Return the variants in which a plan of the sketch comes out otherwise."""
    surface, steps, _ = FOURTEEN[name]
    return unsteady(panel(surface), read_plan(steps), constants())


def test_there_are_44_variants() -> None:
    assert len(FITTED) * len(FACTORS) == 44


@pytest.mark.parametrize("name", [name for name in FOURTEEN if name[:2] not in ("02", "07")])
def test_most_plans_of_the_sketch_are_steady(name: str) -> None:
    assert flips(name) == ()


def test_a_plan_within_a_third_of_a_gate_is_not() -> None:
    near = CLEAR | {"defects": [SWIRLS], "budget_um": 3.6}
    assert unsteady(panel(near), read_plan(SWIRL_OUT), constants()) == ("preston_k × 1.15", "preston_k × 1.3")
    assert unsteady(panel(SWIRLED), read_plan(SWIRL_OUT), constants()) == ()
