import pytest


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        ("every(s.um < 9 for s in answer.steps)", True),
        ("any(s.um > 3 for s in answer.steps)", True),
        ("count(s.wet for s in answer.steps if s.op == 'sand')", 2),
        ("sum(s.um for s in answer.steps)", 6.5),
        ("least(s.um for s in answer.steps if s.wet)", 2.5),
        ("most(s.n for s in answer.steps)", 4),
        ("every(any(t.n > s.n for t in answer.steps) for s in answer.steps)", False),
        ("any(every(t.n >= s.n for t in answer.steps) for s in answer.steps)", True),
        ("sum(count(t.n > s.n for t in answer.steps) for s in answer.steps)", 6),
        ("count(k == 'tell_owner' for k in key.kit)", 1),
        ("any(n > 2 for n in [1, 2, 3])", True),
    ],
)
def test_a_walk_comes_to_what_the_oracle_says(ran, rule, wanted):
    assert ran(rule).value == wanted


@pytest.mark.parametrize("word", ["every", "any", "count"])
@pytest.mark.parametrize("steps", [None, []])
def test_nothing_given_is_not_nothing_done(ran, word, steps):
    found = ran(f"{word}(s.wet for s in answer.steps)", steps=steps)
    assert (found.value is None) is (steps is None)


def test_a_walk_is_made_once_whatever_its_variable_is_called(lines):
    one = "sum(s.um for s in answer.steps) > 1"
    other = "sum(t.um for t in answer.steps) > 2"
    text = lines(one, other, "sum(s.n for s in answer.steps) > 1")
    assert len([line for line in text if line.startswith("for ")]) == 2


def test_a_walk_that_was_made_before_is_recorded_again(code, schema, case):
    from assessments.rules import bind

    rules = ["any(s.um > 3 for s in answer.steps)", "any(t.um > 3 for t in answer.steps)"]
    rules += ["most(s.um for s in answer.steps) > 1", "most(t.um for t in answer.steps) > 1"]
    for steps in (case["answer"]["steps"], [], None):
        case["answer"]["steps"] = steps
        one, two, three, four = code(*rules).runs(bind(schema, case))
        assert (one.value, one.events) == (two.value, two.events)
        assert (three.value, three.events) == (four.value, four.events)


def test_a_list_written_twice_differently_is_walked_twice(lines):
    text = lines("any(n > 2 for n in [1, 2])", "any(n > 2 for n in [1, 3])", "any(n > 2.0 for n in [1, 2])")
    assert len([line for line in text if line.startswith("for ")]) == 3
