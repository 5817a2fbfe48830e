"""What stands after a step: the panel as its zones make it."""

import pytest

from courses.trade.surface.state import residual_of, worst_of
from tests.courses.trade.surface.plans import DA_MEDIUM, FINISH, GEL, SWIRLED, SWIRLS, WASH, sand, worked

ZONED = SWIRLED | {"edge_film_um": 30.0, "zones": [{"name": "bow", "film_um": 40.0}]}


def test_film_is_that_of_the_thinnest_zone_and_removal_the_most_of_any() -> None:
    last = worked(ZONED, (WASH, {**DA_MEDIUM, "zone": "main"}, {**FINISH, "zone": "bow"})).states[-1]
    films = {one.zone.name: one.film_um for one in last.conditions}
    assert last.film_um == films["bow"] == min(films["bow"], films["main"])
    assert last.removed_um == pytest.approx(48.0 - films["main"])


def test_edges_stand_beside_the_panel() -> None:
    last = worked(ZONED, (WASH, DA_MEDIUM)).states[-1]
    assert [one.zone.name for one in last.field] == ["main", "bow"]
    assert min(one.film_um for one in last.conditions) < last.film_um


def test_strays_are_those_of_the_zone_where_they_stand_highest() -> None:
    taken = GEL | {"soiled": False, "zones": [{"name": "part", "tail_um": 8.0}]}
    last = worked(taken, (sand(1500, 2),)).states[-1]
    assert worst_of(last.conditions).zone.name == "part"
    assert last.tail_um - last.own_tail_um > 0.2


def test_a_step_in_one_zone_keeps_the_others_as_they_were() -> None:
    first, second = worked(ZONED, (WASH, {**DA_MEDIUM, "zone": "bow"})).states
    same = [before is after for before, after in zip(first.conditions, second.conditions, strict=True)]
    assert same == [True, True, False]


def test_what_is_left_stands_once_a_kind_the_deepest_of_any_zone() -> None:
    two = ZONED | {
        "defects": [{**SWIRLS, "depth_um": 0.4}, {**SWIRLS, "depth_um": 0.9, "zone": "bow"}],
        "trail_um": 0.3,
    }
    start = worked(two, ()).start
    assert [kind for kind, _, _ in start.residual] == ["swirl", "hologram"]
    deepest = [one.deepest_um for one in start.conditions[2].marks]
    assert start.residual[0][1] == max(deepest)
    assert [kind for kind, _, _ in residual_of(start.conditions[2])] == ["swirl", "swirl", "hologram"]


def test_a_look_is_kept_beside_the_state_and_not_written_into_it() -> None:
    looked = worked(SWIRLED, (WASH, {"op": "dry"}, {"op": "inspect"})).states[-1]
    assert looked.found == ("Still there: swirl marks.",)
    assert looked.as_json().keys() == worked(SWIRLED, (WASH,)).states[-1].as_json().keys()
