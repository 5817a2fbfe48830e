"""CUT-05 version 1: the printed ranges, and what each band of temperature asks for."""

import pytest

from assessments import shipped
from assessments.scenarios.cut_05_v1 import key
from assessments.scenarios.draw import Drawn
from assessments.scenarios.fields import Record
from tests.assessments.scenarios.drawing import assert_shares, draws

BANDS = {"cool": (36, 41), "warm": (45, 58), "hot": (62, 75)}
"""Contact temperatures as printed, °C; the limits between them, 43 and 60 °C, stand in excerpts of trade pages."""


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("CUT-05@1", 300)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        facts = drawn.facts
        low, high = BANDS[str(facts["band"])]
        assert low <= facts.number("contact_degc") <= high
        assert 24 <= facts.number("before_degc") <= 34 or drawn.kind == "warm_by_sun"
        assert 1300 <= facts.number("rpm") <= 1800
        assert 30 <= facts.number("force_n") <= 50
        assert 4 <= facts.number("contact_degc") - facts.number("infrared_degc") <= 9


def test_a_third_of_the_panels_is_fit_a_third_warm_a_third_hot(sweep: list[Drawn]) -> None:
    assert_shares(sweep, lambda one: one.facts["band"], {"cool": 1 / 3, "warm": 1 / 3, "hot": 1 / 3})


def test_where_the_sun_did_it_the_panel_was_over_the_limit_before_the_pad_came(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        sun = drawn.facts["band"] != "cool" and drawn.facts.number("before_degc") >= 44
        assert (key(drawn.facts)["reason"] == "sun") == sun
        assert (key(drawn.facts)["place"] == "shade") == sun


@pytest.mark.parametrize(
    ("contact", "band", "decision", "rpm"),
    [(40, "cool", "go", 1500), (52, "warm", "cool_and_change", 1200), (66, "hot", "stop", 1200)],
)
def test_each_band_has_its_act(contact: float, band: str, decision: str, rpm: float) -> None:
    facts = Record({"contact_degc": contact, "before_degc": 30, "band": band, "rpm": 1500, "force_n": 40})
    worked = key(facts)
    assert (worked["decision"], worked["rpm"]) == (decision, rpm)


def test_it_is_offered_everywhere() -> None:
    assert shipped.scenario("CUT-05@1").jurisdictions == ("us", "uk", "eu")
