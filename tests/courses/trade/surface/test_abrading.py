"""One set on one zone: cut, heat, and the limits it passes."""

import pytest

from courses.trade.leftover import burn_probability
from courses.trade.surface import read_plan
from courses.trade.surface.abrading import Warmth, abrade, burn_chance, cut_here_um, peak_degc
from courses.trade.surface.condition import Condition
from courses.trade.surface.work import work_of
from tests.courses.trade.model import constants
from tests.courses.trade.surface.plans import CLEAR, GEL, HEAVY, panel, sand

WARM = Warmth(22.0, 71.0)


def test_a_dull_disc_takes_less_and_an_edge_loses_more() -> None:
    (step,) = read_plan([sand(1500, 4, disc=1.0)])
    field, edge = (Condition.of(one, constants()) for one in panel(GEL | {"edge_film_um": 300.0}).parts)
    work = work_of(step, 1.0, constants())
    assert cut_here_um(field, step, work, constants()) == pytest.approx(0.7 * work.cut_um)
    assert cut_here_um(edge, step, work, constants()) == pytest.approx(2.5 * 0.7 * work.cut_um)


def test_heat_starts_from_the_panel_and_is_greater_at_an_edge() -> None:
    (step,) = read_plan([HEAVY])
    work = work_of(step, 1.0, constants())
    field, edge = (Condition.of(one, constants()) for one in panel(GEL | {"edge_film_um": 300.0}).parts)
    rise = peak_degc(field, step, work, WARM, constants()) - 22
    assert rise == pytest.approx(11.5, abs=0.1)  # 33.5 °C: L17
    assert peak_degc(field, step, work, Warmth(40.0, 71.0), constants()) == pytest.approx(40 + rise)
    assert peak_degc(edge, step, work, WARM, constants()) == pytest.approx(22 + rise + 1.5 * work.local_k)


@pytest.mark.parametrize(("taped", "chance"), [(False, 0.133), (True, 0.0)])
def test_the_chance_of_burning_through_is_that_of_the_sum(taped: bool, chance: float) -> None:
    """Check value 38: clear coat 45 µm, spread 10 %, cut 12."""
    (zone,) = panel(CLEAR | {"film_um": 45.0, "film_spread": 0.1, "taped": taped}).parts
    one = Condition.of(zone, constants())
    one.removed_um, one.rim_um = 12.0, 0.0 if taped else 30.0
    assert burn_chance(one, constants()) == pytest.approx(chance, abs=0.0005)
    assert burn_chance(one, constants()) == pytest.approx(burn_probability(45.0, 0.1, 12.0, 2.5, 0.75, taped))


def test_a_film_ends_at_nothing() -> None:
    (step,) = read_plan([sand(320, 6)])
    one = Condition.of(panel(CLEAR | {"film_um": 20.0}).parts[0], constants())
    abrade(one, step, work_of(step, 1.0, constants()), WARM, constants())
    assert (one.film_um, one.removed_um) == (0.0, 20.0)
    assert set(one.firsts) == {"budget", "reserve", "burn_through", "soil"}


def test_the_step_that_took_most_and_the_one_that_left_the_strays_are_kept() -> None:
    steps = read_plan([sand(800, 4), sand(2000, 1)])
    one = Condition.of(panel(GEL | {"soiled": False}).parts[0], constants())
    for step in steps:
        abrade(one, step, work_of(step, 1.0, constants()), WARM, constants())
    assert (one.most_by, one.tail_by, one.last_by, one.trail_by) == (1, 1, 2, 0)
