"""The shared rules as they are shipped, each tried on the cases of shared_cases.toml: met, not met, not answered.

Until a scenario hands in plans, the rules on steps are tried here alone.
"""

import tomllib

import pytest

from assessments.rules import check, check_shared, judge, points_only, read_book
from courses.trade.sources import read_sources
from tests.assessments.rules.shared_trials import BOOKS, FIXTURES, NAMES, PAGE, SHARED, book_of, bound, judged, weighed

WITHDRAWN = {"R20", "R25", "R31", "R32"}
DANGEROUS = ("R01", "R02", "R09", "R11", "R13", "R28", "R38", "R39", "R40", "R41")
"""Where a wrong verdict would hurt somebody or something: tried on their typical mistakes and on an empty answer."""

NOTHING_TO_JUDGE = ("R01", "R02", "R09", "R11", "R28", "R29")
"""The rules that don't apply to a plan in which nothing was abraded, sanded or treated."""

STAYS = (
    *("leave", "leaves", "leaving", "remain", "remains", "remaining", "stay", "stays", "still"),
    *("untreated", "refer", "referred", "visible", "unchanged", "excluded", "cannot"),
)
"""The words that say that something stays."""


def cases():
    chosen = [(code, case) for code in PAGE for case in PAGE[code]]
    return [pytest.param(code, case, id=f"{code} {case['says']}") for code, case in chosen]


def verdicts_of(code):
    return [case["verdict"] for case in PAGE[code]]


@pytest.mark.parametrize(("code", "case"), cases())
def test_a_case_comes_out_as_the_trade_has_it(code, case):
    assert judged(code, case) == case["verdict"]


@pytest.mark.parametrize("code", SHARED.rules)
def test_every_rule_is_met_not_met_and_left_unanswered_somewhere_so_none_is_idle(code):
    assert {"met", "not_met", "not_answered"} <= set(verdicts_of(code))


@pytest.mark.parametrize("code", SHARED.rules)
def test_a_rule_fails_to_apply_somewhere_exactly_where_it_has_a_guard(code):
    assert ("not_applicable" in verdicts_of(code)) is (SHARED.rules[code].when is not None)


@pytest.mark.parametrize("code", SHARED.rules)
def test_nothing_answered_is_never_held_against_anybody_and_earns_nothing(code):
    assert judged(code, {}) == "not_answered"


@pytest.mark.parametrize("code", DANGEROUS)
def test_a_dangerous_rule_is_tried_on_mistakes_and_where_it_reads_a_list_on_an_empty_one(code):
    lists = [value for case in PAGE[code] for value in case.get("answer", {}).values() if isinstance(value, list)]
    assert verdicts_of(code).count("not_met") >= 2
    assert [] in lists or code == "R41"


def test_there_are_cases_for_the_shipped_rules_and_no_others():
    assert list(PAGE) == list(SHARED.rules)


def test_the_codes_are_those_of_the_curriculum_in_order_and_a_withdrawn_one_is_not_used_again():
    assert list(SHARED.rules) == [f"R{n:02}" for n in range(1, 44) if f"R{n:02}" not in WITHDRAWN]
    assert all(code in (BOOKS / "shared.toml").read_text().split("[[rule]]")[0] for code in WITHDRAWN)


def test_every_shared_rule_reads_on_the_names_all_scenarios_have_in_common():
    assert check_shared(SHARED, NAMES) == ()


def test_only_the_rule_on_the_customer_text_looks_for_words():
    assert points_only(SHARED, NAMES) == {"R36"}


@pytest.mark.parametrize("code", SHARED.rules)
def test_a_shared_rule_keeps_the_four_habits_by_itself(code):
    assert book_of(weighed(code)).warnings == ()


@pytest.mark.parametrize("code", NOTHING_TO_JUDGE)
def test_an_empty_plan_earns_nothing_for_the_order_of_its_work(code):
    assert judged(code, {"answer": {"steps": []}}) == "not_applicable"


def test_all_shared_rules_stand_in_one_book():
    book = book_of(*(weighed(code) for code in SHARED.rules))
    assert book.warnings == ()
    nothing = judge(book, bound({})).findings
    assert {finding.verdict for finding in nothing} == {"not_answered"}


def test_every_shared_rule_names_a_known_source_and_a_lesson_there_is_and_gives_its_reason():
    sources = read_sources((FIXTURES / "trade/sources.toml").read_text(), "sources.toml")
    lessons = {one["code"] for one in tomllib.loads((FIXTURES / "courses/lessons.toml").read_text())["lesson"]}
    for rule in SHARED.rules.values():
        assert rule.source in sources, rule.code
        assert rule.lesson in lessons, rule.code
        assert rule.because[0].isupper(), rule.code
        assert rule.because.endswith("."), rule.code
        assert not rule.sentence.endswith("."), rule.code


def test_a_name_no_shared_rule_reads_is_one_the_curriculum_binds_for_the_rules_of_scenarios():
    texts = [text for rule in SHARED.rules.values() for text in (rule.test, rule.when) if text]
    read = {path[:2] for text in texts for path in check(text, NAMES).reads}
    names = {(root, name) for root in NAMES.names for name in NAMES.names[root].fields}
    assert names - read == {
        ("answer", "lamp_places"),
        ("answer", "first_abrade"),
        ("answer", "last_bleach"),
        ("answer", "first_acid_or_iron"),
        ("model", "trail_um"),
        ("model", "minutes"),
        ("model", "zones"),
    }


def test_a_plan_has_room_for_forty_steps_and_a_map_for_twenty_four_cells():
    sizes = {path: NAMES.kind(path).max for path in (("answer", "steps"), ("answer", "cells"), ("key", "required"))}
    assert sizes == {("answer", "steps"): 40, ("answer", "cells"): 24, ("key", "required"): 24}
    assert NAMES.kind(("answer", "steps", "[]", "family")).vals == ("look", "clean", "chem", "abrade", "coat", "stop")


def test_a_full_plan_is_judged_like_a_short_one():
    full = {"answer": {"steps": ["wash", "tape", "test_spot"] + ["sand", "dry", "inspect"] * 12 + ["wipe"]}}
    assert len(full["answer"]["steps"]) == NAMES.kind(("answer", "steps")).max
    assert [judged(code, full) for code in ("R01", "R02", "R09", "R10", "R11")] == ["met"] * 5


def test_what_is_published_already_still_says_what_it_said():
    """The digest was taken from the book as it was before the other shared rules came."""
    book = read_book((BOOKS / "COA-01-v1.toml").read_text(), "COA-01-v1.toml", SHARED)
    assert book.digest == "c120b4e5a138092131b4965164e7b060da5c45a17eb23c5676b9abe9c0be63bb"


@pytest.mark.parametrize("word", STAYS)
def test_each_word_for_what_stays_is_heard_alone_and_in_capitals(word):
    assert judged("R36", {"answer": {"note": f"One mark {word.upper()}."}}) == "met"


@pytest.mark.parametrize("word", ["stayed", "referral", "left", "gone"])
def test_other_words_are_not_heard(word):
    assert judged("R36", {"answer": {"note": f"One mark {word}."}}) == "not_met"


@pytest.mark.parametrize("asked", [5, 10, 15, 20])
def test_four_fifths_of_the_cells_are_enough_to_the_last_one(asked):
    cells = list(NAMES.kind(("answer", "cells", "[]")).vals)
    key = {"required": cells[:asked], "required_n": asked}
    found = [judged("R15", {"key": key, "answer": {"cells": cells[:n]}}) for n in (asked * 4 // 5, asked * 4 // 5 - 1)]
    assert found == ["met", "not_met"]
