import ast

import pytest

from assessments.rules.checking.answered import given_if, mark


def part(text):
    return ast.parse(text, mode="eval").body


def marks(*texts):
    return {mark(part(text)) for text in texts}


@pytest.mark.parametrize(
    ("test", "holds", "given"),
    [
        ("answered(a)", True, ["a"]),
        ("answered(a)", False, []),
        ("not answered(a)", False, ["a"]),
        ("not not answered(a)", True, ["a"]),
        ("answered(a.b.c)", True, ["a", "a.b", "a.b.c"]),
        ("answered(a) and answered(b) and c", True, ["a", "b"]),
        ("answered(a) and answered(b)", False, []),
        ("answered(a) or answered(b)", True, []),
        ("not answered(a) or not answered(b)", False, ["a", "b"]),
        ("answered(f(a))", True, ["f(a)"]),
        ("answered()", True, []),
        ("a > 3", True, []),
        ("a.answered(b)", True, []),
    ],
)
def test_a_test_tells_what_must_have_been_answered(test, holds, given):
    assert given_if(part(test), holds) == marks(*given)
