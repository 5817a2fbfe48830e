"""PLN-07 version 1: the printed ranges, ten readings of a thin bow, and what each plan would leave of it."""

from statistics import fmean

import pytest

from assessments.scenarios.draw import Drawn
from assessments.scenarios.fields import Record
from assessments.scenarios.plan_steps import acts, in_zone, polished, sanded
from assessments.scenarios.pln_07_v1 import LADDER, bow_mean_um, key, pictures, surface
from courses.trade.surface import Run
from tests.assessments.scenarios.drawing import (
    assert_captions_tell_nothing,
    assert_everything_is_told,
    assert_inside,
    assert_pictures_stand,
    draws,
    told_by,
)
from tests.assessments.scenarios.planning import keyed, steps_in, worked

RANGES = {"rest_um": (470, 470), "reserve": (250, 250), "budget": (60, 60), "oxidation_um": (12, 13.5)}
THREE = polished("cut", "refine", "finish")


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("PLN-07@1", 120)


def readings(facts: Record) -> list[float]:
    bow = facts["bow_um"]
    assert isinstance(bow, tuple)
    return [float(str(one)) for one in bow]


def bow_and_rest(run: Run) -> list[tuple[float, str]]:
    zones = {zone.name: zone for zone in run.outcome.zones}
    return [(zones[name].film_um, zones[name].verdict) for name in ("bow", "rest")]


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        assert_inside(drawn.facts, RANGES)
        bow = readings(drawn.facts)
        assert len(bow) == 10
        assert all(248 <= one <= 280 for one in bow)
        assert 262 - 1e-9 <= fmean(bow) <= 268 + 1e-9
        assert bow_mean_um(drawn.facts) == pytest.approx(fmean(bow))
        assert_pictures_stand(drawn)
        assert_everything_is_told(drawn)


def test_the_bow_is_told_to_who_asks(sweep: list[Drawn]) -> None:
    for drawn in sweep[:20]:
        first = f"{readings(drawn.facts)[0]:.0f}"
        assert first in told_by(drawn, "gauge")
        assert first not in told_by(drawn, "film")


def test_the_key_works_the_rest_and_takes_nothing_at_the_bow(sweep: list[Drawn]) -> None:
    for drawn in sweep[:8]:
        (bow_um, bow), (rest_um, rest) = bow_and_rest(keyed(drawn))
        assert bow_um == pytest.approx(fmean(readings(drawn.facts)), abs=0.1)
        # 31.6 model µm: the figure of the training model's sheet
        assert rest_um == pytest.approx(470 - 31.6, abs=0.2)
        assert (bow, rest) == ("pass", "pass")


def test_what_each_plan_would_leave_at_the_bow(sweep: list[Drawn]) -> None:
    # one finishing set 0.6, medium and finish 3.6, a ladder 31.6: the figures of the training model's sheet
    works = (polished("finish"), polished("refine", "finish"), sanded(*LADDER) + THREE)
    for drawn in sweep[:8]:
        taken = [worked(drawn, in_zone("bow", [*acts("wash"), *work])) for work in works]
        mean = fmean(readings(drawn.facts))
        left = [bow_and_rest(run)[0][0] for run in taken]
        assert [mean - each for each in left] == pytest.approx([0.6, 3.6, 31.6], abs=0.2)
        assert [each >= 250 for each in left] == [True, True, False]


def cruiser() -> Record:
    """A blue cruiser whose bow reads 265."""
    shown = {"substrate": "gel_coat", "colour": "blue", "rest_um": 470.0, "reserve": 250.0, "budget": 60.0}
    return Record({**shown, "oxidation_um": 12.7, "bow_um": (260.0, 270.0), "scene_seed": 4})  # type: ignore[dict-item]


def test_the_key_records_the_bow_and_tells_of_it() -> None:
    worked_out = key(cruiser())
    assert worked_out["record_zones"] == ["bow"]
    steps = steps_in(Record({"steps": tuple(worked_out["steps"])}))  # type: ignore[arg-type]
    assert [step["op"] for step in steps if step.get("zone") == "bow"] == ["record"]
    assert [step["op"] for step in steps][-1] == "tell"
    assert (worked_out["doubt_um"], worked_out["states_bow"]) == (10.0, "stays_dull")


def test_bow_and_rest_have_films_of_their_own_and_one_chalk() -> None:
    told = surface(cruiser())
    zones = told["zones"]
    assert isinstance(zones, list)
    assert [(zone["name"], zone["film_um"], "agreed" in zone) for zone in zones] == [
        ("bow", 265.0, True),
        ("rest", 470.0, False),
    ]
    (shown,) = pictures(cruiser())
    assert [one["depth_um"] for one in shown.scene["defects"]] == [told["oxidation_um"]]  # type: ignore[attr-defined]


def test_nothing_under_the_picture_names_the_finding() -> None:
    assert_captions_tell_nothing("PLN-07@1", ["oxid", "chalk", "pale", "thin", "film"])
