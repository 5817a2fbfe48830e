import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assessments.rules.units import NUMBER, Unit, added, difference, product, quotient, shared, subtracted


def unit(text):
    return Unit.of(text) if text else None


@pytest.mark.parametrize(
    ("left", "right", "wanted"),
    [
        ("um", "um", "um"),
        ("um", None, "um"),
        (None, "um", "um"),
        ("degc", "K", "degc"),
        ("K", "degc", "degc"),
        ("degc", None, "degc"),
        ("K", "K", "K"),
        ("degc", "degc", "Two temperatures can't be added; a temperature and a difference in K can."),
        ("degc", "degC", "Two temperatures can't be added; a temperature and a difference in K can."),
        ("um", "h", "This is in h, but the left side is in um."),
        ("degc", "um", "This is in um, but the left side is in degc."),
    ],
)
def test_sums(left, right, wanted):
    found, why = added(unit(left), unit(right))
    assert (found.text if found else why) == wanted


@pytest.mark.parametrize(
    ("left", "right", "wanted"),
    [
        ("degc", "degc", "K"),
        ("degc", "K", "degc"),
        ("degc", None, "degc"),
        (None, "degc", "K"),
        ("K", "K", "K"),
        ("um", "um", "um"),
        ("K", "degc", "A temperature can't be taken from a difference in K; write the temperature first."),
        ("degc", "degC", "This is in degC, but the left side is in degc."),
        ("um", "h", "This is in h, but the left side is in um."),
    ],
)
def test_differences(left, right, wanted):
    found, why = subtracted(unit(left), unit(right))
    assert (found.text if found else why) == wanted


@pytest.mark.parametrize(
    ("left", "right", "wanted"),
    [
        ("um", "h", "h*um"),
        ("ml/m2", "m2", "ml"),
        ("um", None, "um"),
        (None, "um", "um"),
        ("m", "m", "m2"),
        ("gkg", "kg", "g"),
    ],
)
def test_products(left, right, wanted):
    assert product(unit(left), unit(right)) == unit(wanted)


@pytest.mark.parametrize(
    ("left", "right", "wanted"),
    [
        ("m", "h", "m/h"),
        ("um", "um", "ratio"),
        (None, "h", "1/h"),
        ("um", None, "um"),
        ("m2", "m", "m"),
        ("m", "s", "mps"),
    ],
)
def test_quotients(left, right, wanted):
    assert quotient(unit(left), unit(right)) == unit(wanted)


def test_a_pure_number_is_called_so():
    assert quotient(unit("um"), unit("um")).text == NUMBER.text == "a pure number"
    assert shared(NUMBER, unit("um"))[1] == "This is in um, but the left side is in a pure number."


def test_only_a_temperature_on_its_own_is_a_point():
    assert unit("degc").is_point
    assert not unit("K").is_point
    assert not product(unit("degc"), unit("h")).is_point
    assert difference(unit("degc")).text == "K"
    assert difference(unit("um")).text == "um"
    assert difference(None) is None


names = st.sampled_from(["um", "h", "m2", "ml/m2", "degc", "rh", "g*kg", "ratio"]).map(Unit.of)


@settings(deadline=None)
@given(names, names, names)
def test_units_multiply_like_numbers(a, b, c):
    assert a.times(b) == b.times(a)
    assert a.times(b).times(c) == a.times(b.times(c))
    assert a.times(b).over(b) == a
    assert hash(a.times(b)) == hash(b.times(a))
