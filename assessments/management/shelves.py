"""What `setup` puts on the school's shelves: everything is read before any row is written."""

from collections.abc import Callable
from datetime import datetime

from django.db import transaction

from assessments import shipped
from assessments.authoring import publish_book, publish_scenario
from assessments.management.demo_plan import read_plan
from assessments.models import RuleBook
from assessments.rules import RuleBook as Book
from courses.actions import publish_course, publish_lesson
from courses.shipped import catalogue, constants, contrast, panels, shelf


def refuse_broken() -> None:
    """Read every shipped file; the first that is broken raises its sentence, with file, line and key."""
    shelf()
    catalogue()
    contrast()
    panels()
    constants()
    for ref in shipped.published():
        shipped.marker(ref)
    read_plan()


@transaction.atomic
def load(now: datetime, say: Callable[[str], object] = lambda words: None) -> None:
    """Bring courses, lessons, rule books and scenarios up to what is shipped; `say` tells what was left out."""
    packs = shelf()
    lessons = {code: publish_lesson(pack) for code, pack in packs.lessons.items()}
    for course in packs.courses.values():
        publish_course(course, lessons)
    for one in shipped.published().values():
        books = [row for book, text in one.books if (row := _published(book, text, one.shared, now, say))]
        publish_scenario(one.scenario, one.text, books[-1], now=now)


def _published(book: Book, text: str, shared: str, now: datetime, say: Callable[[str], object]) -> RuleBook | None:
    """Return the row of a shipped rule book, or None where the school wrote other rules under its number."""
    own = RuleBook.objects.filter(code=book.code, version=book.version, written_by__isnull=False).first()
    if own and own.book != book:
        say(f"Rule book {own} was written here and stays; the shipped one of that number is left out.")
        return None
    return publish_book(book, text, shared, now=now)
