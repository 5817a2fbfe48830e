"""Sentences: told wherever nothing is asked of them."""

from assessments.scenarios.story import metric, told
from assessments.scenarios.wording import Sentence


def test_a_sentence_without_conditions_is_always_told() -> None:
    assert told((Sentence("The hull is dry."),), {}, (), metric) == "The hull is dry."


def test_a_sentence_is_told_where_all_its_conditions_hold() -> None:
    sentence = Sentence("Chalk.", given="cloth", where={"wax": ("no",)}, asked=("wipe",), not_asked=("acid",))
    values = {"cloth": "white", "wax": False}
    assert told((sentence,), values, (), metric, ("wipe",)) == "Chalk."
    assert told((sentence,), values, (), metric, ("wipe", "acid")) == ""
    assert told((sentence,), values, (), metric) == ""
    assert told((sentence,), {"wax": False}, (), metric, ("wipe",)) == ""
    assert told((sentence,), {**values, "wax": True}, (), metric, ("wipe",)) == ""
