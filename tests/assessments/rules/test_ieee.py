"""`near` against decimal arithmetic, and the facts of IEEE 754 binary64 that it makes up for."""

import struct
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from assessments.rules.vocabulary import SLACK, near, near_rel


def bits(value):
    """The 64 bits of a binary64 number, most significant first (IEEE 754-2019, 3.4; from memory)."""
    return struct.pack(">d", value).hex()


def test_a_tenth_is_no_binary_fraction():
    # IEEE 754 binary64: sign, 11 bits of exponent, 52 of fraction; 0.1 is 0x1.999999999999ap-4, rounded up.
    assert bits(0.1) == "3fb999999999999a"
    assert Fraction(0.1) == Fraction(3602879701896397, 2**55) != Fraction(1, 10)


@pytest.mark.parametrize(
    ("worked", "written", "last_bit_apart"),
    [(0.1 + 0.2, 0.3, 1), (1.1 - 1.0, 0.1, 6), (0.3 - 0.2, 0.1, -2), (4.35 * 100, 435.0, -1), (1.15 + 2.3, 3.45, -1)],
)
def test_what_is_equal_in_decimals_differs_in_the_last_bits_and_is_near_all_the_same(worked, written, last_bit_apart):
    assert worked != written
    assert int(bits(worked), 16) - int(bits(written), 16) == last_bit_apart
    assert near(worked, written, 0)


def decimals(most):
    return st.integers(-most, most).map(lambda thousandths: Decimal(thousandths) / 1000)


@settings(deadline=None, max_examples=500)
@given(decimals(10**7), decimals(10**7), decimals(10**5).map(abs))
@example(Decimal("1.1"), Decimal("1.0"), Decimal("0.1"))
@example(Decimal("0.3"), Decimal("0.2"), Decimal("0.1"))
@example(Decimal("0.301"), Decimal("0.2"), Decimal("0.1"))
@example(Decimal("41.05"), Decimal("40.0"), Decimal("1.05"))
def test_near_is_what_decimal_arithmetic_says_the_limit_included(a, b, tolerance):
    assert near(float(a), float(b), float(tolerance)) is (abs(a - b) <= tolerance)


@settings(deadline=None, max_examples=500)
@given(decimals(10**7), decimals(10**7), st.integers(0, 100))
@example(Decimal("105.0"), Decimal("100.0"), 5)
@example(Decimal("105.001"), Decimal("100.0"), 5)
@example(Decimal("1.1"), Decimal("1.0"), 10)
def test_near_rel_is_what_decimal_arithmetic_says_of_a_percentage_of_the_second(a, b, percent):
    gap = abs(a - b) - abs(b) * percent / 100
    if 0 < gap <= Decimal(SLACK) * max(1, abs(a), abs(b)) * 2:
        return  # finer than any tolerance of ours: here the slack may decide
    assert near_rel(float(a), float(b), percent) is (gap <= 0)


def test_the_slack_is_a_thousand_millionth_of_the_larger_value_and_never_less_than_of_one():
    assert near(1e6 + 0.0009, 1e6, 0)
    assert not near(1e6 + 0.0011, 1e6, 0)
    assert near(9e-10, 0, 0)
    assert not near(1.1e-9, 0, 0)
