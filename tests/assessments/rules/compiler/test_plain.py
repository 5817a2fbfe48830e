import pytest


@pytest.mark.parametrize("word", ["every", "any", "count", "sum", "least", "most"])
def test_nothing_is_asked_for_none_where_everything_is_there(lines, word):
    body = "key.packs" if word in ("sum", "least", "most") else "k == 'tell_owner'"
    text = lines(f"{word}({body} for k in key.kit)")
    assert not [line for line in text if "None" in line and word not in ("least", "most")]


@pytest.mark.parametrize("word", ["least", "most"])
def test_of_equal_values_the_first_is_told(ran, word):
    steps = [{"n": n, "op": "sand", "um": 2.0, "wet": True} for n in (1, 2, 3)]
    assert ran(f"{word}(s.um for s in answer.steps)", steps=steps).events[0][1:] == (2.0, 3, 0)


def test_the_place_that_decided_and_how_many_passed_the_filter(ran):
    assert ran("every(s.um > 3 for s in answer.steps if s.op == 'sand')").events == (
        (10, False, 2, 3),
        (9, False, 2.5, 3),
    )


def test_a_sum_that_runs_out_of_bounds_is_unknown(ran):
    big = "*".join(["s.um"] * 12)
    rule = f"sum(({big}) * ({big}) * s.um for s in answer.steps) > 1"
    steps = [{"n": 1, "op": "sand", "um": 1e12, "wet": True}]
    assert ran(rule, steps=steps).value is True
    assert ran(rule, steps=steps * 3).value is None
