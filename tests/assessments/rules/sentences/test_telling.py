import pytest

from assessments.rules.nodes import Field, Item
from assessments.rules.sentences.naming import Noun
from assessments.rules.sentences.reading import reading
from assessments.rules.sentences.telling import Reference, called, item_under, items_noun, list_of, own_words


@pytest.fixture
def nodes(checked):
    """The parts of a test, by their text."""

    def ask(rule):
        found = checked(rule)
        assert found.ok, found.errors
        return {found.said(node): node for node in found.nodes}

    return ask


@pytest.fixture
def step(nodes):
    return nodes("any(s.air_degc > 3 and s.grit > 1 for s in answer.steps)")


def test_a_field_of_an_item_is_told_from_a_field_of_the_schema(nodes, step):
    assert isinstance(item_under(step["s.air_degc"]), Item)
    assert item_under(nodes("answer.margin > 3")["answer.margin"]) is None


def test_an_item_is_called_as_it_was_introduced(step):
    teller = reading().knowing("s", Reference("that step", "that step's ", Noun("step", "steps")))
    field = step["s.air_degc"]
    assert isinstance(field, Field)
    assert (called(teller, field.of), called(teller, field), own_words(teller, field)) == (
        "that step",
        "that step's air",
        "air",
    )


def test_the_callers_label_of_an_items_field_stands_without_its_owner(step):
    labels = {("answer", "steps", "[]", "air_degc"): "air temperature"}
    teller = reading(labels.get).knowing("s", Reference("it", "its ", Noun("step", "steps")))
    assert called(teller, step["s.air_degc"]) == "its air temperature"


def test_a_list_gives_its_items_a_noun(nodes, step):
    assert items_noun(reading(), step["answer.steps"]) == Noun("step", "steps")
    labelled = reading({("answer", "steps"): "your plan"}.get)
    assert items_noun(labelled, step["answer.steps"]) == Noun("step", "steps", " in your plan")
    written = nodes("any(k == 'a' for k in ['a', 'b'])")["['a', 'b']"]
    assert items_noun(reading(), written) == Noun("item", "items", " of a and b")


def test_the_list_of_an_item_is_known_where_it_has_a_path(nodes, step):
    assert list_of(step["s.air_degc"].of) == ("answer", "steps")
    written = nodes("any(k == 'a' for k in ['a', 'b'])")
    assert list_of(written["k"]) is None
