"""The shared rules, each checked by itself against the names that all scenarios have in common.

A scenario's book is checked again against what that scenario holds: here only the widest reading is tried.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from assessments.rules.checking.checker import check
from assessments.rules.functions import Function
from assessments.rules.kinds import Schema
from assessments.rules.nodes import Call
from assessments.rules.prepare import RuleFault, check_book, refusal
from assessments.rules.rule import Rule, RuleBook, SharedBook, SharedRule


def check_shared(shared: SharedBook, names: Schema, functions: Iterable[Function] = ()) -> tuple[RuleFault, ...]:
    """Return every fault of every shared rule, empty when books may refer to them.

    >>> from assessments.rules.kinds import choice, record
    >>> rule = SharedRule("R21", "Right decision", "answer.decison == 'wait'", "…", "practice")
    >>> schema = Schema({"answer": record({"decision": choice(["wait"])})})
    >>> check_shared(SharedBook({"R21": rule}), schema)[0].fault.message
    "There is no field 'decison'; did you mean 'decision'?"
    """
    lent = tuple(functions)
    return tuple(fault for book in _alone(shared) for fault in check_book(book, names, lent))


def refuse_shared(shared: SharedBook, names: Schema, functions: Iterable[Function] = ()) -> None:
    """Raise BookRefused, with file, line and key, for the first fault of a shared rule."""
    lent = tuple(functions)
    for book in _alone(shared):
        for fault in check_book(book, names, lent):
            raise refusal(book, fault)


def points_only(shared: SharedBook, names: Schema, functions: Iterable[Function] = ()) -> frozenset[str]:
    """Return the codes of the shared rules that look for words: people read text, so a book gives these points only."""
    lent = tuple(functions)
    return frozenset(book.code for book in _alone(shared) if _mentions(book.rules[0], names, lent))


def _alone(shared: SharedBook) -> Iterator[RuleBook]:
    """Yield each shared rule as a book of its own, weighed as lightly as can be."""
    for rule in shared.rules.values():
        yield RuleBook(rule.code, 1, (_weighed(rule),))


def _weighed(rule: SharedRule) -> Rule:
    return Rule(
        rule.code,
        rule.sentence,
        "points",
        1,
        rule.because,
        rule.source,
        rule.lesson,
        test=rule.test,
        when=rule.when,
        places=rule.places,
    )


def _mentions(rule: Rule, names: Schema, functions: tuple[Function, ...]) -> bool:
    checks = (check(part.text, names, functions, part.wants) for part in rule.parts)
    return any(isinstance(node, Call) and node.name == "mentions" for checked in checks for node in checked.nodes)
