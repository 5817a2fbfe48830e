import pytest

from assessments.rules.nodes import Quantifier
from assessments.rules.sentences.deciding import Deciders

CASE = {
    "answer": {
        "steps": [{"n": 1, "op": "wash"}, {"op": "test_spot"}, {"n": 3}],
        "next_steps": ["tell_owner"],
    },
    "key": None,
}


@pytest.fixture
def walks(checked):
    """The quantifiers of a rule, the outer first."""

    def ask(rule):
        found = checked(rule)
        assert found.ok, found.errors
        return sorted((node for node in found.nodes if isinstance(node, Quantifier)), key=lambda node: node.start)

    return ask


@pytest.mark.parametrize(("place", "wanted"), [(0, "step 1 (wash)"), (1, "step 2 (test spot)"), (2, None), (3, None)])
def test_a_step_is_named_by_its_number_and_its_act(walks, place, wanted):
    (walk,) = walks("any(s.wet for s in answer.steps)")
    assert Deciders(CASE).called(walk, place) == wanted


def test_an_item_that_is_a_word_is_named_by_it(walks):
    (picks,) = walks("any(k == 'tell_owner' for k in answer.next_steps)")
    (written,) = walks("any(k == 'it_stays' for k in ['it_stays'])")
    assert Deciders(CASE).called(picks, 0) == "next step tell owner"
    assert Deciders(CASE).called(written, 0) == "item it stays"


def test_without_a_case_or_a_list_in_it_nothing_has_a_name(walks):
    (steps,) = walks("any(s.wet for s in answer.steps)")
    (kit,) = walks("any(k == 'tell_owner' for k in key.kit)")
    assert Deciders().called(steps, 0) is None
    assert Deciders(CASE).called(kit, 0) is None
    assert Deciders({"key": {"kit": [7]}}).called(kit, 0) is None
    assert Deciders({"key": {"kit": 7}}).listed(kit) is None


def test_a_list_inside_an_item_is_that_of_the_item_that_decided(schema):
    from assessments.rules import Schema, check

    nested = {
        "t": "rec",
        "fields": {
            "steps": {
                "t": "list",
                "item": {
                    "t": "rec",
                    "fields": {"covers": {"t": "list", "item": {"t": "enum", "vals": ["bow", "side"]}}},
                },
            }
        },
    }
    found = check("any(any(c == 'bow' for c in s.covers) for s in steps)", Schema.of(nested))
    outer, inner = sorted((node for node in found.nodes if isinstance(node, Quantifier)), key=lambda node: node.start)
    deciders = Deciders({"steps": [{"covers": ["side"]}, {"covers": ["side", "bow"]}]})
    assert deciders.called(inner, 0) is None
    assert deciders.called(outer, 1) is None
    assert deciders.called(inner, 1) == "cover bow"


def test_the_acts_of_a_list_are_told_where_every_step_has_one(walks):
    (steps,) = walks("any(s.wet for s in answer.steps)")
    whole = {"answer": {"steps": [{"n": 4, "op": "wash"}, {"op": "sand"}]}}
    assert Deciders(whole).acts(steps.items) == [(4, "wash"), (2, "sand")]
    assert (Deciders(CASE).acts(steps.items), Deciders().acts(steps.items)) == (None, None)
