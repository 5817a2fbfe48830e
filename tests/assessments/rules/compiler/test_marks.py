"""Whole marks, silence told from error, as generated code and as the closures give them: the same, bit for bit."""

import pytest

from assessments.marking import Marker
from assessments.marking.case import case_of
from assessments.marking.exemplars import drawn_case, trials
from assessments.rules import judge, prepare
from assessments.scenarios.draw import draw, key_of
from assessments.shipped import marker
from tests.assessments.rules.oracle import marking
from tests.bench.rules import answers, book


@pytest.fixture(scope="module")
def shipped() -> Marker:
    return marker("COA-01")


@pytest.mark.parametrize("seed", range(1, 9))
def test_every_exemplar_of_a_draw_is_marked_alike(shipped, seed):
    facts = draw(shipped.scenario, seed).facts
    key = key_of(shipped.scenario, facts)
    for trial in trials(shipped.expressions, key, drawn_case(shipped.scenario, facts, key)):
        case = case_of(shipped.scenario, facts, key, trial.answers)
        assert judge(shipped.book, case) == marking.judge(shipped.book, case), trial.name


def test_forty_rules_are_marked_alike():
    prepared = prepare(book.book(), book.SCHEMA, book.FUNCTIONS)
    for case in answers.cases()[:60]:
        assert judge(prepared, case) == marking.judge(prepared, case)


@pytest.mark.parametrize("left_out", ["decision", "margin", "dew_point", "next_steps"])
def test_silence_is_told_from_error_alike(shipped, left_out):
    facts = draw(shipped.scenario, 3).facts
    key = key_of(shipped.scenario, facts)
    given = {name: value for name, value in key.as_json().items() if shipped.scenario.task(name) and name != left_out}
    case = case_of(shipped.scenario, facts, key, given)
    mark = judge(shipped.book, case)
    assert mark == marking.judge(shipped.book, case)
    assert "not_answered" in {found.verdict for found in mark.findings}
