import pytest


def rows(*grits):
    return [{"n": n, "op": "sand", "um": 1.0, "wet": bool(n % 2), "grit": grit} for n, grit in enumerate(grits)]


@pytest.mark.parametrize(
    ("rule", "grits", "wanted", "place"),
    [
        ("every(s.grit > 800 for s in answer.steps)", (900, None, 700), False, 2),
        ("every(s.grit > 800 for s in answer.steps)", (900, None, None), None, 1),
        ("any(s.grit > 800 for s in answer.steps)", (None, 900), True, 1),
        ("any(s.grit > 800 for s in answer.steps)", (700, None), None, 1),
        ("any(s.grit > 800 for s in answer.steps)", (700, 800), False, None),
        ("every(s.grit > 800 for s in answer.steps if s.wet)", (None, 900, None), True, None),
    ],
)
def test_the_first_item_that_leaves_it_open_is_told(ran, rule, grits, wanted, place):
    found = ran(rule, steps=rows(*grits))
    assert found.value is wanted
    assert found.events[0][3] == place


@pytest.mark.parametrize(
    "rule",
    [
        "count(s.wet for s in answer.steps if answer.packs > s.n)",
        "sum(s.um + answer.packs * s.um for s in answer.steps)",
        "most(s.um * answer.packs for s in answer.steps)",
        "least(s.um for s in answer.steps if answer.sure)",
        "every(s.wet for s in answer.steps if answer.packs > s.n)",
        "any(s.op == 'sand' and answer.packs > s.n for s in answer.steps)",
    ],
)
@pytest.mark.parametrize("packs", [None, 0, 3])
def test_an_unknown_from_outside_leaves_the_whole_unknown(ran, rule, packs):
    found = ran(rule, packs=packs, sure=None if packs is None else packs > 1)
    assert (found.value is None) is (packs is None or ("least" in rule and packs == 0))


def test_an_item_of_which_the_filter_is_unknown_counts_as_unknown(ran):
    assert ran("any(s.wet for s in answer.steps if answer.packs > s.n)", packs=None).value is None
