"""Three-valued logic against Kleene's strong tables and against SQLite.

Tables: S. C. Kleene, Introduction to Metamathematics, 1952, section 64 (from memory).
"""

import itertools
import sqlite3

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assessments.rules import Schema, check, evaluate, num, truth

T, F, U = True, False, None
NAMES = ("p", "q", "r")
NUMBERS = ("a", "b", "c")
KINDS = {**{name: truth(opt=True) for name in NAMES}, **{name: num(opt=True) for name in NUMBERS}}
SCHEMA = Schema(KINDS)
AND = {(T, T): T, (T, F): F, (T, U): U, (F, T): F, (F, F): F, (F, U): F, (U, T): U, (U, F): F, (U, U): U}
OR = {(T, T): T, (T, F): T, (T, U): T, (F, T): T, (F, F): F, (F, U): U, (U, T): T, (U, F): U, (U, U): U}
NOT = {T: F, F: T, U: U}


def told(rule, **case):
    return evaluate(check(rule, SCHEMA), {**dict.fromkeys(KINDS), **case})[0]


def in_sqlite(text, **case):
    """What SQLite makes of an expression, NULL for what is missing; numbers go in as reals."""
    columns = ", ".join(f"cast(? as {'real' if name in NUMBERS else 'integer'}) as {name}" for name in KINDS)
    with sqlite3.connect(":memory:") as base:
        (wanted,) = base.execute(
            f"select {text} from (select {columns})", [case.get(name) for name in KINDS]
        ).fetchone()
    base.close()
    return None if wanted is None else bool(wanted)


@pytest.mark.parametrize(("p", "q"), list(itertools.product((T, F, U), repeat=2)))
def test_and_or_not_are_the_strong_tables(p, q):
    assert told("p and q", p=p, q=q) is AND[p, q]
    assert told("p or q", p=p, q=q) is OR[p, q]
    assert told("not p", p=p) is NOT[p]


def formulas():
    amounts = st.recursive(
        st.sampled_from([*NUMBERS, "0.0", "2.0"]),
        lambda inner: st.builds(lambda x, y, sign: f"({x} {sign} {y})", inner, inner, st.sampled_from("+-*/")),
        max_leaves=3,
    )
    compared = st.builds(lambda x, y, sign: f"({x} {sign} {y})", amounts, amounts, st.sampled_from(SIGNS))
    return st.recursive(
        st.one_of(st.sampled_from(NAMES), compared),
        lambda inner: st.one_of(
            st.builds(lambda a: f"(not {a})", inner),
            st.builds(lambda a, b, word: f"({a} {word} {b})", inner, inner, st.sampled_from(["and", "or"])),
        ),
        max_leaves=8,
    )


SIGNS = ["<", "<=", ">", ">=", "==", "!="]
VALUES = st.sampled_from([T, F, U])


AMOUNTS = st.sampled_from([None, -2.0, 0.0, 1.0, 3.0])


@settings(deadline=None, max_examples=300)
@given(formulas(), VALUES, VALUES, VALUES, AMOUNTS, AMOUNTS, AMOUNTS)
def test_sqlite_with_null_for_unknown_agrees(formula, p, q, r, a, b, c):
    # SQLite too has NULL for arithmetic with NULL and for a division by zero (sqlite.org, "Expressions"; from memory)
    case = {"p": p, "q": q, "r": r, "a": a, "b": b, "c": c}
    assert told(formula, **case) is in_sqlite(formula, **case)


@pytest.mark.parametrize("sign", SIGNS)
@pytest.mark.parametrize(("a", "b"), [(1.0, 2.0), (2.0, 2.0), (None, 2.0), (2.0, None), (None, None)])
def test_sqlite_compares_with_null_the_same_way(sign, a, b):
    assert told(f"a {sign} b", a=a, b=b) is in_sqlite(f"a {sign} b", a=a, b=b)


@pytest.mark.parametrize(("a", "b", "c"), list(itertools.product((None, 1.0, 2.0, 3.0), repeat=3)))
def test_a_chain_is_what_sqlite_calls_between(a, b, c):
    assert told("a <= b <= c", a=a, b=b, c=c) is in_sqlite("b between a and c", a=a, b=b, c=c)


@pytest.mark.parametrize("a", [None, 1.0, 3.0])
def test_membership_of_what_is_missing_is_what_sqlite_calls_in(a):
    assert told("a in [1, 2]", a=a) is in_sqlite("a in (1, 2)", a=a)
    assert told("a not in [1, 2]", a=a) is in_sqlite("a not in (1, 2)", a=a)


@pytest.mark.parametrize(("p", "a", "b"), list(itertools.product((T, F), (None, 1.0), (None, 3.0))))
def test_a_choice_is_what_sqlite_calls_case(p, a, b):
    rule = "(a if answered(p) and p else b) > 2"
    assert told(rule, p=p, a=a, b=b) is in_sqlite("case when p then a else b end > 2", p=p, a=a, b=b)
