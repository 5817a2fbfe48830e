"""Values that somebody wrote: returned with their type, or refused in a sentence that says where."""

from collections.abc import Callable
from typing import Any

import pytest

from courses.trade.errors import PlanRefused
from courses.trade.surface.raw import Raw

HERE = Raw({"a": 2, "b": "two", "c": True, "d": [1, 2], "e": None, "f": 2.5}, "surface")


@pytest.mark.parametrize(
    ("read", "value"),
    [
        (lambda: HERE.number("a", 0, 3), 2.0),
        (lambda: HERE.whole("a", 0, 3), 2),
        (lambda: HERE.word("b", ["one", "two"]), "two"),
        (lambda: HERE.text("b", ""), "two"),
        (lambda: HERE.text("z", "none"), "none"),
        (lambda: HERE.flag("c", False), True),
        (lambda: HERE.flag("z", False), False),
        (lambda: HERE.numbers("d", 0, 3, 4), (1.0, 2.0)),
        (lambda: HERE.objects("z", 4), ()),
        (lambda: HERE.grade("z", "P1500"), "P1500"),
        (lambda: HERE.only("abcdef"), HERE),
    ],
)
def test_a_value_of_its_type_is_returned(read: Callable[[], Any], value: Any) -> None:
    assert read() == value


@pytest.mark.parametrize(
    ("read", "said"),
    [
        (lambda: HERE.number("a", 3, 4), "surface a: A is 2; write a number from 3 to 4."),
        (lambda: HERE.number("e", 0, 1), "surface e: E is None; write a number from 0 to 1."),
        (lambda: HERE.whole("f", 0, 3), "surface f: F is 2.5; write a whole number."),
        (lambda: HERE.word("b", ["one", "three"]), "surface b: B is 'two'; there are one, three."),
        (lambda: HERE.word("z", ["one"]), "surface z: Z is left out; there are one."),
        (lambda: HERE.text("a", ""), "surface a: A is no text of at most 200 characters."),
        (lambda: HERE.flag("a", True), "surface a: A is 2; write true or false."),
        (lambda: HERE.numbers("b", 0, 3, 4), "surface b: B is 'two'; write a list of 1 to 4 numbers."),
        (lambda: HERE.objects("d", 4), "surface d 1: Number 1 of d is no object."),
        (lambda: HERE.grade("b", ""), "surface b: There is no grade 'two'"),
        (lambda: HERE.only("abc"), "surface d: There is no 'd' here; there are a, b, c."),
        (lambda: Raw.of([], "plan 1", "No step."), "plan 1: No step."),
        (lambda: Raw.of({1: 2}, "plan 1", "No step."), "plan 1: No step."),
    ],
)
def test_anything_else_is_refused_with_its_place(read: Callable[[], Any], said: str) -> None:
    with pytest.raises(PlanRefused) as refused:
        read()
    assert str(refused.value).startswith(said)
