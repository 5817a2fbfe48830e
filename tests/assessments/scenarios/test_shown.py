"""Pictures of a draw: which cells a zone has, what can't be asked, what is noted by who can't see."""

import pytest

from assessments import shipped
from assessments.scenarios.draw import draw, pictures_of
from assessments.scenarios.shown import Shop, Shown, Zone, observed, unfit, zone_fields, zone_key, zones_in
from assessments.scenarios.tasks import Task
from courses.pictures import CELLS
from tests.assessments.answers.listing import CELLS_ONLY, WITH_VERDICTS

BLISTERS = {"kind": "blisters", "severity": 0.8, "region": {"box": [0.0, 0.5, 0.5, 1.0]}}
SCRATCH = {"kind": "scratch", "severity": 0.9, "region": {"box": [0.7, 0.1, 0.95, 0.4]}}
SWIRLS = {"kind": "swirl", "severity": 0.6}


@pytest.fixture(scope="module")
def shop() -> Shop:
    return shipped.shop()


def shown(*defects: dict[str, object], colour: str = "white", light: str = "raking", **more: object) -> Shown:
    scene = {"substrate": "gel_coat", "colour": colour, "size": [480, 320], "seed": 5, "defects": list(defects)}
    return Shown("panel", scene, light, **more)  # type: ignore[arg-type]


def test_a_zone_has_the_cells_its_defects_lie_in_and_its_neighbours_are_free(shop: Shop) -> None:
    (zone,) = zones_in(shown(BLISTERS, zones=(Zone("domes", (0,), "refer"),)), shop)
    assert set(zone.required) <= {"C1", "C2", "C3", "C4", "D1", "D2", "D3", "D4"}
    assert set(zone.required) < set(zone.allowed)
    assert {"A5", "A6"}.isdisjoint(zone.allowed)
    both = zones_in(shown(BLISTERS, SCRATCH, zones=(Zone("both", (0, 1)), Zone("line", (1,)))), shop)
    assert set(both[1].required) <= set(both[0].required)
    assert set(both[1].required) <= {"A5", "A6", "B5", "B6"}


@pytest.mark.parametrize("task", [CELLS_ONLY, WITH_VERDICTS], ids=["cells", "verdicts"])
def test_the_key_holds_the_cells_that_have_to_be_referred(task: Task, shop: Shop) -> None:
    zones = zones_in(shown(BLISTERS, SCRATCH, zones=(Zone("domes", (0,), "refer"), Zone("line", (1,), "polish"))), shop)
    key = zone_key(task, zones)
    domes, line = zones
    asked = set(domes.required) | (set() if task.verdicts else set(line.required))
    assert key["required"] == [cell for cell in CELLS if cell in asked]
    assert key["required_n"] == len(asked)
    assert {field.name for field in zone_fields(task)} < set(key)
    if task.verdicts:
        assert [group["verdict"] for group in key["zones"]] == ["refer", "polish"]  # type: ignore[attr-defined]


def test_a_picture_that_shows_too_little_or_too_much_is_thrown_away(shop: Shop) -> None:
    assert unfit(shown(SWIRLS, colour="white", light="point", seen=(0,)), shop) == (
        "swirl on white doesn't stand out in point light"
    )
    assert unfit(shown(SWIRLS, colour="black", light="point", seen=(0,)), shop) is None
    domes = shown(BLISTERS, colour="navy", sought=(0,))
    assert unfit(domes, shop) == "blisters on navy can't be missed in raking light"
    assert unfit(shown(SWIRLS, colour="black", light="point", unseen=(0,)), shop) == (
        "swirl on black shows in point light"
    )


def test_a_zone_of_too_many_cells_is_thrown_away(shop: Shop) -> None:
    assert unfit(shown(BLISTERS, zones=(Zone("domes", (0,), most=1),)), shop) is not None


def test_no_draw_of_a_shipped_scenario_asks_for_what_cant_be_seen(shop: Shop) -> None:
    for ref, scenario in shipped.scenarios().items():
        for seed in range(4 if scenario.pictures else 0):
            facts = draw(scenario, seed).facts
            assert [unfit(one, shop) for one in pictures_of(scenario, facts).values() if unfit(one, shop)] == [], ref


def test_what_is_noted_names_no_defect(shop: Shop) -> None:
    noted = observed(shown(BLISTERS), shop)
    cells = [cell for one in noted for cell in one.cells]
    assert sorted(cells) == sorted(CELLS)
    assert len(noted) > 1
    assert "blister" not in " ".join(one.words for one in noted).lower()


def test_what_moves_is_noted_where_the_lamp_can_be_moved(shop: Shop) -> None:
    still, moved = (
        " ".join(one.words for one in observed(shown(SWIRLS, colour="black", light="point", lamps=lamps), shop))
        for lamps in (((0.5, 0.4),), ((0.5, 0.4), (0.2, 0.6)))
    )
    assert "when the lamp moves" not in still
    assert "when the lamp moves" in moved
