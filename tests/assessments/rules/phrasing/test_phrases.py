"""Every phrase, filled in every way that is offered, is a rule without errors, warnings and code on the page."""

import re
from string import Formatter

import pytest

from assessments.rules import (
    PHRASES,
    SHARES,
    PhraseRefused,
    Schema,
    bind,
    check,
    choice,
    choices,
    evaluate,
    integer,
    many,
    num,
    phrase,
    read_back,
    record,
    text,
    truth,
    written,
)

OPS = ["wash", "sand", "test_spot"]
PICKS = ["probe_coldest", "log_meter", "don't"]
STEP = record(
    {
        "n": integer(),
        "op": choice(OPS),
        "zone": choice(["bow", "side"], opt=True),
        "wet": truth(),
        "um": num("um"),
        "air_degc": num("degc", opt=True),
    }
)
RICH = Schema(
    {
        "s": record({"rate": num("ml/m2"), "used": num("ml/m2")}),
        "facts": record({"air_degc": num("degc"), "film_um": num("um"), "cold": truth(), "missing": choice(PICKS[:2])}),
        "answer": record(
            {
                "dew_point": num("degc", opt=True),
                "margin": num("K", opt=True),
                "packs": integer(opt=True),
                "decision": choice(["wait", "coat_now"], opt=True),
                "sure": truth(opt=True),
                "note": text(opt=True),
                "picks": many(choice(PICKS), opt=True),
                "counts": many(integer(), 4, opt=True),
                "steps": many(STEP, 12, opt=True),
                "controls": many(record({"op": choice(["mask", "vent"])}), opt=True),
                "rows": many(record({"n": choice(["bow", "side"]), "sound": truth(opt=True)}), opt=True),
                "day": record({"te": num("h", opt=True), "place": choice(["yard", "bay"], opt=True)}, opt=True),
            }
        ),
        "model": record({"film_um": num("um", opt=True), "verdict": choice(["pass", "harm"], opt=True)}),
        "key": record(
            {
                "dew_point": num("degc"),
                "packs": integer(),
                "decision": choice(["wait", "coat_now"]),
                "short": truth(),
                "note": text(),
                "picks": many(choice(PICKS)),
                "counts": many(integer(), 4),
            }
        ),
    }
)
ALL = (*PHRASES, *SHARES)
TYPED = {"number": ["2"], "words": ["stays, it remains"], "choice or typed": ["2"]}


def fillings(asked, chosen, slots):
    """Return every way to fill the gaps of a phrase: each choice offered, and something typed where one may type."""
    if not slots:
        yield chosen
        return
    slot, *rest = slots
    offered = [each.text for each in choices(RICH, asked, chosen)[slot.name]]
    if slot.takes == "choices":
        offered = [offered[:1], offered]
    typed = TYPED.get(slot.takes, []) if slot.takes != "choice or typed" or may_type(asked, chosen, slot) else []
    for value in [*offered, *typed]:
        yield from fillings(asked, {**chosen, slot.name: value}, rest)


def may_type(asked, chosen, slot):
    try:
        written(RICH, asked, {**{each.name: "2" for each in asked.slots}, **chosen, slot.name: "2"})
    except PhraseRefused as refused:
        return refused.slot != slot.name
    return True


@pytest.mark.parametrize("asked", ALL, ids=[each.code for each in ALL])
def test_every_filling_that_is_offered_is_a_rule_without_errors_or_warnings(asked):
    found = 0
    for values in fillings(asked, {}, list(asked.slots)):
        rule = written(RICH, asked, values)
        checked = check(rule, RICH, wants=asked.gives)
        assert (checked.errors, checked.warnings) == ((), ()), rule
        assert re.search(r"[=<>_\[\]{}*]|[a-z]\.[a-z]", read_back(checked)) is None, rule
        found += 1
    assert found > 0


@pytest.mark.parametrize("asked", ALL, ids=[each.code for each in ALL])
def test_the_words_of_a_phrase_name_each_of_its_gaps_once(asked):
    gaps = [name for _, name, _, _ in Formatter().parse(asked.words) if name]
    assert sorted(gaps) == sorted(slot.name for slot in asked.slots)
    assert asked.slot(gaps[0]).name == gaps[0]


def test_a_code_stands_once_and_an_unknown_one_is_refused_with_the_nearest():
    assert len({each.code for each in ALL}) == len(ALL)
    with pytest.raises(PhraseRefused, match="There is no phrase 'withn'; did you mean 'within'") as refused:
        phrase("withn")
    assert refused.value.slot is None


def test_a_gap_says_whether_it_is_picked_or_typed():
    within, one_of = phrase("within"), phrase("one_of")
    said = {slot.name: (slot.picks, slot.typed) for slot in (*within.slots, *one_of.slots)}
    assert said == {
        "value": (True, False),
        "tolerance": (False, True),
        "target": (True, True),
        "options": (True, False),
    }


def step(n, op, **more):
    return {"n": n, "op": op, "wet": False, "um": 1.0, **more}


def steps(*ops):
    return {"steps": [step(n, op) for n, op in enumerate(ops, 1)]}


CASES = [
    ("is", {"value": "answer.decision", "target": "'wait'"}, {"decision": "wait"}, {"decision": "coat_now"}),
    ("is", {"value": "answer.sure", "target": "True"}, {"sure": True}, {"sure": False}),
    ("is", {"value": "norm(answer.note)", "target": "It  Stays"}, {"note": " it stays"}, {"note": "it goes"}),
    ("is_not", {"value": "answer.packs", "target": "3"}, {"packs": 2}, {"packs": 3}),
    ("at_least", {"value": "answer.margin", "target": "3.0"}, {"margin": 3.0}, {"margin": 2.9}),
    ("at_most", {"value": "answer.margin", "target": "-1.5"}, {"margin": -1.5}, {"margin": -1.4}),
    ("over", {"value": "answer.packs", "target": "key.packs"}, {"packs": 4}, {"packs": 3}),
    ("under", {"value": "answer.packs", "target": "key.packs"}, {"packs": 2}, {"packs": 3}),
    ("between", {"value": "answer.packs", "low": "2", "high": "key.packs"}, {"packs": 3}, {"packs": 4}),
    (
        "within",
        {"value": "answer.dew_point", "tolerance": "0.5", "target": "key.dew_point"},
        {"dew_point": 9.5},
        {"dew_point": 9.6},
    ),
    (
        "within_percent",
        {"value": "answer.dew_point", "percent": "10", "target": "key.dew_point"},
        {"dew_point": 9.9},
        {"dew_point": 10.0},
    ),
    ("one_of", {"value": "answer.decision", "options": ["'wait'"]}, {"decision": "wait"}, {"decision": "coat_now"}),
    ("among", {"value": "facts.missing", "list": "answer.picks"}, {"picks": ["log_meter"]}, {"picks": []}),
    ("contains", {"list": "answer.picks", "option": "'log_meter'"}, {"picks": ["log_meter"]}, {"picks": []}),
    ("lacks", {"list": "answer.picks", "option": "'log_meter'"}, {"picks": []}, {"picks": ["log_meter"]}),
    (
        "every_of",
        {"wanted": "key.picks", "given": "answer.picks"},
        {"picks": ["log_meter", "don't", "probe_coldest"]},
        {"picks": ["log_meter"]},
    ),
    (
        "share_of",
        {"percent": "50", "wanted": "key.picks", "given": "answer.picks"},
        {"picks": ["log_meter"]},
        {"picks": ["probe_coldest"]},
    ),
    (
        "at_most_outside",
        {"number": "0", "wanted": "key.picks", "given": "answer.picks"},
        {"picks": ["log_meter"]},
        {"picks": ["log_meter", "probe_coldest"]},
    ),
    (
        "before",
        {"list": "answer.steps", "first": "'wash'", "then": "'sand'"},
        steps("wash", "wash", "sand"),
        steps("wash", "sand", "wash"),
    ),
    ("before", {"list": "answer.steps", "first": "'wash'", "then": "'sand'"}, steps("wash", "sand"), steps("wash")),
    (
        "before_if_any",
        {"list": "answer.steps", "first": "'wash'", "then": "'sand'"},
        steps("test_spot"),
        steps("sand", "wash"),
    ),
    (
        "not_before",
        {"list": "answer.steps", "act": "'wash'", "other": "'sand'"},
        steps("wash", "sand", "wash"),
        steps("sand", "wash"),
    ),
    ("not_before", {"list": "answer.steps", "act": "'wash'", "other": "'sand'"}, steps("wash"), steps("sand")),
    (
        "followed_by",
        {"list": "answer.steps", "first": "'sand'", "then": "'wash'"},
        steps("sand", "wash", "sand", "wash"),
        steps("wash"),
    ),
    (
        "every_step_is",
        {"list": "answer.steps", "kind": "s.op == 'sand'", "has": "s.wet"},
        {"steps": [step(1, "sand", wet=True), step(2, "wash")]},
        steps("wash"),
    ),
    (
        "every_step_at_least",
        {"list": "answer.steps", "kind": "s.op == 'sand'", "what": "s.um", "target": "2"},
        {"steps": [step(1, "sand", um=2.0), step(2, "wash", um=1.0)]},
        steps("sand"),
    ),
    (
        "every_step_at_most",
        {"list": "answer.steps", "kind": "s.op == 'sand'", "what": "s.um", "target": "2"},
        steps("sand"),
        {"steps": [step(1, "sand", um=2.5)]},
    ),
    (
        "some_step",
        {"list": "answer.steps", "kind": "answered(s.zone) and s.zone == 'bow'"},
        {"steps": [step(1, "sand", zone="bow"), step(2, "wash")]},
        steps("sand"),
    ),
    ("no_step", {"list": "answer.steps", "kind": "s.op == 'sand'"}, steps("wash"), steps("wash", "sand")),
    (
        "step_after_last",
        {"list": "answer.steps", "act": "s.op == 'wash'", "last": "t.op == 'sand'"},
        steps("wash", "sand", "wash"),
        steps("wash", "sand"),
    ),
    (
        "step_after_last",
        {"list": "answer.steps", "act": "s.op == 'wash'", "last": "t.op == 'sand'"},
        steps("sand", "wash"),
        steps("wash"),
    ),
    (
        "at_least_of",
        {"number": "2", "list": "answer.steps", "kind": "s.op == 'sand'"},
        steps("sand", "sand"),
        steps("sand"),
    ),
    (
        "at_most_of",
        {"number": "1", "list": "answer.steps", "kind": "s.op == 'sand'"},
        steps("sand"),
        steps("sand", "sand"),
    ),
    ("answered", {"value": "answer.day.te"}, {"day": {"te": 3.0}}, {"day": {"te": None}}),
    ("mentions", {"value": "answer.note", "words": "Stays, remains"}, {"note": "It remains."}, {"note": "Gone"}),
]


def renamed(values):
    """The cases are written with s and t; the schema takes the name s, so that loops walk with t and item0."""
    walked = {"s.": "t.", "t.": "item0."}
    return {
        slot: re.sub(r"\b[st]\.", lambda found: walked[found[0]], value) if isinstance(value, str) else value
        for slot, value in values.items()
    }


@pytest.mark.parametrize(("code", "values", "met", "not_met"), CASES)
def test_a_phrase_asks_what_its_words_say(code, values, met, not_met):
    rule = written(RICH, phrase(code), renamed(values))
    nothing = dict.fromkeys(RICH.names["answer"].fields)
    rest = {
        "s": {"rate": 1, "used": 1},
        "facts": {"air_degc": 20, "film_um": 60, "cold": False, "missing": "log_meter"},
        "model": {"film_um": 50, "verdict": "pass"},
        "key": {
            "dew_point": 9.0,
            "packs": 3,
            "decision": "wait",
            "short": True,
            "note": "stays",
            "picks": ["log_meter", "don't"],
            "counts": [],
        },
    }
    came_out = [
        evaluate(check(rule, RICH), bind(RICH, {**rest, "answer": {**nothing, **given}}))[0] for given in (met, not_met)
    ]
    assert came_out == [True, False], rule


@pytest.mark.parametrize(
    ("code", "picks", "wanted"),
    [
        ("part_of", ["log_meter"], 0.5),
        ("part_of", ["log_meter", "don't", "probe_coldest"], 1),
        ("part_less_extra", ["log_meter", "don't", "probe_coldest"], 0.5),
        ("part_less_extra", [], 0),
    ],
)
def test_a_share_is_the_part_that_was_got_right(code, picks, wanted):
    rule = written(RICH, phrase(code), {"wanted": "key.picks", "given": "answer.picks"})
    schema = Schema({name: record({"picks": many(choice(PICKS))}) for name in ("answer", "key")})
    case = {"answer": {"picks": picks}, "key": {"picks": ["log_meter", "don't"]}}
    assert evaluate(check(rule, schema, wants="num"), bind(schema, case))[0] == wanted


def test_each_phrase_is_tried_on_what_meets_it_and_what_does_not():
    assert {code for code, *_ in CASES} == {each.code for each in PHRASES}
