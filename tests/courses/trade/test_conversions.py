"""The table of conversions against Pint 0.25, where every factor is that of its own registry."""

from fractions import Fraction

import pint
import pytest

from courses.trade.conversions import SPELLINGS, UNITS, folded

# Pint's "mil" is an angle: a thousandth of an inch is its "thou". Its fluid ounce, quart and gallon are the US ones.
IN_PINT = {
    "degc": "degC",
    "degf": "degF",
    "K": "delta_degC",
    "degf_step": "delta_degF",
    "um": "micrometer",
    "nm": "nanometer",
    "mil": "thou",
    "mm": "millimeter",
    "cm": "centimeter",
    "m": "meter",
    "inch": "inch",
    "ft": "foot",
    "m2": "meter**2",
    "cm2": "centimeter**2",
    "ft2": "foot**2",
    "ml": "milliliter",
    "l": "liter",
    "m3": "meter**3",
    "fl_oz": "fluid_ounce",
    "qt": "quart",
    "gal": "gallon",
    "ft3": "foot**3",
    "g": "gram",
    "kg": "kilogram",
    "oz": "ounce",
    "lb": "pound",
    "min": "minute",
    "s": "second",
    "h": "hour",
    "d": "day",
    "rpm": "revolutions_per_minute",
    "n": "newton",
    "kgf": "kilogram_force",
    "lbf": "pound_force",
    "mps": "meter/second",
    "kmh": "kilometer/hour",
    "mph": "mile/hour",
    "fpm": "foot/minute",
    "hpa": "hectopascal",
    "kpa": "kilopascal",
    "inhg": "inch_Hg_32F",
    "gkg": "gram/kilogram",
    "grlb": "grain/pound",
    "mps2": "meter/second**2",
}
BASES = "degc K rh um mm m m2 m3 ml l g kg min h rpm n mps ppm mgm3 db mps2 hpa gkg ratio"


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry:
    return pint.UnitRegistry()


@pytest.mark.parametrize("code", sorted(set(IN_PINT) - {"inhg"}))
def test_every_conversion_is_that_of_pint(code: str, registry: pint.UnitRegistry) -> None:
    unit = UNITS[code]
    base = next(other for other in UNITS.values() if other.quantity == unit.quantity)
    theirs = registry.Quantity(7.25, IN_PINT[code]).to(IN_PINT[base.code]).magnitude
    assert float(unit.converted(Fraction("7.25"), base)) == pytest.approx(theirs, rel=1e-12)


def test_the_inch_of_mercury_is_the_conventional_one() -> None:
    # 3386.39 Pa: mercury at 0 °C, from memory.
    assert float(UNITS["inhg"].converted(Fraction("29.92"), UNITS["hpa"])) == pytest.approx(1013.2, abs=0.05)


def test_every_base_unit_of_the_doors_is_in_the_table() -> None:
    assert set(BASES.split()) <= set(UNITS)
    assert all(unit.code == code for code, unit in UNITS.items())


@pytest.mark.parametrize("code", sorted(UNITS))
def test_every_conversion_goes_there_and_back(code: str) -> None:
    unit = UNITS[code]
    base = next(other for other in UNITS.values() if other.quantity == unit.quantity)
    number = Fraction("12.5")
    assert base.converted(unit.converted(number, base), unit) == number


def test_one_spelling_never_means_two_units_of_one_quantity() -> None:
    for meant in SPELLINGS.values():
        quantities = [unit.quantity for unit in meant]
        assert len(quantities) == len(set(quantities)), meant


@pytest.mark.parametrize(
    ("spelled", "code"),
    [("µm", "um"), ("μm", "um"), ("UM", "um"), ("ft²", "ft2"), ("º F", "degf"), ("℃", "degc"), ("Fl. Oz.", "fl_oz")],
)
def test_spellings_fold_to_one_form(spelled: str, code: str) -> None:
    assert UNITS[code] in SPELLINGS[folded(spelled)]
