"""What a sum is made of: inputs that read what people type, and notes that speak anyone's units."""

import pytest

from courses.trade.errors import ImpossibleChoice, MissingInput, OutOfRange, TradeError, UnitError, UnknownInput
from courses.trade.ranges import Range
from courses.trade.sums import Input, Note, Quantity
from courses.trade.sums.shape import read_inputs
from courses.trade.units import Preferences

US = Preferences.us()
AIR = Input("air_degc", "Air temperature", "degc", -20.0, 50.0)
PRESSURE = Input("pressure_hpa", "Air pressure", "hpa", 700.0, 1100.0, 1013.25)
INSTRUMENT = Input("instrument_degc", "Temperature of the instrument", "degc", -60.0, 60.0, optional=True)
PAD = Input("pad", "Pad", default="wool", choices=("wool", "foam_cut", "foam_finish"))
READINGS = Input("before_um", "Readings before", "um", -50.0, 5000.0, count=(2, 5))
HOURS = Input("hours", "History", columns=(Input("h", "Hours", "h", 0.0, 48.0), AIR))


@pytest.mark.parametrize("blank", [None, "", "  "])
def test_what_is_left_blank_takes_its_default(blank: str | None) -> None:
    assert (PRESSURE.read(blank), INSTRUMENT.read(blank), PAD.read(blank)) == (1013.25, None, "wool")


def test_only_an_input_without_a_default_is_needed() -> None:
    assert [wanted.needed for wanted in (AIR, PRESSURE, INSTRUMENT, PAD, HOURS)] == [True, False, False, False, True]


@pytest.mark.parametrize(
    ("wanted", "sentence"),
    [
        (AIR, "air_degc: Air temperature is missing; give a value such as 18 °C or 64 °F."),
        (Input("pad", "Pad", choices=("wool", "foam")), "pad: Pad is missing; give one of wool, foam."),
        (READINGS, "before_um: Readings before is missing; give readings such as 92 95 90 94 96."),
        (HOURS, 'hours: History is missing; give rows such as [{"h": …, "air_degc": …}].'),
    ],
)
def test_what_is_needed_and_missing_is_named_with_an_example(wanted: Input, sentence: str) -> None:
    with pytest.raises(MissingInput) as refusal:
        wanted.read(None)
    assert str(refusal.value) == sentence


def test_a_bare_number_in_text_is_in_the_units_of_the_person() -> None:
    assert (AIR.read("50"), AIR.read("50", US), AIR.read("50 °C", US), AIR.read(50, US)) == (50.0, 10.0, 50.0, 50.0)


@pytest.mark.parametrize(
    ("wanted", "given", "kind", "sentence"),
    [
        (AIR, "warm", UnitError, "air_degc: 'warm' is no number; write it as 18 °C or 64 °F."),
        (AIR, [20], UnitError, "air_degc: '[20]' is no number; give one value."),
        (AIR, True, UnitError, "air_degc: True is no number; write it as 18 °C or 64 °F."),
        (AIR, 60, OutOfRange, "air_degc: 60\xa0°C lies outside −20\xa0°C to 50\xa0°C; give a value within."),
        (PAD, "wol", ImpossibleChoice, "pad: 'wol' is none of the choices; did you mean wool?"),
        (PAD, 3, ImpossibleChoice, "pad: '3' is none of the choices; there are wool, foam_cut, foam_finish."),
        (READINGS, "92", ImpossibleChoice, "before_um: Give 2 to 5 readings; this holds 1."),
        (READINGS, [1, 2, 3, 4, 5, 6], ImpossibleChoice, "before_um: Give 2 to 5 readings; this holds 6."),
        (READINGS, 92, UnitError, "before_um: '92' is no list; write readings such as 92 95 90 94 96."),
        (READINGS, "92 warm", UnitError, "before_um: 'warm' is no number; write it as 120 µm or 5 mil."),
        (
            READINGS,
            [92, 9000],
            OutOfRange,
            "before_um: 9000\xa0µm lies outside −50\xa0µm to 5000\xa0µm; give a value within.",
        ),
        (HOURS, "20", ImpossibleChoice, 'hours: \'20\' is no list of rows; write [{"h": …, "air_degc": …}].'),
        (HOURS, [20], ImpossibleChoice, 'hours: \'[20]\' is no list of rows; write [{"h": …, "air_degc": …}].'),
        (
            HOURS,
            [{"h": 6, "air_degc": 20}, {"h": 60, "air_degc": 20}],
            OutOfRange,
            "hours, row 2, h: 60\xa0h lies outside 0\xa0h to 48\xa0h; give a value within.",
        ),
    ],
)
def test_what_cannot_be_is_refused_by_name(wanted: Input, given: object, kind: type[TradeError], sentence: str) -> None:
    with pytest.raises(kind) as refusal:
        wanted.read(given)
    assert str(refusal.value) == sentence


def test_a_range_is_told_in_the_units_of_the_person() -> None:
    with pytest.raises(OutOfRange) as refusal:
        AIR.read("140", US)
    assert refusal.value.sentence == "140\xa0°F lies outside −4\xa0°F to 122\xa0°F; give a value within."


def test_an_input_opens_over_the_range_of_its_formula() -> None:
    span = Range(700.0, 1100.0, "hpa")
    assert Input.over(span, "pressure_hpa", "Air pressure", 1013.25) == PRESSURE


def test_an_input_without_a_range_takes_any_number() -> None:
    assert Input("share", "Share", "ratio").read("95 %") == 0.95


def test_a_choice_is_taken_as_it_stands() -> None:
    assert PAD.read("foam_cut") == "foam_cut"


def test_rows_are_read_column_by_column() -> None:
    assert HOURS.read([{"h": "90 min", "air_degc": "68 °F"}]) == ({"h": 1.5, "air_degc": 20.0},)


@pytest.mark.parametrize("given", [[92, 95.5, "90"], "92 95,5 90", "[92, 95.5, 90]", "92; 95.5; 90", "92.0,95.5,90"])
def test_readings_are_taken_as_people_write_them(given: object) -> None:
    assert READINGS.read(given) == (92.0, 95.5, 90.0)


def test_readings_are_in_the_units_of_the_person_and_listed_with_their_count() -> None:
    assert READINGS.read("3.5 4", US) == pytest.approx((88.9, 101.6))
    assert READINGS.listed()["count"] == [2, 5]


def test_an_unknown_name_is_refused_with_the_nearest() -> None:
    with pytest.raises(UnknownInput) as refusal:
        read_inputs((AIR, PRESSURE), {"air_dgc": 20})
    assert str(refusal.value) == "air_dgc: There is no such input; did you mean air_degc?"


def test_an_input_is_listed_as_the_door_tells_it() -> None:
    assert PAD.listed() == {
        "name": "pad",
        "unit": None,
        "min": None,
        "max": None,
        "default": "wool",
        "choices": ["wool", "foam_cut", "foam_finish"],
        "columns": None,
    }
    assert HOURS.listed()["columns"] == [column.listed() for column in HOURS.columns]
    assert AIR.listed() == {
        "name": "air_degc",
        "unit": "degc",
        "min": -20.0,
        "max": 50.0,
        "default": None,
        "choices": None,
        "columns": None,
    }


def test_a_note_is_said_in_anyones_units() -> None:
    note = Note("Off by {air} and {rh}.", (("air", Quantity(0.5, "K")), ("rh", Quantity(3.0, "rh"))))
    assert str(note) == "Off by 0.5\xa0K and 3\xa0%."
    assert note.said(US) == "Off by 0.9\xa0°F and 3\xa0%."
