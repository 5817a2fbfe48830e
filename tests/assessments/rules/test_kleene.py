"""Three-valued logic against Kleene's strong tables and against SQLite.

Tables: S. C. Kleene, Introduction to Metamathematics, 1952, section 64 (from memory).
"""

import itertools
import sqlite3

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assessments.rules import Schema, check, evaluate, truth

T, F, U = True, False, None
NAMES = ("p", "q", "r")
SCHEMA = Schema({name: truth(opt=True) for name in NAMES})
AND = {(T, T): T, (T, F): F, (T, U): U, (F, T): F, (F, F): F, (F, U): F, (U, T): U, (U, F): F, (U, U): U}
OR = {(T, T): T, (T, F): T, (T, U): T, (F, T): T, (F, F): F, (F, U): U, (U, T): T, (U, F): U, (U, U): U}
NOT = {T: F, F: T, U: U}


def told(rule, **case):
    return evaluate(check(rule, SCHEMA), {**dict.fromkeys(NAMES), **case})[0]


@pytest.mark.parametrize(("p", "q"), list(itertools.product((T, F, U), repeat=2)))
def test_and_or_not_are_the_strong_tables(p, q):
    assert told("p and q", p=p, q=q) is AND[p, q]
    assert told("p or q", p=p, q=q) is OR[p, q]
    assert told("not p", p=p) is NOT[p]


def formulas():
    atoms = st.sampled_from(NAMES)
    return st.recursive(
        atoms,
        lambda inner: st.one_of(
            st.builds(lambda a: f"(not {a})", inner),
            st.builds(lambda a, b, word: f"({a} {word} {b})", inner, inner, st.sampled_from(["and", "or"])),
        ),
        max_leaves=8,
    )


VALUES = st.sampled_from([T, F, U])


@settings(deadline=None)
@given(formulas(), VALUES, VALUES, VALUES)
def test_sqlite_with_null_for_unknown_agrees(formula, p, q, r):
    with sqlite3.connect(":memory:") as base:
        (wanted,) = base.execute(f"select {formula} from (select ? as p, ? as q, ? as r)", (p, q, r)).fetchone()
    base.close()
    assert told(formula, p=p, q=q, r=r) is (None if wanted is None else bool(wanted))


@pytest.mark.parametrize("sign", ["<", "<=", "==", "!="])
@pytest.mark.parametrize(("a", "b"), [(1, 2), (2, 2), (None, 2), (2, None), (None, None)])
def test_sqlite_compares_with_null_the_same_way(sign, a, b):
    from assessments.rules import integer

    schema = Schema({"a": integer(opt=True), "b": integer(opt=True)})
    with sqlite3.connect(":memory:") as base:
        (wanted,) = base.execute(f"select ? {sign} ?", (a, b)).fetchone()
    base.close()
    found = evaluate(check(f"a {sign} b", schema), {"a": a, "b": b})[0]
    assert found is (None if wanted is None else bool(wanted))
