"""What is shipped: every version has its book, every rule its source and lesson, and all of it proves."""

import pytest

from assessments.scenarios.errors import UnknownScenario
from assessments.scenarios.register import SKETCHES
from assessments.shipped import framework, marker, published, scenario, scenarios, shared_book
from courses.shipped import shelf, sources, units
from courses.trade.surface.steps import MOST_STEPS


def test_every_version_has_its_functions_its_rule_book_and_the_texts_of_both():
    assert set(published()) == set(scenarios()) == set(SKETCHES)
    for ref, one in published().items():
        assert {book.marks for book, _text in one.books} == {ref}
        assert f'code = "{one.scenario.code}"' in one.text
        assert f'code = "{one.book.code}"' in one.book_text
        assert "[[rule]]" in one.shared


def test_every_version_is_checked_against_its_book():
    for ref in scenarios():
        assert marker(ref).scenario is scenarios()[ref]


def test_the_shared_rules_are_read_and_checked_once_and_no_book_is_taken_for_them():
    shared = shared_book()
    assert shared is shared_book()
    assert len(shared.rules) == 39
    taken = [rule for one in published().values() for rule in one.book.rules if rule.code in shared.rules]
    assert [(rule.test, rule.when) for rule in taken] == [
        (shared.rules[rule.code].test, shared.rules[rule.code].when) for rule in taken
    ]
    assert {"R12", "R13", "R14", "R15", "R16", "R17", "R19", "R21", "R36", "R41"} <= {rule.code for rule in taken}


def test_a_code_is_its_newest_version_and_a_version_is_itself():
    assert scenario("COA-01") is scenarios()["COA-01@1"]
    assert scenario("COA-01@1") is scenarios()["COA-01@1"]


@pytest.mark.parametrize("ref", ["COA-1", "COA-01@3", "", "coa-01"])
def test_a_code_nobody_ships_is_refused(ref):
    with pytest.raises(UnknownScenario, match="No scenario is called"):
        scenario(ref)


def test_every_rule_names_a_source_that_is_listed():
    assert {rule.source for one in published().values() for rule in one.book.rules} <= set(sources())


def test_every_reason_is_a_whole_sentence():
    for one in published().values():
        for rule in one.book.rules:
            assert rule.because[0].isupper() or rule.because[0].isdigit(), rule.code
            assert rule.because.endswith("."), rule.code


def test_every_lesson_named_is_one_of_the_course():
    named = {rule.lesson for one in published().values() for rule in one.book.rules}
    named |= {lesson for one in scenarios().values() for lesson in one.lessons}
    assert named <= set(shelf().lessons)


def test_the_framework_has_the_elements_that_courses_know_and_the_scenarios_serve():
    known = framework()
    assert known is framework()
    assert {code: [one.code for one in unit.elements] for code, unit in known.units.items()} == {
        code: [element for element, _ in unit.elements] for code, unit in units().items()
    }
    assert {element for one in scenarios().values() for element in one.elements} <= set(known.codes)


def test_every_plan_takes_as_many_steps_as_the_simulator_does():
    plans = [task for code in scenarios() for task in scenario(code).tasks if task.kind == "plan"]
    assert {task.most for task in plans} == {MOST_STEPS}
