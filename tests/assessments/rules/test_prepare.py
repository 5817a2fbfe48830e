import pytest

from assessments.rules import Rule, RuleBook, prepare


@pytest.fixture
def prepared(schema):
    rules = (
        Rule("COA-01.1", "S", "points", 1, "B", "practice", test="answer.sure", when="answered(answer.margin)"),
        Rule("COA-01.2", "S", "points", 1, "B", "practice", test="model.film_um > 3"),
    )
    return prepare(RuleBook("COA-01", 1, rules), schema, rests={"model.film_um": ["answer.steps"]})


def test_a_prepared_rule_knows_its_parts_and_all_it_reads(prepared):
    ready = prepared.rule("COA-01.1")
    assert list(ready.parts) == ["when", "test"]
    assert ready.reads == {("answer",), ("answer", "sure"), ("answer", "margin")}
    assert [part.asks_answered for part in ready.parts.values()] == [True, False]


def test_what_rests_on_an_answer_may_be_missing(prepared):
    assert prepared.rests == {("model", "film_um"): (("answer", "steps"),)}
    assert prepared.schema.kind(("model", "film_um")).opt


def test_a_rule_is_found_by_its_code(prepared):
    assert prepared.rule("COA-01.2").rule.code == "COA-01.2"
    with pytest.raises(KeyError):
        prepared.rule("COA-01.3")
