"""Whole numbers on a command line."""

import pytest

from assessments.management.numbers import whole_number
from courses.management.door import DoorError


@pytest.mark.parametrize(("word", "number"), [("7", 7), ("0", 0), (" 12 ", 12), (str(2**63 - 1), 2**63 - 1)])
def test_a_whole_number_is_read(word: str, number: int) -> None:
    assert whole_number("--seed", word) == number


@pytest.mark.parametrize("word", ["x", "", "-1", "1.5", "1e3", "٣", "9" * 40, "+3", "0x10"])
def test_what_is_none_is_refused_with_what_would_be_right(word: str) -> None:
    with pytest.raises(DoorError, match="--seed is .*; give a whole number from 0 to 9223372036854775807, such as"):
        whole_number("--seed", word)


def test_too_few_or_too_many_are_refused() -> None:
    with pytest.raises(DoorError, match="--seeds is '0'; give a whole number from 1 to 10"):
        whole_number("--seeds", "0", least=1, most=10)
    with pytest.raises(DoorError, match="--seeds is '11'"):
        whole_number("--seeds", "11", least=1, most=10)
