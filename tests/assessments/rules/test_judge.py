"""How rules come out: the rule of silence, guards, points in part, and rules that fail to judge."""

import json

import pytest

from assessments.rules import (
    BookRefused,
    CaseRefused,
    Rule,
    RuleBook,
    Schema,
    Step,
    check_book,
    explain_finding,
    judge,
    prepare,
    unlooked_finding,
)
from assessments.rules.trace import size


def rule(test=None, severity="points", points=2, code="COA-01.1", **more):
    return Rule(code, "S", severity, points, "B", "practice", "L24", test=test, **more)


@pytest.fixture
def judged(schema, functions, case):
    """The one finding of a book of one rule, answers changed as said."""

    def ask(one, rests=None, model=None, **answers):
        prepared = prepare(RuleBook("COA-01", 1, (one,)), schema, functions, rests)
        case["answer"].update(answers)
        if model is not None:
            case["model"] = model
        return judge(prepared, case).findings[0]

    return ask


@pytest.mark.parametrize(
    ("test", "answers", "verdict", "points"),
    [
        ("answer.decision == key.decision", {}, "met", 2),
        ("answer.decision == key.decision", {"decision": "coat_now"}, "not_met", 0),
        ("answer.decision == key.decision", {"decision": None}, "not_answered", 0),
        ("'fuel_heater' not in answer.next_steps", {"next_steps": []}, "met", 2),
        ("'fuel_heater' not in answer.next_steps", {"next_steps": None}, "not_answered", 0),
        ("answered(answer.margin) and answer.margin > 3", {"margin": None}, "not_answered", 0),
        ("answered(answer.margin) and answer.margin > 3", {}, "not_met", 0),
        ("answered(answer.margin) and key.packs == 3", {"margin": None}, "not_met", 0),
        ("not answered(answer.note)", {"note": None}, "met", 2),
        ("answered(facts.probe_degc)", {}, "not_met", 0),
        ("answered(facts.probe_degc) and answered(answer.margin)", {"margin": None}, "not_met", 0),
        ("answer.schedule.place == 'bay'", {"schedule": None}, "not_answered", 0),
        ("any(s.grit > 3000 for s in answer.steps)", {}, "not_answered", 0),
        ("any(answered(s.grit) and s.grit > 3000 for s in answer.steps)", {}, "not_answered", 0),
        ("any(answered(s.grit) and s.grit > 1000 for s in answer.steps)", {}, "met", 2),
    ],
)
def test_silence_is_told_from_error(judged, test, answers, verdict, points):
    finding = judged(rule(test), **answers)
    assert (finding.verdict, finding.points, finding.of, finding.failed) == (verdict, points, 2, None)


@pytest.mark.parametrize(
    ("when", "answers", "verdict", "of"),
    [
        ("key.short", {}, "met", 2),
        ("not key.short", {}, "not_applicable", 0),
        ("not key.short", {"decision": None}, "not_applicable", 0),
        ("answer.sure", {}, "met", 2),
        ("answer.sure", {"sure": False}, "not_applicable", 0),
        ("answer.sure", {"sure": None}, "not_answered", 2),
        ("answered(answer.sure)", {"sure": None}, "not_answered", 2),
        ("answered(facts.probe_degc)", {}, "not_applicable", 0),
        ("facts.probe_degc > 3", {"decision": None}, "not_answered", 2),
    ],
)
def test_a_guard_takes_a_rule_out_or_leaves_it_unanswered(judged, when, answers, verdict, of):
    finding = judged(rule("answer.decision == key.decision", when=when), **answers)
    assert (finding.verdict, finding.of, finding.failed) == (verdict, of, None)


def test_behind_a_guard_that_does_not_hold_nothing_is_looked_at(judged):
    assert judged(rule("broken(1) > 0", when="not key.short")).verdict == "not_applicable"


@pytest.mark.parametrize(
    ("test", "said"),
    [
        ("answer.margin / (answer.margin - answer.margin) > 1", "The test came out unknown though every answer"),
        ("broken(answer.margin) > 1", "broken() failed: ZeroDivisionError, the table ends at 40."),
        ("facts.probe_degc > answer.dew_point", "The test came out unknown though every answer"),
        ("model.film_um > 40 and answer.sure", "The test came out unknown though every answer"),
    ],
)
def test_a_rule_that_is_unknown_though_all_was_answered_failed_to_judge(judged, test, said):
    finding = judged(rule(test), model={})
    assert (finding.verdict, finding.points) == ("not_answered", 0)
    assert said in finding.failed
    assert finding.as_json()["because"] == finding.failed


def test_a_guard_that_is_unknown_though_all_was_answered_failed_to_judge(judged):
    finding = judged(rule("answer.sure", when="facts.probe_degc > 3"))
    assert finding.failed == "The when came out unknown though every answer it reads was given."


def test_one_rule_that_fails_takes_no_other_with_it(schema, functions, case):
    book = RuleBook("COA-01", 1, (rule("broken(1) > 1"), rule("answer.sure", code="COA-01.2")))
    mark = judge(prepare(book, schema, functions), case)
    assert [finding.verdict for finding in mark.findings] == ["not_answered", "met"]
    assert (mark.failed, mark.outcome) == (("COA-01.1",), "cannot_certify")


@pytest.mark.parametrize(
    ("answers", "verdict", "points"),
    [
        ({}, "partly", 2),
        ({"packs": 3}, "not_met", 0),
        ({"packs": 3, "sure": None}, "not_met", 0),
        ({"margin": 9.0}, "met", 3),
        ({"packs": None, "margin": None}, "not_answered", 0),
    ],
)
def test_points_by_steps(judged, answers, verdict, points):
    steps = (Step("answer.packs == key.packs", 2), Step("answer.margin > 5", 1))
    finding = judged(rule(steps=steps, points=3), **answers)
    assert (finding.verdict, finding.points, finding.of) == (verdict, points, 3)


@pytest.mark.parametrize(
    ("packs", "verdict", "points"),
    [
        (0, "not_met", 0),
        (-3, "not_met", 0),
        (1, "partly", 0.67),
        (3, "met", 2),
        (7, "met", 2),
        (None, "not_answered", 0),
    ],
)
def test_points_by_share(judged, packs, verdict, points):
    finding = judged(rule(share="answer.packs / 3"), packs=packs)
    assert (finding.verdict, finding.points) == (verdict, points)


RESTS = {"model": ("answer.steps",), "model.verdict": ("answer.schedule.place",)}


def test_without_the_plan_it_was_worked_from_a_model_gives_no_verdict(judged):
    film = rule("model.film_um >= facts.reserve_um")
    assert judged(film, RESTS).verdict == "met"
    assert judged(film, RESTS, steps=None).verdict == "not_answered"
    assert judged(film, RESTS, model=None, steps=None).verdict == "not_answered"


def test_a_model_may_be_left_out_with_its_plan(schema, functions, case):
    prepared = prepare(RuleBook("COA-01", 1, (rule("model.film_um > 3"),)), schema, functions, RESTS)
    case["answer"]["steps"] = None
    case["model"] = None
    assert judge(prepared, case).findings[0].verdict == "not_answered"


def test_the_nearest_declaration_says_what_a_path_rests_on(judged):
    verdict = rule("model.verdict == 'pass'")
    assert judged(verdict, RESTS, schedule=None).verdict == "not_answered"
    assert judged(rule("model.film_um > 3"), RESTS, schedule=None).verdict == "met"


def test_a_model_that_is_missing_with_its_plan_given_failed_to_judge(judged):
    assert "came out unknown" in judged(rule("model.film_um > 3"), RESTS, model={}).failed


def test_a_finding_is_the_door_s_shape(judged):
    finding = judged(rule("near(answer.dew_point, key.dew_point, 0.5)", severity="needed"))
    assert finding.as_json() == {
        "code": "COA-01.1",
        "verdict": "met",
        "severity": "needed",
        "points": 2,
        "of": 2,
        "because": "B",
        "values": [
            {"name": "answer.dew_point", "value": 13.2, "unit": "degc"},
            {"name": "key.dew_point", "value": 13.6, "unit": "degc"},
            {"name": "within", "value": 0.5, "unit": "K"},
        ],
        "lesson": "L24",
        "source": "practice",
    }


def test_a_mark_is_the_door_s_shape_and_adds_up(schema, functions, case):
    rules = (
        rule("answer.sure", "critical", 5),
        rule("not answer.sure", "critical", 2.5, code="COA-01.2"),
        rule("answer.sure", when="not key.short", code="COA-01.3"),
    )
    book = RuleBook("COA-01", 1, rules)
    mark = judge(prepare(book, schema, functions), case)
    told = mark.as_json()
    assert {key: told[key] for key in ("outcome", "points", "of", "critical")} == {
        "outcome": "critical_fail",
        "points": 5,
        "of": 7.5,
        "critical": ["COA-01.2"],
    }
    assert [finding["code"] for finding in told["findings"]] == ["COA-01.1", "COA-01.2", "COA-01.3"]
    assert mark.digest == book.digest
    json.dumps(told)


def test_a_mark_comes_out_the_same_when_it_is_judged_again(schema, functions, case):
    prepared = prepare(RuleBook("COA-01", 1, (rule("any(s.um > 3 for s in answer.steps)"),)), schema, functions)
    assert judge(prepared, case) == judge(prepared, case)


def test_a_stored_trace_is_told_in_sentences(schema, functions, case):
    one = rule("near(answer.dew_point, key.dew_point, 0.5)", when="key.short")
    prepared = prepare(RuleBook("COA-01", 1, (one,)), schema, functions)
    trace = json.loads(json.dumps(judge(prepared, case).trace))
    assert explain_finding(prepared, "COA-01.1", trace, lambda value, unit: str(value)) == [
        ("when", ["short: yes"]),
        ("test", ["dew point 13.2 is within 0.5 of 13.6"]),
    ]
    with pytest.raises(KeyError):
        explain_finding(prepared, "COA-01.9", trace)


def test_a_stored_trace_tells_what_was_left_out_and_with_the_case_which_step_decided(schema, functions, case):
    one = rule("any(s.wet for s in answer.steps) or answer.sure", when="key.short")
    prepared = prepare(RuleBook("COA-01", 1, (one,)), schema, functions)
    trace = json.loads(json.dumps(judge(prepared, case).trace))
    assert explain_finding(prepared, "COA-01.1", trace, case=case)[1] == ("test", ["step 2 (sand) fits", "wet: yes"])
    assert unlooked_finding(prepared, "COA-01.1", trace, case=case) == [
        (
            "test",
            [
                "not looked at: what comes after step 2 (sand) in steps, because step 2 (sand) settled it",
                "not looked at: the sure, because the steps settled it",
            ],
        )
    ]


def test_the_trace_of_a_whole_mark_stays_within_four_kilobytes(schema, functions, case):
    case["answer"]["steps"] = [{"n": n, "op": "sand", "um": 1.0, "wet": True} for n in range(40)]
    tests = " and ".join(["any(s.um > 0 for s in answer.steps)"] * 10)
    rules = tuple(rule(tests, code=f"COA-01.{n}") for n in range(1, 31))
    mark = judge(prepare(RuleBook("COA-01", 1, rules), schema, functions), case)
    assert size(mark.trace) <= 4096
    assert mark.trace["cut"] is True
    assert len(mark.trace["rules"]) == 30


def test_values_of_a_guard_are_shown_where_the_guard_is_all_that_was_looked_at(judged):
    one = rule("answer.sure", when="key.packs > 5")
    assert [value.name for value in judged(one).values] == ["key.packs", "limit"]


def test_a_case_that_does_not_fit_is_refused(schema, functions):
    with pytest.raises(CaseRefused, match="facts.air_degc: nothing is there"):
        judge(prepare(RuleBook("COA-01", 1, (rule("answer.sure"),)), schema, functions), {"facts": {}, "answer": {}})


def test_every_fault_of_a_book_is_told_with_its_rule_and_part(schema, functions):
    book = RuleBook(
        "COA-01",
        1,
        (
            rule("answer.qqq", when="key.shrt"),
            rule(steps=(Step("answer.sure", 1), Step("answer.zzz", 1)), code="COA-01.2"),
            rule(share="answer.sure", code="COA-01.3"),
        ),
    )
    assert [(each.code, each.part, each.fault.message) for each in check_book(book, schema, functions)] == [
        ("COA-01.1", "when", "There is no field 'shrt'; did you mean 'short'?"),
        ("COA-01.1", "test", "There is no field 'qqq'."),
        ("COA-01.2", "steps[1]", "There is no field 'zzz'."),
        ("COA-01.3", "share", "The rule has to give a number; it gives yes/no."),
    ]


def test_a_faulty_book_is_refused_with_file_line_and_key(schema):
    faulty = rule(steps=(Step("answer.zzz", 1),), places={"steps": ("coa-01.toml", 7)})
    with pytest.raises(BookRefused) as refused:
        prepare(RuleBook("COA-01", 1, (faulty,), "coa-01.toml"), schema)
    assert str(refused.value) == "coa-01.toml, line 7, steps: COA-01.1 (character 8): There is no field 'zzz'."


def test_text_is_read_by_people_so_a_search_for_words_gives_points_only(schema):
    one = rule("mentions(answer.note, ['stays'])", severity="needed")
    (found,) = check_book(RuleBook("COA-01", 1, (one,)), schema)
    assert found.fault.message == "A rule that looks for words gives points only; this one is needed."
    assert check_book(RuleBook("COA-01", 1, (rule("mentions(answer.note, ['stays'])"),)), schema) == ()


def test_a_book_that_could_cost_too_much_is_refused(shape):
    shape["fields"]["answer"]["fields"]["steps"]["max"] = 60
    schema = Schema.of(shape)
    test = "every(any(t.n > s.n for t in answer.steps) for s in answer.steps)"
    rules = tuple(rule(test, code=f"COA-01.{n}") for n in range(1, 20))
    (found,) = check_book(RuleBook("COA-01", 1, rules), schema)
    assert (found.code, found.part, found.fault.start) == ("COA-01", "rule", None)
    assert "300000 are allowed" in found.fault.message
    with pytest.raises(BookRefused, match="line 1, rule: COA-01: The book can cost"):
        prepare(RuleBook("COA-01", 1, rules), schema)


def test_another_rule_of_the_book_may_back_a_filtered_every(schema):
    claim = rule("every(s.wet for s in answer.steps if s.op == 'sand')")
    asks = rule("any(t.op == 'sand' for t in answer.steps)", code="COA-01.2")
    (warning,) = prepare(RuleBook("COA-01", 1, (claim,)), schema).warnings
    assert (warning.code, warning.part) == ("COA-01.1", "test")
    assert prepare(RuleBook("COA-01", 1, (claim, asks)), schema).warnings == ()
