from assessments.rules import num
from assessments.rules.nodes import Field, Logic, Root, Sort


def test_a_sort_without_a_kind_is_that_of_a_faulted_part():
    assert (Sort().name, Sort().is_number) == ("", False)
    assert (Sort(num("um")).name, Sort(num("um")).is_number) == ("num", True)


def test_a_rule_becomes_a_tree_with_places_and_numbers(checked):
    found = checked("answer.sure and key.short")
    assert isinstance(found.root, Logic)
    assert [(type(node), node.number, found.said(node)) for node in found.nodes] == [
        (Root, 0, "answer"),
        (Field, 1, "answer.sure"),
        (Root, 2, "key"),
        (Field, 3, "key.short"),
        (Logic, 4, "answer.sure and key.short"),
    ]
