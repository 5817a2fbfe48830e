"""The pages of rules in three lightings, on a desk, on a phone and on a narrow phone."""

import pytest
from django.utils import timezone
from playwright.sync_api import expect

from assessments import drafting
from tests.browser.stage import Stage, at, look
from tests.browser.test_rule_path import MOVING

pytestmark = [pytest.mark.browser, pytest.mark.looks, pytest.mark.django_db(transaction=True)]


@pytest.fixture
def desk(open_page, site, sign_in, author):
    """The author's screen."""
    return Stage(sign_in(open_page(), author), site, author)


def test_the_books_and_one_of_them(desk, second_book):
    assert look(desk, at("book-list")) == []
    assert look(desk, at("book-detail", "COA-01")) == []


def test_a_draft_with_a_mistake_a_change_and_something_taken_out(desk, draft, changed, author):
    draft = changed(draft, points=3)
    draft = drafting.take_out(draft, "COA-01.12", author)
    assert look(desk, at("draft-detail", draft.pk)) == []
    draft = changed(draft, code="COA-01.4", severity="needed")
    draft = changed(draft, code="COA-01.7", points=4)
    assert look(desk, at("draft-detail", draft.pk)) == []
    draft = changed(draft, code="COA-01.3", test="key.main_stp in answer.next_steps")
    assert look(desk, at("draft-detail", draft.pk)) == []


def test_a_draft_in_review_for_its_writer_and_for_who_reviews(desk, open_page, site, sign_in, draft, changed, reviewer):
    now = timezone.now()
    drafting.send_to_review(changed(draft, points=3), desk.person, now=now)
    assert look(desk, at("draft-detail", draft.pk)) == []
    assert look(Stage(sign_in(open_page(), reviewer), site, reviewer), at("draft-detail", draft.pk)) == []


@pytest.mark.parametrize("code", ["COA-01.9", "R41"], ids=["a rule of its own", "a shared rule"])
def test_the_desk(desk, draft, code):
    assert look(desk, at("rule-detail", draft.pk, code)) == []


def type_wrongly(stage: Stage, draft) -> None:
    """Choose a phrase, answers of one's own, and leave a mistake in the test."""
    stage.go("rule-write", draft.pk)
    page = stage.page
    for label, value in (("#id_phrase", "within"), ("#id_answers", "own")):
        with page.expect_response(lambda answer: answer.request.method == "POST"):
            page.select_option(label, value)
        expect(page.locator(MOVING)).to_have_count(0)
    with page.expect_response(lambda answer: answer.request.method == "POST"):
        page.fill("#id_test", "answer.dew_pont <= facts.air_degc and answer.margin == 2.5")
    page.wait_for_selector("#at-test .wrong-at")


def test_the_desk_with_a_phrase_a_mistake_and_ones_own_answer(desk, draft):
    assert look(desk, lambda stage: type_wrongly(stage, draft)) == []
