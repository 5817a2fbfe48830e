import pytest


@pytest.mark.parametrize("word", ["count", "sum"])
def test_a_walk_of_nothing_starts_from_a_whole_number(ran, word):
    body = "s.um" if word == "sum" else "s.wet"
    assert repr(ran(f"{word}({body} for s in answer.steps)", steps=[]).events[0][1]) == "0"


@pytest.mark.parametrize("word", ["least", "most"])
def test_the_extreme_of_nothing_is_unknown(ran, word):
    assert ran(f"{word}(s.um for s in answer.steps)", steps=[]).value is None
