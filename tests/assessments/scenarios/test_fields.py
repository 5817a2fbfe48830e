"""Fields and records: checked once, frozen, the same after a trip through JSON."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assessments.scenarios.errors import ValueRefused
from assessments.scenarios.fields import Field, Option, Record

HEATER = Field("heater", "choice", options=(Option("electric", "electric, on a stand"), Option("none", "none")))
FIELDS = (
    Field("air_degc", "quantity", unit="degc", decimals=1),
    Field("rh", "quantity", unit="rh"),
    HEATER,
    Field("shut", "yes_no"),
    Field("note", "text", optional=True),
    Field("margins", "list", items=Field("margin", "quantity", unit="K", decimals=1), most=3),
    Field("rows", "rows", columns=(Field("h", "quantity", unit="h"), Field("dew", "quantity", decimals=1)), most=2),
)
WHOLE: dict[str, object] = {
    "air_degc": 18.4,
    "rh": 61,
    "heater": "none",
    "shut": True,
    "margins": [1.2, 3.0],
    "rows": [{"h": 2, "dew": 9.5}],
}
TENTHS = st.integers(-400, 400).map(lambda tenths: tenths / 10)
RECORDS = st.fixed_dictionaries(
    {
        "air_degc": TENTHS,
        "rh": st.integers(0, 100),
        "heater": st.sampled_from(["electric", "none"]),
        "shut": st.booleans(),
        "margins": st.lists(TENTHS, max_size=3),
        "rows": st.lists(st.fixed_dictionaries({"h": st.integers(0, 9), "dew": TENTHS}), max_size=2),
    },
    optional={"note": st.text()},
)


@given(RECORDS)
def test_a_record_is_the_same_after_json(raw: dict[str, object]) -> None:
    record = Record.of(FIELDS, raw)
    again = Record.of(FIELDS, json.loads(json.dumps(record.as_json())))
    assert again == record
    assert hash(again) == hash(record)


def test_a_record_holds_names_in_the_order_of_the_fields() -> None:
    assert list(Record.of(FIELDS, dict(reversed(WHOLE.items())))) == list(WHOLE)


def test_nothing_in_a_record_can_be_changed() -> None:
    record = Record.of(FIELDS, WHOLE)
    with pytest.raises(TypeError):
        record["rh"] = 3  # type: ignore[index]
    assert isinstance(record["margins"], tuple)
    assert record["rows"] == (Record({"h": 2, "dew": 9.5}),)


def test_whole_numbers_stay_whole() -> None:
    assert json.dumps(Record.of(FIELDS, {**WHOLE, "rh": 61.0}).as_json()["rh"]) == "61"


def test_an_absent_value_is_left_out() -> None:
    assert "note" not in Record.of(FIELDS, {**WHOLE, "note": None})
    assert len(Record.of(FIELDS, WHOLE)) == 6


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"air_degc": 18.44}, "facts.air_degc is 18.44 but is shown to 1 decimals"),
        ({"air_degc": "18"}, "facts.air_degc is '18', not a finite number"),
        ({"air_degc": True}, "not a finite number"),
        ({"air_degc": float("nan")}, "not a finite number"),
        ({"air_degc": None}, "facts.air_degc is missing, and it isn't optional"),
        ({"heater": "electrc"}, "facts.heater is 'electrc'; did you mean electric?"),
        ({"shut": "yes"}, "facts.shut is 'yes', not true or false"),
        ({"note": 3}, "facts.note is 3, not text"),
        ({"margins": "1.2"}, "facts.margins is '1.2', not a list"),
        ({"margins": [1, 2, 3, 4]}, "facts.margins has 4 items; at most 3 fit"),
        ({"margins": [1.25]}, r"facts.margins\[0\] is 1.25"),
        ({"rows": [3]}, r"facts.rows\[0\] is 3, not a row"),
        ({"rows": [{"h": 2, "due": 9.5}]}, r"facts.rows\[0\] has no 'due'; did you mean dew?"),
        ({"air_dec": 3}, "facts has no 'air_dec'; did you mean air_degc?"),
    ],
)
def test_what_doesnt_fit_is_refused_with_its_place_and_value(change: dict[str, object], says: str) -> None:
    with pytest.raises(ValueRefused, match=says):
        Record.of(FIELDS, {**WHOLE, **change})


def test_a_number_is_asked_for_as_a_number() -> None:
    record = Record.of(FIELDS, WHOLE)
    assert record.number("rh") == 61.0
    with pytest.raises(ValueRefused, match="'heater' isn't a number here but 'none'"):
        record.number("heater")
    with pytest.raises(ValueRefused, match="'shut' isn't a number"):
        record.number("shut")


def test_an_option_is_said_in_its_words_and_an_unknown_one_by_its_id() -> None:
    assert HEATER.words_of("electric") == "electric, on a stand"
    assert HEATER.words_of("gas") == "gas"


def test_a_record_shows_what_it_holds() -> None:
    assert repr(Record({"rh": 61})) == "Record({'rh': 61})"
