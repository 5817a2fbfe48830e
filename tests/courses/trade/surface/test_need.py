"""How much film a panel needs to lose."""

from typing import Any

import pytest

from courses.trade.surface import needed_cut
from courses.trade.surface.need import called_for_um, needed_here_um
from tests.courses.trade.model import constants
from tests.courses.trade.surface.plans import (
    DEEP,
    GEL,
    HEAVY,
    MEDIUM,
    POLISH,
    SCRATCHED,
    SWIRLED,
    WASH,
    panel,
    sand,
    worked,
)


def test_the_deepest_thing_decides() -> None:
    (zone,) = panel(GEL | {"oxidation_um": 2.0, "tail_um": 1.2, "trail_um": 0.3, "defects": [DEEP]}).parts
    assert needed_here_um(zone) == zone.marks[0].deepest_um == pytest.approx(18.5, abs=0.05)


def test_what_may_stay_needs_nothing_and_edges_are_left_out() -> None:
    assert needed_cut(panel(SCRATCHED | {"agreed": {"may_stay": ["scratch", "swirl"]}}), constants()) == 0.0
    chalky = GEL | {"oxidation_um": 9.0, "agreed": {"may_stay": ["oxidation"]}}
    assert needed_cut(panel(chalky), constants()) == 0.0
    zones = [{"name": "rest", "tail_um": 0.1}, {"name": "chine", "edge": True}]
    assert needed_cut(panel(GEL | {"tail_um": 5.0, "zones": zones}), constants()) == 0.0


def test_each_stage_is_called_for_at_its_own_pad() -> None:
    surface = GEL | {"tail_um": 2.0, "soiled": False, "budget_um": 1.0}
    one = worked(surface, (HEAVY,)).states[-1].conditions[0]
    own = 0.27 * 1.5
    assert called_for_um(one, constants()) == pytest.approx((2.0 - own) / 0.75 + own / 0.4)


def test_a_stage_that_leaves_more_than_it_met_is_not_called_for() -> None:
    surface = GEL | {"tail_um": 0.2, "soiled": False}
    one = worked(surface, (HEAVY,)).states[-1].conditions[0]
    assert one.called_for_um == 0.0
    assert called_for_um(one, constants()) == pytest.approx(0.5 + 0.018 * 60)


@pytest.mark.parametrize("before", [sand(320, 4), HEAVY, MEDIUM])
def test_a_coarse_start_or_a_repeat_excuses_nothing(before: dict[str, Any]) -> None:
    taken = GEL | {"tail_um": 0.4, "trail_um": 0.25, "soiled": False}
    plain, more = (worked(taken, steps).states[-1].conditions[0] for steps in (POLISH, (before, *POLISH)))
    assert called_for_um(more, constants()) == pytest.approx(called_for_um(plain, constants()))


def test_the_plan_does_not_change_what_the_panel_needed_at_the_start() -> None:
    assert worked(SWIRLED, (WASH, HEAVY)).outcome.needed_cut_um == worked(SWIRLED, ()).outcome.needed_cut_um
