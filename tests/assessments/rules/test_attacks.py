"""Each attack is refused by a sentence, at a place, before anything runs; what is read does no harm."""

import json

import pytest

from assessments.rules import Fault, bind, evaluate, try_rule
from assessments.rules.checking.language import MAX_CHARACTERS, parse
from tests.assessments.rules.attacks import HARMLESS, KINDS, LOOPS, REFUSED, SIZES


@pytest.mark.parametrize("rule", list(REFUSED.values()), ids=list(REFUSED))
def test_an_attack_is_refused_by_a_sentence_at_a_place(checked, rule):
    found = checked(rule)
    assert not found.ok
    assert found.errors
    for fault in found.errors:
        assert fault.message.endswith((".", "?"))
        assert len(fault.message) < 1000
        assert isinstance(rule, str) is (fault.start is not None)
        if isinstance(rule, str):
            assert 0 <= fault.start <= fault.end <= len(rule)


@pytest.mark.parametrize("rule", list(REFUSED.values()), ids=list(REFUSED))
def test_no_word_of_pythons_parser_reaches_whoever_wrote_it(checked, rule):
    said = " ".join(fault.message for fault in checked(rule).errors).lower()
    for word in (
        "syntax",
        "python",
        "expression",
        "generator",
        "parenthes",
        "literal",
        "decimal",
        "statement",
        "traceback",
    ):
        assert word not in said


@pytest.mark.parametrize("rule", list(HARMLESS.values()), ids=list(HARMLESS))
def test_what_is_odd_but_harmless_is_read_and_gives_a_verdict(checked, schema, case, rule):
    found = checked(rule)
    assert found.ok, found.errors
    assert evaluate(found, bind(schema, case))[0] in (True, False, None)


@pytest.mark.parametrize("name", [name for name in SIZES if name.startswith("a megabyte")])
def test_a_megabyte_is_refused_by_its_length_before_anything_looks_at_it(name):
    rule = SIZES[name]
    assert parse(rule) == Fault(
        f"The rule has {len(rule)} characters, at most {MAX_CHARACTERS} are read.", MAX_CHARACTERS, len(rule)
    )


def test_a_text_is_refused_by_its_length_without_being_walked():
    class Unwalked(str):
        __slots__ = ()

        def __iter__(self):
            raise AssertionError("The text was walked.")

        def strip(self, *letters):
            raise AssertionError("The text was stripped.")

        def encode(self, *how):
            raise AssertionError("The text was encoded.")

    assert parse(Unwalked("a" * (MAX_CHARACTERS + 1))).message.startswith("The rule has 601 characters")


@pytest.mark.parametrize("rule", [rule for rule in REFUSED.values() if isinstance(rule, str) and len(rule) < 700])
def test_the_door_answers_every_attack_with_json(shape, case, functions, rule):
    told = try_rule({"schema": shape, "case": case, "rule": rule}, functions)
    assert (told["ok"], told["verdict"], told["trace"]) == (False, None, [])
    assert json.loads(json.dumps(told))["errors"]


def test_every_attack_has_a_text_of_its_own():
    texts = [repr(rule) for rule in (*REFUSED.values(), *HARMLESS.values())]
    assert len(texts) == len(set(texts)) >= 180
    assert {"three deep", "a walk that costs too much"} <= set(LOOPS)
    assert "is" in KINDS


def test_a_product_beyond_all_bounds_is_unknown(value):
    big = "*".join(["answer.packs"] * 20)
    assert value(f"{big} * ({big}) > 1", packs=10**9) is None
    assert value(f"near({big}, 1.5, 1)", packs=10**9) is False
