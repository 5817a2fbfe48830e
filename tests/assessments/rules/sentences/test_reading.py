"""Rules read back as sentences: the shared rules of the curriculum as one would show them to a person, and every
construct of the language once. What a sentence should be is common practice of plain English, no source."""

import re
from itertools import combinations, product

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from assessments.rules import (
    Function,
    Schema,
    bind,
    check,
    choice,
    evaluate,
    integer,
    many,
    num,
    read_back,
    record,
    text,
    truth,
)

OPS = [
    "wash",
    "sand",
    "dry",
    "inspect",
    "tape",
    "wipe",
    "test_spot",
    "record",
    "tell",
    "rinse",
    "flush_prove",
    "bleach",
]
ACTS = ["remove_source", "ventilate", "mask", "flush", "call"]
ZONES = ["bow", "side", "all"]
KIT = ["gloves", "half_mask", "full_mask"]
CELLS = ["A1", "A2"]
STEP = record(
    {
        "n": integer(),
        "op": choice([*OPS, *ACTS]),
        "zone": choice(ZONES),
        "family": choice(["abrade", "chem"]),
        "covers": many(choice(ZONES), 8),
        "panel_degc": num("degc"),
        "next_abrade": integer(),
        "next_chem": integer(),
    }
)
SHARED = Schema(
    {
        "facts": record(
            {
                "reserve": num("um"),
                "econ": num(),
                "true_defect": choice(["swirl", "scratch"]),
                "missing": choice(["film"]),
                "given": many(choice(["film"])),
                "limit_degc": num("degc"),
                "formula": choice(["a", "b"]),
                "air": choice(["known", "unknown"]),
            }
        ),
        "answer": record(
            {
                "steps": many(STEP, 40, opt=True),
                "zones": many(record({"n": choice(ZONES), "verdict": choice(["refer", "polish"])}), opt=True),
                "cells": many(choice(CELLS), opt=True),
                "last_abrade": integer(opt=True),
                "defect": choice(["swirl", "scratch"], opt=True),
                "asked": many(choice(["film", "contact_probe"]), opt=True),
                "decision": choice(["coat_now", "wait"], opt=True),
                "kit": many(choice(KIT), opt=True),
                "kit_items": many(choice(KIT), opt=True),
                "te": num("h", opt=True),
                "area": num("m2", opt=True),
                "formula": choice(["a", "b"], opt=True),
                "packs": integer(opt=True),
                "note": text(opt=True),
                "controls": many(record({"op": choice(ACTS)}), opt=True),
                "flush_min": num("min", opt=True),
                "remedies": many(choice(["fuel_heater", "flame"]), opt=True),
            }
        ),
        "model": record(
            {
                "film_um": num("um", opt=True),
                "removed_um": num("um", opt=True),
                "tail_um": num("um", opt=True),
                "own_tail_um": num("um", opt=True),
                "verdict": choice(["pass", "redo", "harm"], opt=True),
                "bad_pairs": integer(opt=True),
                "drip_pairs": integer(opt=True),
            }
        ),
        "key": record(
            {
                "needed_cut": num("um"),
                "refer_zones": many(choice(ZONES), 8),
                "record_zones": many(choice(ZONES), 8),
                "required": many(choice(CELLS)),
                "required_n": integer(),
                "allowed": many(choice(CELLS)),
                "decision": choice(["coat_now", "wait"]),
                "kit": many(choice(KIT)),
                "te": num("h"),
                "area": num("m2"),
                "packs": integer(),
                "slack_pct": num("pct"),
            }
        ),
    }
)


def without_hard_spaces(sentence):
    return sentence.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        (
            "every(any(t.op=='wash' and t.n<s.n for t in answer.steps) for s in answer.steps if s.family=='abrade')",
            "For every step whose family is abrade, there is a wash step that comes before it.",
        ),
        ("model.film_um >= facts.reserve", "The worked film is at least the reserve."),
        ("model.verdict != 'harm'", "The worked verdict is not harm."),
        ("model.verdict == 'pass'", "The worked verdict is pass."),
        (
            "model.removed_um <= facts.econ * key.needed_cut",
            "The worked removed is at most the econ × the key's needed cut.",
        ),
        (
            "model.tail_um <= model.own_tail_um + 0.2",
            "The worked tail is at most the worked own tail + 0.2 µm.",
        ),
        (
            "every(any(d.op=='dry' and d.n>s.n and d.n<s.next_abrade for d in answer.steps) and any(t.op=='inspect'"
            " and t.n>s.n and t.n<s.next_abrade for t in answer.steps) for s in answer.steps if s.op=='sand')",
            "For every sand step, there is a dry step that comes after it and that comes before its next abrade,"
            " and there is an inspect step that comes after it and that comes before its next abrade.",
        ),
        (
            "any(t.op=='wipe' and t.n>answer.last_abrade for t in answer.steps)",
            "There is a wipe step that comes after the trainee's last abrade.",
        ),
        (
            "every(any(z.n==k and z.verdict=='refer' for z in answer.zones) for k in key.refer_zones)",
            "For every refer zone of the key, there is a zone whose name is that refer zone"
            " and whose verdict is refer.",
        ),
        (
            "not any((s.family=='abrade' or s.op=='test_spot') and overlap(s.covers, key.refer_zones) > 0"
            " for s in answer.steps)",
            "There is no step for which both (either its family is abrade or it is test spot)"
            " and at least one item of its covers is among the key's refer zones.",
        ),
        (
            "every(any(s.op=='record' and (k=='all' or s.zone==k) for s in answer.steps) for k in key.record_zones)"
            " and any(s.op=='tell' for s in answer.steps)",
            "For every record zone of the key, there is a record step for which either that record zone is all"
            " or that step's zone is that record zone; and there is a tell step.",
        ),
        (
            "overlap(answer.cells, key.required) >= 0.8*key.required_n",
            "The number of cells that are among the key's required is at least 0.8 × the key's required n.",
        ),
        (
            "count(c not in key.allowed for c in answer.cells) <= 2",
            "There are at most 2 cells that are not among the key's allowed.",
        ),
        ("answer.defect == facts.true_defect", "The trainee's defect is the true defect."),
        ("facts.missing in answer.asked", "The missing is among the trainee's asked."),
        (
            "count(a in facts.given for a in answer.asked) <= 2",
            "There are at most 2 items of the trainee's asked that are among the given.",
        ),
        ("answer.decision == key.decision", "The trainee's decision is the key's decision."),
        ("'contact_probe' in answer.asked", "Contact probe is among the trainee's asked."),
        ("every(k in answer.kit for k in key.kit)", "Every item of the key's kit is among the trainee's kit."),
        (
            "model.bad_pairs == 0 and model.drip_pairs == 0",
            "The worked bad pairs are 0, and the worked drip pairs are 0.",
        ),
        (
            "every(any((t.op=='flush_prove' or t.op=='rinse' and s.op!='bleach') and t.n>s.n and t.n<s.next_chem"
            " for t in answer.steps) for s in answer.steps if s.family=='chem' and s.next_chem>0)",
            "For every step whose family is chem and whose next chem is over 0, there is a step that comes after it and"
            " that comes before its next chem and for which either that step is flush prove or (both that step is rinse"
            " and it is not bleach).",
        ),
        (
            "every(s.panel_degc < facts.limit_degc for s in answer.steps if s.family=='chem')",
            "For every step whose family is chem, its panel is under the limit.",
        ),
        ("near_rel(answer.te, key.te, 5)", "The trainee's te is within 5 % of the key's te."),
        (
            "answer.formula == facts.formula and near_rel(answer.area, key.area, 1)",
            "The trainee's formula is the formula, and the trainee's area is within 1 % of the key's area.",
        ),
        (
            "answer.packs == key.packs or key.slack_pct < 5.0 and answer.packs == key.packs + 1",
            "Either the trainee's packs are the key's packs; or both the key's slack is under 5 %"
            " and the trainee's packs are the key's packs + 1.",
        ),
        (
            "mentions(answer.note, ['leave','stays','cannot'])",
            "The trainee's note mentions one of the words “leave”, “stays” or “cannot”.",
        ),
        (
            "any(c.op=='remove_source' for c in answer.controls)"
            " and not starts_before(answer.controls,'mask','remove_source')",
            "There is a remove source control, and among the trainee's controls no mask comes before the first"
            " remove source (where there is one).",
        ),
        (
            "facts.air == 'known' or overlap(answer.kit_items, ['half_mask','full_mask']) == 0",
            "Either the air is known or no kit item is one of half mask or full mask.",
        ),
        (
            "any(s.op=='flush' for s in answer.steps) and not starts_before(answer.steps,'call','flush')"
            " and answer.flush_min >= 15.0",
            "There is a flush step, no call comes before the first flush (where there is one),"
            " and the trainee's flush is at least 15 min.",
        ),
        ("answer.decision != 'coat_now'", "The trainee's decision is not coat now."),
        ("overlap(answer.remedies, ['fuel_heater','flame']) == 0", "No remedy is one of fuel heater or flame."),
    ],
)
def test_a_shared_rule_reads_as_one_would_show_it(rule, wanted):
    checked = check(rule, SHARED)
    assert checked.ok, checked.errors
    assert without_hard_spaces(read_back(checked)) == wanted


def test_labels_and_units_are_the_callers():
    labels = {("answer", "flush_min"): "your minutes of flushing", ("answer", "steps"): "your plan"}
    rule = check("answer.flush_min >= 15 and any(s.op == 'flush' for s in answer.steps)", SHARED)
    wanted = "Your minutes of flushing is at least 15 {min}, and there is a flush step in your plan."
    assert read_back(rule, labels.get, lambda value, unit: f"{value} {{{unit}}}") == wanted


def test_the_words_of_a_choice_are_the_callers_too():
    labels = {
        ("answer", "decision", "coat_now"): "“Coat now”",
        ("answer", "asked", "[]", "film"): "“Film, in µm”",
        ("answer", "steps", "[]", "zone", "bow"): "“Bow”",
    }
    rule = check(
        "answer.decision in ['coat_now', 'wait'] and 'film' in answer.asked"
        " and any(s.zone == 'bow' for s in answer.steps)",
        SHARED,
    )
    assert read_back(rule, labels.get) == (
        "The trainee's decision is one of “Coat now” or wait, “Film, in µm” is among the trainee's asked,"
        " and there is a step whose zone is “Bow”."
    )


def test_a_rule_with_errors_reads_as_nothing(checked):
    assert read_back(checked("answer.stpes")) == ""


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        ("facts.cold", "The cold is yes."),
        ("not facts.cold", "The cold is no."),
        ("True", "This always holds."),
        ("not True", "This never holds."),
        (
            "facts.cold and not (key.short or answer.sure)",
            "The cold is yes, the key's short is no, and the trainee's sure is no.",
        ),
        ("not (facts.cold and answer.packs > 3)", "Either the cold is no or the trainee's packs are not over 3."),
        (
            "not any(s.op == 'sand' for s in answer.steps) or before(answer.steps, 'wash', 'sand')",
            "If there is a sand step, then the last wash comes before the first sand, and both are there.",
        ),
        (
            "answer.packs > 3 if facts.cold else answer.packs < 2 and key.short",
            "If the cold is yes, then the trainee's packs are over 3, and otherwise (both the trainee's packs are"
            " under 2 and the key's short is yes).",
        ),
        (
            "1 < answer.packs in [2, 3]",
            "The trainee's packs are over 1, and the trainee's packs are one of 2 or 3.",
        ),
        (
            "not (1 < answer.packs in [2, 3])",
            "Either the trainee's packs are not over 1 or the trainee's packs are not one of 2 or 3.",
        ),
        ("(answer.packs > 3) == facts.cold", "(Whether the trainee's packs are over 3) is the cold."),
        ("before(answer.steps, 'sand', 'wipe')", "The last sand comes before the first wipe, and both are there."),
        (
            "starts_before(answer.steps, 'sand', 'wipe')",
            "The first sand comes before the first wipe, and both are there.",
        ),
        (
            "not before(answer.steps, 'sand', 'wipe')",
            "The last sand does not come before the first wipe (where both are there).",
        ),
        ("after_each(answer.steps, 'sand', 'wipe')", "Every sand is followed at once by wipe."),
        (
            "before(answer.steps, 'sand', 'wipe') and facts.cold",
            "The last sand comes before the first wipe, and both are there; and the cold is yes.",
        ),
        ("not after_each(answer.steps, 'sand', 'wipe')", "Some sand is not followed at once by wipe."),
    ],
)
def test_joined_and_ordered_tests_read_as_sentences(checked, rule, wanted):
    found = checked(rule)
    assert found.ok, found.errors
    assert without_hard_spaces(read_back(found)) == wanted


@pytest.mark.parametrize(
    ("rule", "wants", "wanted"),
    [
        (
            "overlap(answer.next_steps, key.kit) / len(key.kit)",
            "num",
            "The share of the points is the number of next steps that are among the key's kit"
            " ÷ the number of items of the key's kit.",
        ),
        ("answer.decision", "any", "The value is the trainee's decision."),
    ],
)
def test_a_share_is_read_as_a_share_and_a_value_as_a_value(checked, rule, wants, wanted):
    assert read_back(checked(rule, wants)) == wanted


ANY = Schema(
    {
        "answer": record(
            {
                "x": num("degc"),
                "k": num("K"),
                "n": integer(),
                "yes": truth(),
                "note": text(),
                "op": choice(OPS),
                "steps": many(STEP, 5),
                "picks": many(choice(OPS), 3),
                "spans": many(num("K"), 3),
            }
        ),
        "key": record({"picks": many(choice(OPS), 3), "op": choice(OPS)}),
        "facts": record({"degc": num("degc"), "cold": truth(), "plain": num()}),
    }
)
LENT = (
    Function("dew_point", (num("degc"), num("rh")), num("degc"), 1, lambda degc, rh: degc),
    Function("is_wet", (num("degc"),), truth(), 1, lambda degc: True),
    Function("pi", (), num(), 1, lambda: 3.14),
)
degrees = st.sampled_from(
    ["answer.x", "facts.degc", "dew_point(answer.x, 65.5)", "(answer.x + 1.5)", "(facts.degc - answer.k)"]
)
spans = st.sampled_from(
    [
        *("answer.k", "-answer.k", "-1.5", "(answer.x - facts.degc)", "abs(answer.x - facts.degc)", "abs(answer.k)"),
        *(
            "(answer.k * 2.5)",
            "-(answer.k - 1)",
            "(answer.k if facts.cold else 2.5)",
            "sum(answer.k for s in answer.steps)",
        ),
        *("least(x for x in answer.spans)", "most(s.panel_degc - answer.x for s in answer.steps if s.n > 1)"),
    ]
)
counts = st.sampled_from(
    [
        *("answer.n", "3", "0", "1", "len(answer.steps)", "len(answer.note)", "overlap(answer.picks, key.picks)"),
        *("count(s.op == 'sand' for s in answer.steps)", "sum(s.n * 2 for s in answer.steps)", "(answer.n - (1 - 2))"),
        *("count(p in ['sand', 'wash'] for p in key.picks)", "overlap(['sand', 'dry'], answer.picks)"),
    ]
)
signs = st.sampled_from(["<", "<=", ">", ">=", "==", "!="])


def compared(values):
    pair = st.builds(lambda a, sign, b: f"{a} {sign} {b}", values, signs, values)
    return pair | st.builds(lambda a, one, b, two, c: f"{a} {one} {b} {two} {c}", values, signs, values, signs, values)


def items(inner, name, taken):
    """Return tests of one item of the steps, the outer item in reach where there is one."""
    outer = taken or "answer"
    own = [
        f"{name}.op == 'sand'",
        f"'wash' != {name}.op",
        f"{name}.op in ['dry', 'tape']",
        f"{name}.n < 3",
        f"3 >= {name}.n",
    ]
    own += [f"{name}.n < {outer}.n", f"{outer}.n != {name}.n", f"not {name}.n < {outer}.n", f"{name}.zone != 'bow'"]
    own += [f"1 < {name}.n < 4", f"overlap({name}.covers, {name}.covers) > 1", f"near({name}.panel_degc, 20, 1.5)"]
    own += [f"any(c == 'bow' for c in {name}.covers)"] if not taken else []
    return st.sampled_from(own) | inner


def walked(inner):
    """Return quantifiers over the steps, one in another now and then."""
    within = st.builds(
        lambda word, test, keep: f"{word}({test} for t in answer.steps{keep})",
        st.sampled_from(["every", "any"]),
        items(inner, "t", "s"),
        st.sampled_from(["", " if t.op == 'wash'", " if t.zone == s.zone and not t.n == 2"]),
    )
    return st.builds(
        lambda word, test, keep: f"{word}({test} for s in answer.steps if {keep})",
        st.sampled_from(["every", "any"]),
        items(inner, "s", "") | within,
        items(inner, "s", ""),
    )


leaves = st.one_of(
    compared(degrees),
    compared(spans),
    compared(counts),
    st.builds("near({}, {}, {})".format, degrees, degrees, spans),
    st.builds("near_rel({}, {}, {})".format, spans, spans, st.sampled_from(["5", "facts.plain"])),
    st.sampled_from(
        [
            *("answer.yes", "facts.cold", "answer.yes != facts.cold", "is_wet(answer.x)", "pi() > 3", "True", "False"),
            *(
                "answer.op == key.op",
                "answer.op in key.picks",
                "'sand' not in answer.picks",
                "answer.op in ['dry', 'tape']",
            ),
            *("norm(answer.note) == 'it stays'", "norm(answer.note) not in ['a b', 'c']", "answered(answer.note)"),
            *("mentions(answer.note, ['left'])", "mentions(answer.note, ['left', 'stays'])", "answered(facts.plain)"),
            *("before(answer.steps, 'wash', 'sand')", "starts_before(answer.steps, 'wash', 'sand')"),
            *("after_each(answer.steps, 'sand', 'dry')", "any(p == answer.op for p in ['sand', 'dry'])"),
            *(
                "every(p in key.picks for p in answer.picks)",
                "every(any(q == p for q in key.picks) for p in answer.picks)",
            ),
            "any((any(q == p or p == answer.op for q in key.picks) and p != 'dry') for p in answer.picks)",
        ]
    ),
)
accepted = st.recursive(
    leaves,
    lambda inner: st.one_of(
        st.builds("({} {} {})".format, inner, st.sampled_from(["and", "or"]), inner),
        st.builds("(not {})".format, inner),
        st.builds("({} if {} else {})".format, inner, inner, inner),
        st.builds("(({}) == answer.yes)".format, inner),
        walked(inner),
    ),
    max_leaves=6,
)
CODE = re.compile(r"[=<>_\[\]{}*\"\\]|\bTrue\b|\bFalse\b|\bNone\b|[a-z]\.[a-z]|\(\s*\)|  ")


@settings(max_examples=400, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(accepted)
def test_every_accepted_rule_reads_back_as_one_sentence_with_no_code_in_it(rule):
    checked = check(rule, ANY, LENT)
    assume(checked.ok)
    said = read_back(checked)
    assert said[-1] == "."
    assert re.search(r"\.\s", said) is None
    assert said.lstrip("(")[0].upper() == said.lstrip("(")[0]
    assert CODE.search(said) is None, said
    assert said.count("(") == said.count(")")


FLAGS = Schema({name: truth() for name in "abcd"})


def formulas(names):
    """Return every formula of and, or, not and if-else over these names in their order."""
    if len(names) == 1:
        yield from (names, f"not {names}")
        return
    for cut in range(1, len(names)):
        for one, other, word in product(formulas(names[:cut]), formulas(names[cut:]), ("and", "or")):
            yield from (f"({one}) {word} ({other})", f"not (({one}) {word} ({other}))")
    for cut, end in combinations(range(1, len(names)), 2):
        for test, yes, no in product(formulas(names[:cut]), formulas(names[cut:end]), formulas(names[end:])):
            yield f"({yes}) if ({test}) else ({no})"


def test_no_two_logics_read_alike():
    """CPython's own eval says what a formula means; formulas that mean different things must read differently."""
    cases = [dict(zip("abcd", values, strict=True)) for values in product([False, True], repeat=4)]
    heard = {}
    for rule in (each for names in ("ab", "abc", "abcd") for each in formulas(names)):
        means = [eval(rule, {}, case) for case in cases]
        assert heard.setdefault(read_back(check(rule, FLAGS)), means) == means, rule
    assert len(heard) > 1000


ITEMS = Schema({"steps": many(record({"n": integer(), "op": choice(["wash", "sand"]), "um": num("um")}), 4)})
OF_S = ["s.op == 'sand'", "s.op != 'sand'", "s.um > 2", "s.n < 3"]
OF_S += ["s.op == 'sand' and s.um > 2", "s.op == 'wash' or s.um > 2"]
OF_T = ["t.n < s.n", "not t.n < s.n", "t.um > s.um", "t.op == s.op"]
OF_T += ["t.um > s.um or t.op == 'sand'", "s.um > 2 and t.op != 'wash'"]


def test_no_two_walks_of_a_list_read_alike():
    """Rules that read alike come out alike on every list of up to three steps."""
    words = ("every", "any")
    walks = [f"{word}({test} for s in steps if {keep})" for word, test, keep in product(words, OF_S, OF_S)]
    walks += [
        f"{outer}({inner}({test} for t in steps if {also}) for s in steps if {keep})"
        for outer, inner in product(words, repeat=2)
        for test, also, keep in product(OF_T, OF_T, OF_S)
    ]
    kinds = [{"op": op, "um": um} for op, um in product(["wash", "sand"], [1.0, 3.0])]
    lists = [each for length in range(4) for each in product(kinds, repeat=length)]
    cases = [bind(ITEMS, {"steps": [{"n": n, **step} for n, step in enumerate(each, 1)]}) for each in lists]
    heard = {}
    for rule in walks:
        checked = check(rule, ITEMS)
        came_out = [evaluate(checked, case)[0] for case in cases]
        assert heard.setdefault(read_back(checked), came_out) == came_out, rule
    assert len(heard) > 800
