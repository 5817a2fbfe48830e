"""Quantities as people type them, and as each person reads them."""

import math
from contextlib import suppress

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.trade.errors import UnitError
from courses.trade.units import (
    UNITS,
    Preferences,
    example,
    from_shown,
    parse_quantity,
    rounded,
    shown,
    shown_plain,
    symbol,
    to_shown,
)

US, METRIC = Preferences.us(), Preferences.metric()
BASES = ["degc", "K", "rh", "um", "mm", "m", "m2", "m3", "ml", "l", "g", "min", "mps", "gkg", "ratio", "hpa"]


@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [
        (12, "degc", 12.0),
        (12.5, "degc", 12.5),
        ("12.5", "degc", 12.5),
        ("12,5", "degc", 12.5),
        ("0,125", "ratio", 0.125),
        ("1013,250", "hpa", 1013.25),
        (" +12.5 ", "degc", 12.5),
        ("54 °F", "degc", 110 / 9),
        ("54F", "degc", 110 / 9),
        ("54 degrees Fahrenheit", "degc", 110 / 9),
        ("54\u00a0°F", "degc", 110 / 9),
        ("54\u2009°F", "degc", 110 / 9),
        ("\u22125 °C", "degc", -5.0),
        ("–5", "degc", -5.0),
        ("-40 F", "degc", -40.0),
        ("5.4 °F", "K", 3.0),
        ("5,4 F", "K", 3.0),
        ("3 °C", "K", 3.0),
        ("3 K", "K", 3.0),
        ("5 mil", "um", 127.0),
        ("0.05 µm", "nm", 50.0),
        ("60°", "deg", 60.0),
        ("89.1 GU", "gu", 89.1),
        ("5 mils", "um", 127.0),
        ("5 thou", "um", 127.0),
        ("5 µm", "um", 5.0),
        ("5 μm", "um", 5.0),
        ("5um", "um", 5.0),
        ("21 ft", "m", 6.4008),
        ("2 in", "mm", 50.8),
        ("100 sq ft", "m2", 9.290304),
        ("1 fl oz", "ml", 29.5735295625),
        ("1 gal", "l", 3.785411784),
        ("65 %", "rh", 65.0),
        ("65 % RH", "rh", 65.0),
        ("42 gr/lb", "gkg", 6.0),
        ("95 %", "ratio", 0.95),
        ("10 mph", "mps", 4.4704),
        ("90 min", "h", 1.5),
        ("1e3", "um", 1000.0),
        ("1e-05", "m", 1e-05),
    ],
)
def test_what_people_type_is_understood(text: str | float, unit: str, value: float) -> None:
    assert parse_quantity(text, unit) == pytest.approx(value, rel=1e-15)


@pytest.mark.parametrize(
    ("text", "unit", "sentence"),
    [
        ("warm", "degc", "'warm' is no number; write it as 18 °C or 64 °F."),
        ("", "degc", "'' is no number; write it as 18 °C or 64 °F."),
        ("nan", "degc", "'nan' is no number; write it as 18 °C or 64 °F."),
        ("inf", "rh", "'inf' is no number; write it as 65 %."),
        ("1,234,5", "degc", "'1,234,5' is no number; write one decimal mark, as in 12.5 or 12,5."),
        ("1.2.3", "degc", "'1.2.3' is no number; write one decimal mark, as in 12.5 or 12,5."),
        ("1,013.25", "hpa", "'1,013.25' is no number; write one decimal mark, as in 12.5 or 12,5."),
        ("1,234", "um", "'1,234' can be read in two ways; write 1234 or 1.234."),
        ("5 mil", "degc", "'5 mil' is a length, not a temperature; write it as 18 °C or 64 °F."),
        ("3 K", "degc", "'3 K' is a temperature difference, not a temperature; write it as 18 °C or 64 °F."),
        ("5 millls", "um", "'millls' in '5 millls' is no unit of length known here; did you mean mil?"),
        ("5 dBm", "db", "'dBm' in '5 dBm' is no unit of sound level known here; did you mean dB?"),
        ("1 013", "hpa", "'013' in '1 013' is no unit of pressure known here; there are hPa, kPa, inHg."),
        (True, "rh", "True is no number; write it as 65 %."),
        (None, "rh", "None is no number; write it as 65 %."),
        (math.nan, "rh", "nan is no number that can be worked with; write it as 65 %."),
        (math.inf, "kg", "inf is no number that can be worked with; write it as 12 kg."),
        ("9" * 61, "rh", "'" + "9" * 60 + "' is no number; write it as 65 %."),
        ("1e99", "rh", "'1e99' is too large to be worked with; write it as 65 %."),
    ],
)
def test_what_is_no_quantity_is_refused_with_an_example(text: object, unit: str, sentence: str) -> None:
    with pytest.raises(UnitError) as refusal:
        parse_quantity(text, unit)  # type: ignore[arg-type]
    assert str(refusal.value) == sentence


def test_a_bare_number_is_in_the_unit_of_its_field() -> None:
    assert parse_quantity("50", "degc", default_unit="degf") == 10.0
    assert parse_quantity("50 °C", "degc", default_unit="degf") == 50.0
    assert parse_quantity(50, "degc", default_unit="degf") == 50.0


@pytest.mark.parametrize("code", sorted(UNITS))
def test_the_example_of_every_unit_can_be_read(code: str) -> None:
    for written in example(code).split(" or "):
        assert parse_quantity(written, code) != 0.0


@pytest.mark.parametrize(
    ("value", "unit", "metric", "us"),
    [
        (18.0, "degc", "18.0\xa0°C", "64.4\xa0°F"),
        (-2.13, "degc", "−2.1\xa0°C", "28.2\xa0°F"),
        (3.0, "K", "3.0\xa0K", "5.4\xa0°F"),
        (65.0, "rh", "65\xa0%", "65\xa0%"),
        (127.0, "um", "127.0\xa0µm", "5.00\xa0mil"),
        (50.0, "ml", "50.0\xa0mL", "1.7\xa0fl\xa0oz"),
        (3.8, "l", "3.8\xa0L", "1.00\xa0gal"),
        (6.4, "m", "6.40\xa0m", "21.0\xa0ft"),
        (80.0, "mm", "80.0\xa0mm", "3.15\xa0in"),
        (14.16, "m2", "14.2\xa0m²", "152\xa0ft²"),
        (200.0, "m3", "200.0\xa0m³", "7063\xa0ft³"),
        (0.28, "ratio", "0.28", "0.28"),
        (12345.0, "ppm", "12345\xa0ppm", "12345\xa0ppm"),
        (-0.04, "degc", "0.0\xa0°C", "31.9\xa0°F"),
    ],
)
def test_everyone_reads_their_own_units(value: float, unit: str, metric: str, us: str) -> None:
    assert (shown(value, unit, METRIC), shown(value, unit, US)) == (metric, us)


def test_each_quantity_is_chosen_on_its_own() -> None:
    mixed = Preferences(temperature="degf", film="um", volume="ml", length="ft")
    assert [symbol(unit, mixed) for unit in ("degc", "K", "um", "ml", "l", "m", "m2")] == [
        "°F",
        "°F",
        "µm",
        "mL",
        "L",
        "ft",
        "ft²",
    ]


def test_a_choice_that_no_quantity_offers_is_refused() -> None:
    with pytest.raises(ValueError, match="temperature can't be shown in 'kelvin'; there are degc, degf"):
        Preferences(temperature="kelvin")


def test_limits_are_written_with_no_more_decimals_than_they_have() -> None:
    assert [shown_plain(value, "rh", METRIC) for value in (1.0, 100.4, 0.02)] == ["1\xa0%", "100.4\xa0%", "0.02\xa0%"]
    assert shown_plain(1013.25, "hpa", METRIC) == "1013.25\xa0hPa"
    assert shown_plain(100.0, "ppm", METRIC) == "100\xa0ppm"


@pytest.mark.parametrize(
    ("value", "decimals", "expected"),
    [(2.675, 2, 2.68), (1.005, 2, 1.01), (-2.5, 0, -3.0), (0.5, 0, 1.0), (1234.5, -2, 1200.0)],
)
def test_rounding_is_half_away_from_zero_as_the_number_is_written(value: float, decimals: int, expected: float) -> None:
    assert rounded(value, decimals) == expected


@pytest.mark.parametrize("value", [-0.0, -0.04, -1e-9])
def test_there_is_no_minus_zero(value: float) -> None:
    assert math.copysign(1.0, rounded(value, 1)) == 1.0
    assert shown(value, "degc", METRIC) == "0.0\xa0°C"


def test_what_is_no_finite_number_cannot_be_rounded() -> None:
    with pytest.raises(ValueError, match="nan can't be rounded"):
        rounded(math.nan, 1)


@given(value=st.floats(-1e6, 1e6), unit=st.sampled_from(BASES), prefs=st.sampled_from([US, METRIC]))
def test_shown_numbers_lead_back(value: float, unit: str, prefs: Preferences) -> None:
    number, _ = to_shown(value, unit, prefs)
    assert from_shown(number, unit, prefs) == pytest.approx(value, rel=1e-12, abs=1e-12)


@given(value=st.floats(-1e6, 1e6), unit=st.sampled_from(BASES), prefs=st.sampled_from([US, METRIC]))
def test_what_is_shown_can_be_typed_back(value: float, unit: str, prefs: Preferences) -> None:
    written = shown(value, unit, prefs, decimals=6)
    assert "-" not in written
    assert parse_quantity(written, unit, prefs.unit_for(unit).code) == pytest.approx(value, rel=1e-5, abs=1e-4)


@given(value=st.floats(-1e9, 1e9), decimals=st.integers(0, 6))
def test_rounding_stays_within_half_a_step_and_rests(value: float, decimals: int) -> None:
    once = rounded(value, decimals)
    assert abs(once - value) <= 0.5 * 10.0**-decimals * (1 + 1e-6) + 1e-6
    assert rounded(once, decimals) == once


@given(text=st.text(max_size=20))
def test_any_text_is_read_or_refused(text: str) -> None:
    with suppress(UnitError):
        assert math.isfinite(parse_quantity(text, "degc"))
