"""A zone before any work: what it inherits, what counts, and what stands for a substrate."""

import pytest

from courses.trade.surface.zone import RANGES, ZONE_KEYS, zone_defaults
from tests.courses.pictures.trade import catalogue
from tests.courses.trade.model import constants
from tests.courses.trade.surface.plans import GEL, panel


def test_the_layer_reaches_as_deep_as_95_of_100_places_do_not() -> None:
    (zone,) = panel(GEL | {"oxidation_um": 10.0, "oxidation_cv": 0.3}).parts
    assert zone.layer_um == pytest.approx(10 * (1 + 1.645 * 0.3))
    assert panel(GEL).parts[0].layer_um == 0.0


def test_edges_and_idle_zones_do_not_count_for_the_panel() -> None:
    found = panel(
        GEL | {"edge_film_um": 300.0, "zones": [{"name": "vinyl", "idle": True}, {"name": "chine", "edge": True}]}
    )
    assert {one.name: one.judged for one in found.parts} == {
        "main": True,
        "edge": False,
        "vinyl": False,
        "chine": False,
    }


@pytest.mark.parametrize("substrate", sorted(catalogue().surfaces))
def test_every_key_of_a_zone_has_a_default(substrate: str) -> None:
    found = zone_defaults(catalogue(), constants(), substrate)
    assert set(ZONE_KEYS) - {"edge_film_um"} <= set(found)


def test_numbers_have_a_range_and_flags_have_none() -> None:
    assert set(ZONE_KEYS) - set(RANGES) == {"soiled", "taped", "wet", "oils", "agreed"}
