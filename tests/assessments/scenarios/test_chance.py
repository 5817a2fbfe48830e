"""Chance: every value as likely as the next, the ends included, nothing outside."""

from collections import Counter
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assessments.scenarios.chance import Chance, Span

PART = st.floats(min_value=0, max_value=1, exclude_max=True)


@given(PART, st.integers(-50, 50), st.integers(0, 200), st.sampled_from([1.0, 0.25, 0.1, 0.05]))
def test_what_is_drawn_lies_in_the_span_and_on_a_step(part: float, low: int, steps: int, step: float) -> None:
    span = Span(low, round(low + steps * step, 6), step)
    drawn = Chance(lambda: part).between(span)
    assert drawn in span
    assert abs((drawn - low) / step - round((drawn - low) / step)) < 1e-6


def test_both_ends_come_as_often_as_the_middle() -> None:
    chance = Chance(Random(1).random)
    seen = Counter(chance.between(Span(0, 4, 1)) for _ in range(5000))
    assert set(seen) == {0, 1, 2, 3, 4}
    assert all(900 < times < 1100 for times in seen.values())


@given(PART, st.lists(st.text(min_size=1), min_size=1, max_size=8))
def test_what_is_picked_was_offered(part: float, options: list[str]) -> None:
    assert Chance(lambda: part).pick(options) in options


@given(PART, st.dictionaries(st.text(min_size=1), st.floats(0.1, 9), min_size=1, max_size=6))
def test_a_weighted_name_is_one_of_the_names(part: float, weights: dict[str, float]) -> None:
    assert Chance(lambda: part).weighted(weights) in weights


def test_a_name_comes_as_often_as_its_weight_says() -> None:
    chance = Chance(Random(2).random)
    seen = Counter(chance.weighted({"wait": 1, "coat": 3}) for _ in range(4000))
    assert 2900 < seen["coat"] < 3100


def test_a_thing_happens_in_its_share_of_draws() -> None:
    chance = Chance(Random(3).random)
    assert 1100 < sum(chance.happens(0.3) for _ in range(4000)) < 1300
    assert not any(chance.happens(0.0) for _ in range(100))
    assert all(chance.happens(1.0) for _ in range(100))


def test_a_source_that_never_reaches_one_never_runs_past_the_last() -> None:
    assert Chance(lambda: 1 - 2**-53).whole(7) == 6


@pytest.mark.parametrize(
    ("low", "high", "step", "says"),
    [
        (2, 1, 0.1, "runs upward"),
        (1, 2, 0, "runs upward"),
        (1, 2, 0.3, "isn't reached"),
    ],
)
def test_a_span_that_makes_no_sense_is_refused(low: float, high: float, step: float, says: str) -> None:
    with pytest.raises(ValueError, match=says):
        Span(low, high, step)


def test_a_text_lies_in_no_span() -> None:
    assert "1" not in Span(0, 2, 1)
