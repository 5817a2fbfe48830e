import ast

import pytest

from assessments.rules.checking.asking import at_least_one, called, is_own, links, loop_of, spots


def tree(rule):
    return ast.parse(rule, mode="eval").body


def demanded(rule, of):
    seen = spots(tree(rule.replace("x", of)))
    return [(spot.sign, spot.firm) for spot in seen if ast.unparse(spot.part) == of]


@pytest.mark.parametrize(
    ("rule", "sign", "firm"),
    [
        ("x", 1, True),
        ("x and y", 1, True),
        ("x or y", 1, False),
        ("not x", -1, True),
        ("1 + (x) > 2", 0, False),
        ("not (x or y)", -1, True),
        ("not (x and y)", -1, False),
        ("not not x", 1, True),
        ("(x) == y", 0, False),
        ("near(x, 1, 1)", 0, False),
        ("x if y else z", 1, False),
        ("y if x else z", 0, False),
        ("any(x for s in key.a)", 1, True),
        ("any(s.ok for s in key.a if x)", 1, True),
        ("not any(x for s in key.a)", -1, True),
        ("not any(x for s in answer.a)", -1, False),
        ("every(x for s in key.a)", 1, True),
        ("every(x for s in answer.a)", 1, False),
        ("every(x for s in key.a if s.ok)", 1, False),
        ("every(s.ok for s in key.a if x)", -1, False),
        ("not every(x for s in key.a)", -1, True),
        ("count(x for s in key.a) > 1", 0, False),
    ],
)
def test_a_part_knows_whether_it_has_to_hold(rule, sign, firm):
    assert demanded(rule, "x > 1") == [(sign, firm)]


def test_only_a_quantifier_as_it_is_written_is_a_loop():
    assert loop_of(tree("any(s.wet for s in a if s.ok)")).word == "any"
    for other in ("any(a)", "any()", "a.b(s for s in a)", "any(s for s, t in a)", "3"):
        assert loop_of(tree(other)) is None


def test_what_a_word_is_called_with():
    assert [ast.unparse(each) for each in called(tree("len(a.b)"), "len", "overlap")] == ["a.b"]
    assert called(tree("abs(a)"), "len") == called(tree("a"), "len") == ()


def test_the_trainees_own_list_stands_under_answer():
    assert [is_own(tree(items)) for items in ("answer", "answer.a.b", "key.answer", "answers.a", "['a']")] == [
        True,
        True,
        False,
        False,
        False,
    ]


def test_a_link_that_must_not_hold_is_turned_round():
    part = tree("3 <= n < m")
    assert [sign.__name__ for _, sign, _ in links(part, 1)] == ["LtE", "Lt"]
    assert [sign.__name__ for _, sign, _ in links(part, -1)] == ["Gt", "GtE"]


@pytest.mark.parametrize(
    ("link", "sides"),
    [
        ("n > 0", ["n"]),
        ("n >= 0", []),
        ("n >= 1", ["n"]),
        ("n > key.n", ["n"]),
        ("2 < n", ["n"]),
        ("n <= 2", []),
        ("n < 2", []),
        ("n == 2", ["n"]),
        ("n == 0", []),
        ("n != 0", ["n"]),
        ("n != 2", []),
        ("n == key.n", ["n", "key.n"]),
    ],
)
def test_the_side_that_has_to_be_more_than_nothing(link, sides):
    ((left, operator, right),) = links(tree(link), 1)
    assert [ast.unparse(side) for side in at_least_one(left, operator, right)] == sides
