import pytest


@pytest.mark.parametrize(
    "rule",
    [
        "any()",
        "any(answer.steps)",
        "any(s.wet for s in answer.steps, 3)",
        "any([s.wet for s in answer.steps])",
        "any(test=answer.sure)",
        "any(True for s in answer.steps for t in answer.steps)",
        "any(s.wet for s in answer.steps if s.wet if s.wet)",
    ],
)
def test_a_quantifier_is_written_in_one_way(found, rule):
    ((_, said, _),) = found(rule)
    assert "any(test for x in list)" in said


def test_a_loop_variable_is_a_fresh_plain_name(found):
    assert found("any(key.wet for key in answer.steps)") == [
        ("key", "The name 'key' is taken; use a fresh one such as s or t.", None),
    ]


def test_what_an_inner_list_may_lack_is_asked_for_too(found):
    rule = "any(s.wet for s in answer.steps if any(t.grit > s.grit for t in answer.steps))"
    assert [part for part, _, _ in found(rule)] == ["any(t.grit > s.grit for t in answer.steps)"]
    assert found("any(s.wet for s in answer.steps if any(answered(t.grit) and t.grit > 3 for t in answer.steps))") == []


def test_a_list_of_plain_items_is_walked_as_well_as_one_of_records(value):
    assert value("every(k in answer.next_steps for k in key.kit)") is True
    assert value("count(k == 'tell_owner' for k in answer.next_steps)") == 1
    assert value("any(n > 2 for n in [1, 2, 3])") is True
