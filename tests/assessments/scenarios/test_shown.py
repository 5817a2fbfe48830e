"""Pictures of a draw: what makes one unfit to be asked about, and the cells of its zones."""

from dataclasses import replace

import pytest

from assessments.scenarios.scenes import mark, scene
from assessments.scenarios.shown import Shop, Shown, Zone, unfit, zones_in
from courses.shipped import catalogue

STAR = mark("crack_star", (0.2, 0.15, 0.5, 0.6), severity=0.7)
DECK = Shown("deck", scene(("gel_coat", "white"), 3, STAR), "diffuse", zones=(Zone("crack", (0,), "refer"),))


@pytest.fixture(scope="module")
def shop() -> Shop:
    return Shop(catalogue())


def test_a_zone_has_its_cells_and_the_ring_round_them_is_free(shop: Shop) -> None:
    (crack,) = zones_in(DECK, shop)
    assert (crack.name, crack.verdict) == ("crack", "refer")
    assert set(crack.required) < set(crack.allowed)
    assert {"B2", "B3"} <= set(crack.required) <= {f"{row}{column}" for row in "ABC" for column in (2, 3)}


def test_a_picture_is_unfit_where_a_zone_lies_in_too_few_or_too_many_cells(shop: Shop) -> None:
    assert unfit(DECK, shop) is None
    found = len(zones_in(DECK, shop)[0].required)
    for least, most in ((found + 1, 24), (1, found - 1)):
        narrow = replace(DECK, zones=(replace(DECK.zones[0], least=least, most=most),))
        assert unfit(narrow, shop) == f"zone 'crack' lies in {found} cells, not in {least} to {most}"
