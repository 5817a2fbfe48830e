"""PLN-09 version 1: the printed ranges, a panel that looks perfect under the tubes, one case worked by hand."""

import pytest

from assessments.scenarios.draw import Drawn
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import acts, polished
from assessments.scenarios.pln_09_v1 import key, pictures
from assessments.scenarios.trails import panel_surface
from courses.shipped import catalogue, constants
from courses.trade.constants import FITTED
from courses.trade.surface import PanelSurface, Run, read_plan, simulate, unsteady
from tests.assessments.scenarios.drawing import (
    assert_captions_tell_nothing,
    assert_everything_is_told,
    assert_inside,
    assert_pictures_stand,
    assert_shares,
    draws,
)

GLOSS = {"gel_coat": (97, 95), "clear_coat": (88, 82)}
"""What a meter shows at 60° and what a perfect panel reads at 20°: 97.3 and 95.4 for an index of 1.55, 89.1 and 82.0
for 1.50, by Fresnel's equations."""
FILM = {"gel_coat": (420, 560), "clear_coat": (52, 58)}


FINISH = [*acts("tape"), *polished("finish")]
SANDED = [*acts("tape"), {"op": "sand", "grade": "P3000", "passes": 4}, *acts("dry", "inspect"),
          *polished("cut", "refine", "finish")]  # fmt: skip


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("PLN-09@1", 240)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        facts, substrate = drawn.facts, str(drawn.facts["substrate"])
        assert_inside(facts, {"trail_um": (0.2, 0.25), "stray_um": (0.05, 0.2), "g20": (50, 75)})
        assert_inside(facts, {"film_um": FILM[substrate]})
        assert (facts["gloss60"], facts["perfect20"]) == GLOSS[substrate]
        assert not (facts["soft"] and substrate == "gel_coat")
        assert_pictures_stand(drawn)
        assert_everything_is_told(drawn)


def test_half_the_panels_are_gel_coat_and_a_quarter_is_soft(sweep: list[Drawn]) -> None:
    assert_shares(sweep, lambda one: one.facts["substrate"], {"gel_coat": 0.5, "clear_coat": 0.5})
    assert_shares(sweep, lambda one: one.facts["soft"], {True: 0.25, False: 0.75})


def on_the_model(drawn: Drawn) -> PanelSurface:
    return PanelSurface.of(panel_surface(drawn.facts), catalogue(), constants())


def run(drawn: Drawn, steps: list[dict[str, object]], name: str = "eta", factor: float = 1.0) -> Run:
    """A plan worked on the panel of a draw, with one fitted constant that is off by a factor."""
    on = on_the_model(drawn)
    return simulate(on, read_plan(steps, on), constants().varied(name, factor), optics="none")


@pytest.mark.parametrize(("steps", "verdict"), [(FINISH, "pass"), (acts("wipe"), "redo")])
def test_a_finish_clears_them_and_released_as_it_is_they_show(
    sweep: list[Drawn], steps: list[dict[str, object]], verdict: str
) -> None:
    # ± 30 % of every fitted constant, one at a time
    for drawn in sweep[:12]:
        on = on_the_model(drawn)
        assert run(drawn, steps).outcome.verdict == verdict
        assert unsteady(on, read_plan(steps, on), constants()) == ()


def test_sanding_is_a_harm_or_takes_many_times_what_the_trails_are_deep(sweep: list[Drawn]) -> None:
    for drawn in sweep[:4]:
        for worked in (run(drawn, SANDED, name, factor) for name in FITTED for factor in (0.7, 1.0, 1.3)):
            spent = worked.outcome.removed_um / drawn.facts.number("trail_um")
            assert worked.outcome.verdict == "harm" or spent > 10


def side() -> Record:
    """A black side with trails, its lamp bands running a little off level."""
    return Record({"substrate": "gel_coat", "colour": "black", "trail_um": 0.22, "direction": 5, "scene_seed": 2})


def test_the_key_finishes_wipes_and_looks_from_two_places() -> None:
    worked = key(side())
    assert [step["op"] for step in worked["steps"]] == ["finish", "wipe", "lamp", "lamp"]  # type: ignore[attr-defined]
    assert (worked["remedy"], worked["released"], worked["reply"]) == ("finish_da", False, "shown")
    assert worked["asked"] == ["lamp", "g20"]


def test_trails_stay_dark_under_the_tubes_and_show_by_a_lamp_that_moves() -> None:
    in_the_shop, by_lamp = pictures(side())
    assert in_the_shop.scene == by_lamp.scene
    assert (in_the_shop.light, in_the_shop.unseen) == ("diffuse", (0,))
    assert (by_lamp.light, by_lamp.sought, len(by_lamp.lamps)) == ("point", (0,), 5)


def test_nothing_under_a_picture_names_what_is_on_it() -> None:
    assert_captions_tell_nothing("PLN-09@1", ["holo", "trail", "swirl", "clean", "band", "perfect", "nothing"])
