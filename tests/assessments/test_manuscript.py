"""A draft as it is read: its text is a rule book, and whatever is wrong with it is part of the answer."""

import pytest

from assessments import shipped
from assessments.manuscript import code_of, next_version, opened, tried
from assessments.models import RuleBook

pytestmark = pytest.mark.django_db


@pytest.fixture
def one():
    return shipped.published()["COA-01@1"]


def test_what_a_published_text_is_opened_to(shelves):
    lesson, rows, exemplars = opened(RuleBook.objects.get(code="COA-01"))
    assert (lesson, len(rows), exemplars) == ("L24", 15, [])
    assert [code_of(row) for row in rows[:4]] == ["COA-01.1", "COA-01.2", "R21", "R41"]
    assert (next_version("COA-01"), next_version("COA-02")) == (2, 1)


def test_a_text_that_is_no_book_says_why(one):
    checked = tried(one.text, one.book_text.replace('severity = "needed"', 'severity = "grave"', 1), one.shared, "x")
    assert (checked.book, checked.proof) == (None, None)
    assert "'grave' is no severity" in checked.refusal


def test_an_exemplar_that_names_no_rule_says_why(one):
    own = '[[exemplars]]\nname = "a"\noutcomes = ["satisfactory"]\nnot_met = ["COA-01.99"]\n'
    checked = tried(one.text, f"{one.book_text}\n{own}", one.shared, "x")
    assert "no rule of its book is called 'COA-01.99'" in checked.refusal
    assert (checked.book is None, checked.proof) == (False, None)


def test_an_exemplar_that_can_not_be_read_says_why(one):
    own = '[[exemplars]]\nname = "a"\noutcomes = ["splendid"]\n'
    assert "splendid" in tried(one.text, f"{one.book_text}\n{own}", one.shared, "x").refusal


def test_a_sound_book_is_proved(one):
    checked = tried(one.text, one.book_text, one.shared, "x")
    assert (checked.faults, checked.refusal, checked.proof.clean, checked.proof.draws) == ((), "", True, 12)
