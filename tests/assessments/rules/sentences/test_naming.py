import pytest

from assessments.rules.sentences.naming import (
    Noun,
    alternatives,
    article,
    field_words,
    is_plural,
    label,
    noun,
    option_words,
)
from assessments.rules.units import Unit


@pytest.mark.parametrize(
    ("path", "unit", "wanted"),
    [
        (("answer", "dew_point"), "degc", "the trainee's dew point"),
        (("answer", "schedule", "at_h"), "h", "the trainee's schedule at"),
        (("answer",), None, "the trainee's answer"),
        (("key", "margin"), "K", "the key's margin"),
        (("facts", "air_rh"), "rh", "the air humidity"),
        (("facts", "rh"), "rh", "the rh"),
        (("model", "film_um"), "um", "the worked film"),
        (("day_plan", "te"), "h", "the day plan te"),
        (("te",), "h", "the te"),
        (("facts", "op"), None, "the act"),
    ],
)
def test_a_value_is_called_by_whose_it_is_and_its_name_as_words(path, unit, wanted):
    assert label(path, Unit.of(unit) if unit else None) == wanted


def test_the_callers_own_label_goes_before_ours():
    labels = {("answer", "dew_point"): "your dew point"}
    assert label(("answer", "dew_point"), None, labels.get) == "your dew point"
    assert label(("answer", "margin"), None, labels.get) == "the trainee's margin"


def test_the_number_of_a_step_is_a_number_and_the_name_of_a_row_a_name():
    assert (field_words("n", None), field_words("n", None, number=False)) == ("number", "name")


@pytest.mark.parametrize(
    ("words", "wanted"),
    [
        ("the trainee's packs", True),
        ("“My readings”", False),
        ("the film", False),
        ("the gloss", False),
        ("the radius", False),
        ("the basis", False),
        ("the gas", False),
        ("the dew point of the key's", False),
    ],
)
def test_plural_names_are_told_from_others(words, wanted):
    assert is_plural(words) is wanted


@pytest.mark.parametrize(
    ("path", "wanted"),
    [
        (("answer", "steps"), Noun("step", "steps")),
        (("key", "steps"), Noun("step", "steps", " of the key")),
        (("day", "steps"), Noun("step", "steps", " of the day")),
        (("steps",), Noun("step", "steps")),
        (("answer", "boxes"), Noun("box", "boxes")),
        (("answer", "entries"), Noun("entry", "entries")),
        (("answer", "day", "steps"), Noun("step", "steps", " in it")),
        (("answer", "kit"), Noun("item", "items", " of it")),
        (None, Noun("item", "items", " of it")),
    ],
)
def test_the_items_of_a_list_are_called_after_it(path, wanted):
    assert noun(path, "it") == wanted


def test_a_list_with_a_label_of_its_own_is_named_by_it():
    assert noun(("answer", "steps"), "your plan", own=True) == Noun("step", "steps", " in your plan")


def test_words_are_put_together():
    assert (article("act"), article("step")) == ("an act", "a step")
    assert [alternatives(words) for words in (["a"], ["a", "b"], ["a", "b", "c"])] == ["a", "a or b", "a, b or c"]
    assert (option_words("warm_the_panel"), option_words("_"), option_words("")) == (
        "warm the panel",
        "nothing",
        "nothing",
    )
    assert Noun("step", "steps", " of it").kind("wash") == Noun("wash step", "wash steps", " of it")
