"""Rules written by chance, judged by generated code and by the closures: nothing may leak and nothing may differ.

RAKING_FUZZ_SECONDS says for how long (4 by default), RAKING_FUZZ_SEED where to begin; a failure prints its seed.
"""

import os
import time
from collections import Counter
from random import Random

import pytest

from assessments.rules import Rule, RuleBook, Step, check, check_book, judge, prepare
from assessments.rules.compiler import DRAWN, Compiled
from assessments.rules.faults import FunctionFailed
from tests.assessments.rules.oracle import marking
from tests.assessments.rules.oracle.cases import FUNCTIONS, SCHEMA, bound, documents
from tests.assessments.rules.oracle.frame import Frame, compact
from tests.assessments.rules.oracle.writing import WAYS, Writer

SECONDS = float(os.environ.get("RAKING_FUZZ_SECONDS", "4"))
SEED = int(os.environ.get("RAKING_FUZZ_SEED", time.time_ns() % 10**9))
RESTS = {"model": ("answer.steps",), "model.film": ("answer.place.where",)}
LOOSE = SCHEMA.with_missing(("model",))
FRESH_CASES = 40


def until_the_end(share):
    """Count for so much of the time there is."""
    end, turn = time.monotonic() + SECONDS * share, 0
    while time.monotonic() < end:
        yield turn
        turn += 1


def raised(act, *values):
    """What a call gives, or the sentence of the function that failed."""
    try:
        return repr(act(*values))
    except FunctionFailed as failure:
        return str(failure)


def both(checked, case):
    """What is to be the same of a rule on a case: as generated code has it, and as the oracle does."""
    compiled, closure = Compiled([checked]), marking.runnable(checked)
    found, wanted = compiled.run(case), marking.run(closure, case)
    silent = marking.run(closure, case, frozenset(case) - DRAWN)
    ours = {
        "value": raised(lambda: compiled.values(case)[0]),
        "traced": (repr(found.value), found.failed),
        "events": repr(found.events),
        "operands": repr([(number, operands) for number, _, operands in found.whole]),
        "silent": raised(lambda: compiled.silent(case)[0]),
    }
    theirs = {
        "value": raised(closure, Frame(case)),
        "traced": (repr(wanted.value), wanted.failed),
        "events": repr(compact(wanted.events).events),
        "operands": repr([(number, operands) for number, _, operands in wanted.events]),
        "silent": silent.failed or repr(silent.value),
    }
    return ours, theirs


@pytest.mark.parametrize("seed", [SEED])
def test_every_text_is_refused_or_means_the_same_to_both(seed, capsys):
    chance, came = Random(seed), Counter()
    cases = bound(chance)
    for turn in until_the_end(0.5):
        way = chance.choice(["well typed", *WAYS])
        rule = WAYS[way](chance)
        checked = check(rule, SCHEMA, FUNCTIONS, "any" if way == "values" else "bool")
        came["accepted" if checked.ok else "refused"] += 1
        assert checked.ok is not bool(checked.errors)
        cases = bound(chance) if turn % FRESH_CASES == 0 else cases
        for case in cases if checked.ok else ():
            ours, theirs = both(checked, case)
            assert ours == theirs, f"seed {seed}: {rule}"
    with capsys.disabled():
        print(f"\nfuzz, seed {seed}: {came['accepted']} rules accepted, {came['refused']} refused")
    assert came["accepted"]
    assert came["refused"]


def sound(chance, wants):
    """Return the first rule by chance that may stand in a book."""
    writers = iter(lambda: Writer(chance), None)
    texts = (writer.number(2) if wants == "num" else writer.truth(chance.choice([1, 2, 3])) for writer in writers)
    return next(text for text in texts if check(text, LOOSE, FUNCTIONS, wants).ok)


def some_rule(chance, code):
    """Return a rule with a test, with steps or with a share, some of them guarded."""
    how = chance.choice(["test", "test", "steps", "share"])
    said = {
        "test": lambda: sound(chance, "bool"),
        "steps": lambda: tuple(Step(sound(chance, "bool"), 1) for _ in range(chance.choice([1, 2, 3]))),
        "share": lambda: sound(chance, "num"),
    }[how]()
    guard = sound(chance, "bool") if chance.random() < 0.3 else None
    return Rule(code, "S", "points", 2, "B", "practice", when=guard, **{how: said})


@pytest.mark.parametrize("seed", [SEED])
def test_a_book_by_chance_gives_the_mark_that_the_oracle_gives(seed):
    chance = Random(seed)
    for _ in until_the_end(0.5):
        count = chance.choice([1, 3, 8, 30])
        rules = tuple(some_rule(chance, f"COA-01.{number}") for number in range(count))
        book = RuleBook("COA-01", 1, rules)
        if check_book(book, SCHEMA, FUNCTIONS, RESTS):
            continue
        prepared = prepare(book, SCHEMA, FUNCTIONS, RESTS)
        for document in documents(chance):
            ours, theirs = judge(prepared, document), marking.judge(prepared, document)
            assert repr(ours) == repr(theirs), f"seed {seed}: {rules}"
