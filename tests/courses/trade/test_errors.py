"""What the trade's arithmetic says when it refuses."""

import pytest

from courses.trade import errors


@pytest.mark.parametrize(
    "kind",
    [
        errors.UnitError,
        errors.OutOfRange,
        errors.ImpossibleChoice,
        errors.MissingInput,
        errors.UnknownInput,
        errors.UnknownSum,
        errors.TableRefused,
        errors.SourceRefused,
    ],
)
def test_every_refusal_is_a_trade_error_and_a_value_error(kind: type[errors.TradeError]) -> None:
    refusal = kind("It is missing.", "air_rh")
    assert isinstance(refusal, errors.TradeError)
    assert isinstance(refusal, ValueError)
    assert (str(refusal), refusal.sentence, refusal.input) == ("air_rh: It is missing.", "It is missing.", "air_rh")


def test_a_refusal_of_no_input_is_the_bare_sentence() -> None:
    assert str(errors.UnknownSum("There is no such sum.")) == "There is no such sum."


def test_near_misses_are_offered_before_the_whole_list() -> None:
    assert errors.offer("air_dgec", ["air_degc", "air_rh", "pressure_hpa"]) == "did you mean air_degc?"
    assert errors.offer("xyz", ["air_degc", "air_rh"]) == "there are air_degc, air_rh."
