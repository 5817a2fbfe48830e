"""Figures that shared rules judge, held against sources outside: a standard, printed guides, the gas law."""

import math

import pytest

from tests.assessments.rules.shared_trials import EVERY, judged


def stretches(*rows, kelvin=6160.0, reference_degc=20.0):
    """Equivalent age in the form of ASTM C1074, Σ exp[−Q (1/T − 1/Tref)]·Δt, each stretch times humidity over 50 %."""
    kept = 1 / (reference_degc + 273.15)
    return sum(hours * math.exp(-kelvin * (1 / (degc + 273.15) - kept)) * rh / 50 for hours, degc, rh in rows)


def test_the_standards_own_form_gives_the_ages_of_the_cases():
    """Q = 6160 K and 20 °C are our training model's; the form is the standard's."""
    assert round(stretches((4, 25, 50), (8, 15, 60), (12, 10, 70)), 2) == EVERY["key"]["te"]
    assert round(stretches((12, 10, 50), (12, 30, 50)), 2) == 29.71
    mean = {"key": {"te": 29.71}, "answer": {"te": stretches((24, 20, 50))}}
    assert judged("R30", mean) == "not_met"


def test_an_age_by_the_standards_default_constant_is_judged_within_five_per_cent():
    """Q = 5000 K at 23 °C, the default for concrete [memory]: 12 h at 10 °C and 12 h at 30 °C."""
    te = stretches((12, 10, 50), (12, 30, 50), kelvin=5000.0, reference_degc=23.0)
    assert round(te, 2) == 23.25
    answers = {
        right: judged("R30", {"key": {"te": te}, "answer": {"te": te * right}}) for right in (1.05, 1.051, 0.949)
    }
    assert answers == {1.05: "met", 1.051: "not_met", 0.949: "not_met"}


def test_the_quantity_of_the_cases_follows_from_feet_as_well():
    """6.40 × 2.45 m, freeboard 0.80, at 2.5 ml a square metre and 3 ml on top: common practice, no source.

    A square foot is 0.3048² m², exactly.
    """
    square_feet = 2 * (6.40 / 0.3048 + 2.45 / 0.3048) * (0.80 / 0.3048)
    area = square_feet * 0.3048**2
    assert round(area, 2) == EVERY["key"]["area"]
    assert round(2.5 * area + 3, 1) == EVERY["key"]["ml"]
    assert math.ceil(EVERY["key"]["ml"] / 50) == EVERY["key"]["packs"]
    assert round(100 * (1 - EVERY["key"]["ml"] / 50), 1) == EVERY["key"]["slack_pct"]


@pytest.mark.parametrize(
    ("waterline_ft", "beam_ft", "draft_ft", "times", "printed_m2"),
    [(30, 12, 2, 1.0, 39.06), (26, 11, 5, 0.6, 23.20)],
)
def test_areas_as_quantity_guides_print_them_are_right_and_a_factor_apart_they_are_not(
    waterline_ft, beam_ft, draft_ft, times, printed_m2
):
    """Trade page 9: both figures were read, printed with 0.093 m² to the square foot."""
    area = times * waterline_ft * (beam_ft + draft_ft) * 0.3048**2
    key = {"key": {"area": area}, "facts": {"formula": "B1"}}
    answers = [printed_m2, area * 0.85]
    found = [judged("R34", {**key, "answer": {"formula": "B1", "area": answer}}) for answer in answers]
    assert found == ["met", "not_met"]


LITRES_A_MOLE = 8.314462618 * 298.15 / 101.325
"""R·T ÷ p with the exact gas constant, at 25 °C and 1 atmosphere: what 24.45 stands for."""


def test_twenty_four_point_four_five_is_the_volume_of_a_mole():
    assert round(LITRES_A_MOLE, 3) == 24.465
    assert abs(24.45 / LITRES_A_MOLE - 1) < 0.001


@pytest.mark.parametrize(("mass_g_mol", "printed"), [(60.1, 2.46), (104.15, 4.26)], ids=["isopropanol", "styrene"])
def test_the_pocket_guides_own_factors_rest_on_it(mass_g_mol, printed):
    """NIOSH Pocket Guide: 1 ppm in milligrams a cubic metre, read."""
    assert round(mass_g_mol / 24.45, 2) == printed


@pytest.mark.parametrize(
    ("ml", "specific_gravity", "mass_g_mol", "m3", "taught_ppm"),
    [(80, 0.785, 60.1, 40, 639), (100, 0.785, 60.1, 50, 639), (50, 0.906, 104.15, 40, 266)],
)
def test_vapour_from_the_gas_law_is_right_by_the_rule(ml, specific_gravity, mass_g_mol, m3, taught_ppm):
    """The share of moles: liquid evaporated over the air that the room holds, no 24.45 in it."""
    evaporated = ml * specific_gravity / mass_g_mol
    of_air = m3 * 1000 / LITRES_A_MOLE
    ppm = evaporated / of_air * 1e6
    assert ppm == pytest.approx(taught_ppm, rel=0.01)
    assert judged("R37", {"key": {"ppm": taught_ppm}, "answer": {"ppm": ppm}}) == "met"
