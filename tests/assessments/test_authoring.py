"""A version once published never changes."""

import pytest
from django.db import DatabaseError, IntegrityError, transaction

from assessments import shipped
from assessments.authoring import Hands, publish_book, publish_scenario, put_in_use
from assessments.errors import PublishingRefused
from assessments.models import LogEntry, RuleBook, Scenario
from assessments.rules import read_book, read_shared
from tests.factories import PersonFactory

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
    assert Scenario.objects.get(code="COA-01").text == one.text


def test_a_row_gives_back_the_rules_that_were_published(book, one):
    assert book.book.digest == one.book.digest
    assert [rule.code for rule in book.book.rules] == [rule.code for rule in one.book.rules]


def test_a_newer_rule_book_serves_new_attempts_and_the_old_one_stays(one, book, now):
    row = publish_scenario(one.scenario, one.text, book, now=now)
    newer = second(one, now)
    assert publish_scenario(one.scenario, one.text, newer, now=now).rule_book == newer
    assert (row.pk, RuleBook.objects.count()) == (Scenario.objects.get(code="COA-01").pk, 2)


def test_what_is_shipped_does_not_take_the_place_of_a_newer_book(one, book, now):
    publish_scenario(one.scenario, one.text, book, now=now)
    newer = second(one, now)
    publish_scenario(one.scenario, one.text, newer, now=now)
    assert publish_scenario(one.scenario, one.text, book, now=now).rule_book == newer


def test_other_rules_under_a_published_version_are_refused(one, book, now):
    text = one.book_text.replace("A chart can be read that close.", "Nobody reads a chart.")
    other = read_book(text, "x.toml", read_shared(one.shared))
    with pytest.raises(PublishingRefused, match="Rule book COA-01 version 1 is published and can't change."):
        publish_book(other, text, one.shared, now=now)


def test_a_published_book_can_not_be_changed_in_the_database(book):
    with pytest.raises(DatabaseError, match="neither changed nor removed"), transaction.atomic():
        RuleBook.objects.update(text="other rules")
    with pytest.raises(DatabaseError, match="neither changed nor removed"), transaction.atomic():
        book.delete()


def test_an_earlier_version_marks_again_and_the_log_says_who_did_it(one, book, now):
    person = PersonFactory()
    publish_scenario(one.scenario, one.text, book, now=now)
    newer = second(one, now)
    publish_scenario(one.scenario, one.text, newer, now=now)
    assert put_in_use(book, person, now=now).rule_book == book
    entry = LogEntry.objects.get(kind="book_in_use")
    assert (entry.stream, str(person.handle) in entry.body, book.digest in entry.body) == ("school", True, True)
    with pytest.raises(PublishingRefused, match="Version 1 is in use already."):
        put_in_use(book, person, now=now)


def test_nobody_reviews_their_own_rules_in_the_database(one, now):
    person = PersonFactory()
    with pytest.raises(IntegrityError), transaction.atomic():
        publish_book(one.book, one.book_text, one.shared, now=now, hands=Hands(person, person))


def second(one, now):
    """Publish a second version of the rules of COA-01@1."""
    text = one.book_text.replace("version = 1", "version = 2\nscenario_version = 1", 1)
    return publish_book(read_book(text, "x.toml", read_shared(one.shared)), text, one.shared, now=now)
