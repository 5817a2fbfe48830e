"""The sum of heat: the model's four anchors, and how the rise follows each setting."""

import pytest

from courses.trade.sums import work_out
from courses.trade.units import Preferences


def rise(**settings: object) -> float:
    result = work_out("panel_temperature", settings)
    return sum(one.value for one in result.also if one.unit == "K")


# The model's own figures; a forum reports 93 °C under hard pushing, which is of that order (trade page 35).
@pytest.mark.parametrize(
    ("settings", "hottest"),
    [
        ({"speed_rpm": 1500}, 33.5),
        ({"cuts": "foam_cut_medium", "speed_rpm": 1650, "passes": 4}, 40.4),
        ({"speed_rpm": 2500, "force_n": 70}, 66.6),
        ({"speed_rpm": 3000, "force_n": 100}, 98.5),
    ],
)
def test_the_hottest_of_a_set_comes_out(settings: dict[str, object], hottest: float) -> None:
    assert work_out("panel_temperature", settings).value == pytest.approx(hottest, abs=0.06)


def test_the_rise_follows_force_and_turns_and_the_root_of_the_arm() -> None:
    usual = rise(speed_rpm=1000)
    assert rise(speed_rpm=1000, force_n=60) == pytest.approx(2 * usual, abs=0.2)
    assert rise(speed_rpm=1500) == pytest.approx(1.5 * usual, abs=0.2)
    assert rise(speed_rpm=1000, arm_mps=0.025) == pytest.approx(2**0.5 * usual, abs=0.2)
    assert rise(speed_rpm=1000, arm_mps=0.1) == pytest.approx(0.5**0.5 * usual, abs=0.2)


def test_a_hot_panel_starts_hot() -> None:
    cold, hot = (work_out("panel_temperature", {"panel_degc": start}) for start in (22, 48))
    assert hot.value - cold.value == pytest.approx(26, abs=0.06)
    assert hot.also[2].value == pytest.approx((hot.value - 22) / (71 - 22), abs=0.006)


# Spot limit 43 °C, never over 60 °C: trade page 35.
@pytest.mark.parametrize(
    ("panel", "said"), [(22, "Under 43\xa0°C"), (40, "Over 43\xa0°C on a spot"), (55, "Over 60\xa0°C: stop")]
)
def test_the_band_is_named_in_the_readers_unit(panel: float, said: str) -> None:
    result = work_out("panel_temperature", {"panel_degc": panel})
    assert str(result.notes[0]).startswith(said)
    assert "°F" in result.notes[0].said(Preferences.us())


def test_a_share_of_heat_of_ones_own_scales_the_rise() -> None:
    assert rise(heat_share=0.9) == pytest.approx(2 * rise(), abs=0.2)
