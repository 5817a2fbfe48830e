import pytest

from assessments.rules.backing import claims
from assessments.rules.language import parse


def unbacked(rule):
    made, backs = claims(parse(rule))
    return [claim.said for claim in made if claim not in backs]


SAND = "every(s.wet for s in a.steps if s.op == 'sand')"


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        (SAND, ["with s.op == 'sand'"]),
        ("every(s.wet for s in a.steps)", []),
        (f"{SAND} and any(t.op == 'sand' for t in a.steps)", []),
        (f"{SAND} and any(t.op == 'sand' and t.wet for t in a.steps)", []),
        (f"{SAND} and any(t.wet for t in a.steps if t.op == 'sand')", []),
        (f"{SAND} and count(t.op == 'sand' for t in a.steps) > 1", []),
        (f"{SAND} and any(t.op == 'cut' for t in a.steps)", ["with s.op == 'sand'"]),
        (f"{SAND} and any(t.op == 'sand' for t in a.others)", ["with s.op == 'sand'"]),
        (f"{SAND} and sum(t.n for t in a.steps if t.op == 'sand') > 3", ["with s.op == 'sand'"]),
        (
            "every(s.wet for s in a.steps if s.op == 'sand' and s.n > 2)"
            " and any(t.n > 2 and t.op == 'sand' for t in a.steps)",
            [],
        ),
        ("every(any(t.op == 'wash' for t in a.steps) for s in a.steps if s.op == 'sand')", ["with s.op == 'sand'"]),
        ("every(a)", []),
    ],
)
def test_a_filtered_every_wants_something_that_asks_for_its_items(rule, wanted):
    assert unbacked(rule) == wanted
