"""A version once published never changes."""

import pytest

from assessments import shipped
from assessments.authoring import publish_book, publish_scenario
from assessments.errors import PublishingRefused
from assessments.models import RuleBook, Scenario

pytestmark = pytest.mark.django_db


@pytest.fixture
def one():
    return shipped.published()["COA-01@1"]


@pytest.fixture
def book(one, now):
    return publish_book(one.book, one.book_text, one.shared, now=now)


def test_publishing_twice_leaves_one_version(one, book, now):
    rows = {publish_scenario(one.scenario, one.text, book, now=now).pk for _time in range(2)}
    assert (len(rows), Scenario.objects.count(), RuleBook.objects.count()) == (1, 1, 1)


def test_another_text_under_a_published_version_is_refused(one, book, now):
    publish_scenario(one.scenario, one.text, book, now=now)
    with pytest.raises(PublishingRefused, match="COA-01 version 1 is published and can't change. .* version 2."):
        publish_scenario(one.scenario, one.text + "\n# changed", book, now=now)
    assert Scenario.objects.get().text == one.text


def test_a_row_gives_back_the_rules_that_were_published(book, one):
    assert book.book.digest == one.book.digest
    assert [rule.code for rule in book.book.rules] == [rule.code for rule in one.book.rules]


def test_a_mended_rule_book_serves_new_attempts_and_the_old_one_stays(one, book, now):
    row = publish_scenario(one.scenario, one.text, book, now=now)
    other = RuleBook.objects.create(
        code="COA-01", version=1, digest="d", text=one.book_text, shared=one.shared, published_at=now
    )
    assert publish_scenario(one.scenario, one.text, other, now=now).rule_book == other
    assert (row.pk, RuleBook.objects.count()) == (Scenario.objects.get().pk, 2)
