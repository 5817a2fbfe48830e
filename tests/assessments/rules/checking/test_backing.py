import pytest

from assessments.rules.checking.asking import spots
from assessments.rules.checking.backing import Ask, asked, op_is
from assessments.rules.checking.habits import claims
from assessments.rules.checking.language import parse

SAND = "every(s.wet for s in a.steps if s.op == 'sand')"
SANDING = Ask("a.steps", frozenset({op_is("sand")}))


def unbacked(rule):
    parsed = parse(rule)
    seen = spots(parsed.tree)
    return [claim.warning for claim in claims(parsed, seen) if not claim.settled(asked(seen).named)]


def backs(rule):
    return SANDING in asked(spots(parse(rule).tree)).firm


@pytest.mark.parametrize(
    "rule",
    [
        f"{SAND} and any(t.op == 'sand' for t in a.steps)",
        f"{SAND} and any(t.op == 'sand' and t.wet for t in a.steps)",
        f"{SAND} and any(t.wet for t in a.steps if t.op == 'sand')",
        f"{SAND} and count(t.op == 'sand' for t in a.steps) > 1",
        f"{SAND} and sum(t.n for t in a.steps if t.op == 'sand') > 3",
        f"{SAND} and before(a.steps, 'sand', 'wipe')",
        f"not any(t.op == 'sand' for t in a.steps) or {SAND}",
        "every(s.wet for s in a.steps if s.op == 'sand' and s.n > 2)"
        " and any(t.n > 2 and t.op == 'sand' for t in a.steps)",
        f"not {SAND}",
    ],
)
def test_a_filtered_every_is_backed_by_what_speaks_of_its_items(rule):
    assert unbacked(rule) == []


@pytest.mark.parametrize(
    "rule",
    [
        SAND,
        f"{SAND} and any(t.op == 'cut' for t in a.steps)",
        f"{SAND} and any(t.op == 'sand' for t in a.others)",
        f"{SAND} and any(t.wet for t in a.steps)",
        f"{SAND} and sum(t.n for t in a.steps if t.op == 'sand') <= 3",
        "every(any(t.op == 'wash' for t in a.steps) for s in a.steps if s.op == 'sand')",
    ],
)
def test_a_filtered_every_is_not_backed_by_anything_else(rule):
    (said,) = unbacked(rule)
    assert said == "This is met when no item is there with s.op == 'sand'; ask for one with any() or count() as well."


@pytest.mark.parametrize(
    ("rule", "firm"),
    [
        ("any(s.op == 'sand' for s in a.steps)", True),
        ("any(s.op == 'sand' for s in a.steps) and a.ok", True),
        ("any(s.op == 'sand' for s in a.steps) or a.ok", False),
        ("not any(s.op == 'sand' for s in a.steps)", False),
        ("not every(s.wet for s in a.steps if s.op == 'sand')", True),
        ("every(s.wet for s in a.steps if s.op == 'sand')", False),
        ("count(s.op == 'sand' for s in a.steps) >= 2", True),
        ("2 * count(s.op == 'sand' for s in a.steps) / 3 >= 2", True),
        ("not count(s.op == 'sand' for s in a.steps) < 2", True),
        ("3 <= count(s.op == 'sand' for s in a.steps) <= 8", True),
        ("count(s.op == 'sand' for s in a.steps) <= 8", False),
        ("count(s.op == 'sand' for s in a.steps) == 0", False),
        ("every(any(s.op == 'sand' and s.zone == k for s in a.steps) for k in key.zones)", True),
        ("every(any(s.op == 'sand' and s.zone == t.zone for s in a.steps) for t in a.steps if t.ok)", False),
        ("before(a.steps, 'wash', 'sand')", True),
        ("not before(a.steps, 'wash', 'sand')", False),
        ("1 > 0 if any(s.op == 'sand' for s in a.steps) else 1 < 0", False),
    ],
)
def test_a_rule_backs_others_by_what_it_asks_for_whatever_else_holds(rule, firm):
    assert backs(rule) is firm


@pytest.mark.parametrize(
    ("rule", "firm"),
    [
        ("len(answer.a) > 0", True),
        ("len(answer.a) <= 3", False),
        ("overlap(answer.a, key.a) >= 0.8 * key.n", True),
        ("overlap(answer.a, key.a) == 0", False),
        ("overlap(answer.a, key.a) == len(answer.a)", False),
        ("key.best in answer.a", True),
        ("key.best not in answer.a", False),
        ("not key.best not in answer.a", True),
        ("every(k in answer.a for k in key.a)", True),
        ("any(d in key.a for d in answer.a)", True),
    ],
)
def test_any_item_of_a_list_may_be_asked_for(rule, firm):
    assert (Ask("answer.a") in asked(spots(parse(rule).tree)).firm) is firm
