import pytest


@pytest.mark.parametrize(
    ("rule", "results"),
    [
        ("any(s.op == 'sand' and s.wet and s.um > 3 for s in answer.steps)", [True, True, True, True]),
        ("every(s.op == 'wash' or s.um > 9 for s in answer.steps)", [False, False, False]),
        ("any(not s.wet for s in answer.steps)", [True, False]),
        ("any(s.op == 'dry' or s.wet for s in answer.steps)", [True, False, True]),
        ("every(1 < s.um < 3 for s in answer.steps if s.wet)", [False, False]),
        ("any(1 < s.um < 3 for s in answer.steps)", [True, True]),
        ("any(near(s.um, 4, 1) for s in answer.steps)", [True, True]),
        ("any(answered(s.grit) and s.grit > 3 for s in answer.steps)", [True, True, True]),
        ("any(any(t.n > s.n for t in answer.steps) for s in answer.steps)", [True, True, True]),
        ("any(s.wet for s in answer.steps)", [True, True]),
    ],
)
def test_what_decided_is_recorded_as_if_it_were_worked_out_again(ran, rule, results):
    assert [event[1] for event in ran(rule).events] == results


def test_it_is_not_worked_out_again(lines):
    text = lines("any(s.op == 'sand' and s.um > 3 for s in answer.steps)", traced=True)
    assert len([line for line in text if "> 3" in line]) == 1
