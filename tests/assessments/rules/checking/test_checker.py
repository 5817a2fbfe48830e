"""The six classes of faults that are caught before a rule is used, each at the right characters."""

import pytest

from assessments.rules import Schema, check, integer, many, num, record, truth


def test_a_sound_rule_tells_what_it_reads_and_costs(checked):
    found = checked("near(answer.dew_point, key.dew_point, 0.5)")
    assert found.ok
    assert found.errors == found.warnings == ()
    assert found.reads == {("answer",), ("answer", "dew_point"), ("key",), ("key", "dew_point")}
    assert found.cost == 6


def test_reads_follow_the_items_of_a_list(checked):
    assert ("answer", "steps", "[]", "grit") in checked("any(s.grit > 3 for s in answer.steps)").reads


FAULTS = [
    ("answer.stpes", ("stpes", "There is no field 'stpes'; did you mean 'steps'?", "steps")),
    ("anwser.margin > 3", ("anwser", "There is no name 'anwser'; did you mean 'answer'?", "answer")),
    ("naer(answer.margin, 3, 1)", ("naer", "There is no function 'naer'; did you mean 'near'?", "near")),
    ("answer.qqq > 3", ("qqq", "There is no field 'qqq'.", None)),
    ("facts.air_rh > 'x'", ("'x'", "A number can't be compared with a text.", None)),
    ("facts.air_rh in answer.steps", ("answer.steps", "A number can't be compared with a record.", None)),
    (
        "facts.air_rh in facts.film_um",
        ("facts.film_um", "The right side of 'in' has to be a list; this is a number.", None),
    ),
    (
        "answer.decision in ['wait', 'wiat']",
        (
            "'wiat'",
            "'wiat' is none of the choices coat_now, wait, warm_the_panel, measure_again; did you mean 'wait'?",
            "wait",
        ),
    ),
    (
        "'fuel_heter' in answer.next_steps",
        (
            "'fuel_heter'",
            "'fuel_heter' is none of the choices probe_coldest, log_meter, tell_owner, fuel_heater; "
            "did you mean 'fuel_heater'?",
            "fuel_heater",
        ),
    ),
    (
        "answer.decision == model.verdict",
        (
            "model.verdict",
            "These choices share no word with the left side: coat_now, wait, warm_the_panel, measure_again.",
            None,
        ),
    ),
    (
        "answer.decision == answer.note",
        ("answer.note", "A choice is compared with its own words or another choice, not with a free text.", None),
    ),
    ("facts.film_um > facts.air_rh", ("facts.air_rh", "This is in rh, but the left side is in um.", None)),
    ("facts.film_um + facts.air_rh > 3", ("facts.air_rh", "This is in rh, but the left side is in um.", None)),
    (
        "near(facts.film_um, 40, facts.air_rh)",
        ("facts.air_rh", "This is in rh; it has to be in um.", None),
    ),
    ("near(facts.air_degc, 3, facts.air_degc)", ("facts.air_degc", "This is in degc; it has to be in K.", None)),
    ("near_rel(answer.note, 3, 1)", ("answer.note", "This has to be a number; it is a text.", None)),
    ("near_rel(facts.film_um, facts.air_rh, 5)", ("facts.air_rh", "This is in rh; it has to be in um.", None)),
    (
        "near(facts.film_um, 3)",
        ("near(facts.film_um, 3)", "near() takes 3 values, not 2: near(a, b, tolerance).", None),
    ),
    ("near(answer.note, 3, 1)", ("answer.note", "This has to be a number; it is a text.", None)),
    ("answer.margin", ("answer.margin", "The rule has to give yes/no; it gives a number.", None)),
    ("not answer.margin", ("answer.margin", "'not' needs yes/no; this is a number.", None)),
    ("answer.sure and answer.margin", ("answer.margin", "'and' joins yes/no; this is a number.", None)),
    ("answer.margin or answer.sure", ("answer.margin", "'or' joins yes/no; this is a number.", None)),
    ("-answer.sure > 1", ("answer.sure", "'-' needs a number; this is yes/no.", None)),
    ("answer.margin.deep > 1", ("deep", "A number has no fields, so no 'deep'.", None)),
    (
        "answer.sure if answer.margin else True",
        ("answer.margin", "What follows 'if' has to be yes/no; this is a number.", None),
    ),
    (
        "answer.margin > (2 if facts.cold else 'x')",
        ("'x'", "A whole number can't be compared with a text.", None),
    ),
    (
        "any(s.wet for s in answer.margin)",
        ("answer.margin", "any() walks a list; this is a number.", None),
    ),
    ("any(s.um for s in answer.steps)", ("s.um", "any() needs a yes/no test; this is a number.", None)),
    ("sum(s.wet for s in answer.steps) > 1", ("s.wet", "sum() needs numbers; this is yes/no.", None)),
    ("any(s.wet for s in answer.steps if s.um)", ("s.um", "What follows 'if' has to be yes/no; it is a number.", None)),
    (
        "most(s.grit for s in answer.steps) > 1",
        ("s.grit", "What most() looks at may be missing in an item; put answered(…) and before it.", "answered"),
    ),
    (
        "any(s.wet for s in answer.steps if s.grit > 3)",
        ("s.grit > 3", "The filter of any() may be missing in an item; put answered(…) and before it.", "answered"),
    ),
    (
        "before(answer.steps, 'wahs', 'sand')",
        (
            "'wahs'",
            "'wahs' is none of the choices wash, tape, sand, dry, inspect, wipe, cut, coat …; did you mean 'wash'?",
            "wash",
        ),
    ),
    (
        "before(answer.next_steps, 'a', 'b')",
        ("answer.next_steps", "This has to be a list of records with a field 'op'.", None),
    ),
    (
        "before(answer.steps, answer.decision, 'sand')",
        ("answer.decision", "An act is written as a word in quotes, such as 'wash'.", None),
    ),
    ("overlap(answer.note, key.kit) > 1", ("answer.note", "This has to be a list; it is a text.", None)),
    (
        "overlap(answer.next_steps, ['a']) > 1",
        ("'a'", "'a' is none of the choices probe_coldest, log_meter, tell_owner, fuel_heater.", None),
    ),
    ("overlap(answer.steps, key.kit) > 1", ("key.kit", "A record can't be compared with a choice.", None)),
    (
        "mentions(answer.note, key.kit)",
        ("key.kit", "The words are written as a list, such as ['left', 'stays'].", None),
    ),
    ("norm(answer.margin) == 'a'", ("answer.margin", "This has to be a text; it is a number.", None)),
    ("abs(answer.sure) > 1", ("answer.sure", "This has to be a number; it is yes/no.", None)),
    ("len(answer.sure) > 1", ("answer.sure", "This has to be a list or a text; it is yes/no.", None)),
    ("dew_point(facts.air_rh, 50) > 3", ("facts.air_rh", "This is in rh; it has to be in degc.", None)),
    ("dew_point(answer.note, 50) > 3", ("answer.note", "This has to be a number; it is a text.", None)),
    (
        "dew_point(50) > 3",
        (
            "dew_point(50)",
            "dew_point() takes 2 values, not 1: dew_point(num degc, num rh) gives num degc.",
            None,
        ),
    ),
    (
        "sum(s.air_degc for s in answer.steps if answered(s.air_degc)) > 3",
        ("s.air_degc", "Temperatures can't be added up; take least(), most() or a difference in K.", None),
    ),
]


@pytest.mark.parametrize(("rule", "wanted"), FAULTS)
def test_a_fault_is_told_at_the_smallest_wrong_part(found, rule, wanted):
    assert found(rule) == [wanted]


def test_several_faults_are_told_at_once(found):
    assert [part for part, _, _ in found("answer.stpes and facts.air_rh > 'x' and answer.decision == 'wiat'")] == [
        "stpes",
        "'x'",
        "'wiat'",
    ]


def test_a_faulted_part_brings_no_second_fault(found):
    assert len(found("answer.qqq + 3 > facts.film_um and near(answer.zzz, 1, 1)")) == 2
    assert len(found("any(s.wet for s in answer.qqq if s.um > 3)")) == 1
    assert len(found("(answer.qqq if facts.cold else 3) > 1")) == 1
    assert len(found("overlap(answer.qqq, key.kit) > 1")) == 1
    assert len(found("'a' in answer.qqq")) == 1
    assert len(found("answer.qqq.more.deep > 1")) == 1
    assert len(found("before(answer.qqq, 'a', 'b')")) == 1
    assert len(found("dew_point(answer.qqq, 50) > abs(answer.zzz)")) == 2


def test_a_rule_that_could_cost_too_much_is_refused():
    rows = many(record({"n": integer(), "wet": truth()}), 200)
    found = check("every(any(t.n > s.n and t.wet for t in rows) for s in rows)", Schema({"rows": rows}))
    assert [fault.message for fault in found.errors] == [
        "The rule can cost 320402 steps on full lists, 60000 are allowed; walk fewer or shorter lists.",
    ]


def test_a_share_has_to_be_a_number_and_a_value_may_be_anything(checked):
    assert checked("answer.margin / 3", wants="num").ok
    assert checked("answer.sure", wants="num").errors[0].message == "The rule has to give a number; it gives yes/no."
    assert checked("key.decision", wants="any").ok


def test_answered_before_it_makes_an_optional_field_sure(checked):
    for rule in [
        "any(s.wet for s in answer.steps if answered(s.grit) and s.grit > 3)",
        "sum(s.grit for s in answer.steps if answered(s.grit)) > 3",
        "count(answered(s.grit) and s.grit > 3 for s in answer.steps) > 1",
        "count(not answered(s.grit) or s.grit > 3 for s in answer.steps) > 1",
        "answer.packs == (2 if answered(answer.margin) and answer.margin > 3 else 3)",
        "answer.packs == (3 if not answered(answer.margin) or answer.margin < 3 else 2)",
        "answer.packs == (2 if answered(answer.schedule.at_h) and answered(answer.schedule) else 3)",
    ]:
        assert checked(rule).ok, rule


def test_an_unanswered_list_round_a_filter_is_no_fault(checked):
    assert checked("count(d in answer.next_steps for d in key.kit) > 1").ok
    assert checked("sum(s.um for s in answer.steps if s.n > answer.packs) > 1").ok


@pytest.mark.parametrize(
    ("rule", "part", "said"),
    [
        ("answer.margin == 2.5", "2.5", "near(…, 2.5, tolerance) is meant"),
        ("2.5 != answer.margin", "2.5", "near(…, 2.5, tolerance) is meant"),
        ("facts.econ > facts.film_um", "facts.econ", "This has no unit, the other side is in um"),
        ("facts.film_um > facts.econ", "facts.econ", "This has no unit, the other side is in um"),
        ("answer.note == 'stays'", "answer.note", "put it through norm()"),
        ("answer.margin in [1, 2.5]", "2.5", "near(…, 2.5, tolerance) is meant"),
        ("near_rel(answer.margin, 3, facts.film_um)", "facts.film_um", "taken for per cent, but it is in um."),
        (
            "every(s.wet for s in answer.steps if s.op == 'sand')",
            "every(s.wet for s in answer.steps if s.op == 'sand')",
            "This is met when no item is there with s.op == 'sand'; ask for one with any() or count() as well.",
        ),
    ],
)
def test_what_is_sound_but_risky_is_warned_of(warned, rule, part, said):
    ((where, message),) = warned(rule)
    assert where == part
    assert said in message


@pytest.mark.parametrize(
    "rule",
    [
        "every(s.wet for s in answer.steps if s.op == 'sand') and any(t.op == 'sand' for t in answer.steps)",
        "not any(s.op == 'sand' for s in answer.steps) or every(s.wet for s in answer.steps if s.op == 'sand')",
        "facts.film_um * 2 > 3",
        "facts.film_um > facts.econ * facts.reserve_um",
        "facts.film_um / facts.reserve_um > facts.econ",
        "facts.film_um > (40 if facts.cold else 50)",
        "count(s.wet for s in answer.steps) > facts.econ",
        "answer.margin != 3",
        "near_rel(answer.margin, 3, facts.air_rh)",
        "near_rel(answer.margin, 3, facts.film_um / facts.reserve_um)",
    ],
)
def test_what_is_sound_brings_no_warning(warned, rule):
    assert warned(rule) == []


def test_a_unit_nobody_knows_is_warned_of_with_a_near_miss():
    found = check("rate > 3", Schema({"rate": num("ums")}))
    assert found.ok
    assert [(each.message, each.start, each.end, each.suggestion) for each in found.warnings] == [
        ("The unit 'ums' is not one of the shop's; did you mean 'um'?", 0, 4, "um"),
    ]
    assert check("rate > 3", Schema({"rate": num("ml/m2")})).warnings == ()


def test_a_screenful_of_faults_is_enough(found):
    assert len(found(" or ".join(f"q{n}.a" for n in range(40)))) == 20
    assert len(check(" or ".join(f"a=={n}.5" for n in range(30)), Schema({"a": num()})).warnings) == 20
