"""What `setup` puts on the school's shelves: everything is read before any row is written."""

from datetime import datetime

from django.db import transaction

from assessments import shipped
from assessments.authoring import publish_book, publish_scenario
from assessments.management.demo_plan import read_plan
from courses.actions import publish_course, publish_lesson
from courses.shipped import shelf


def refuse_broken() -> None:
    """Read every shipped file; the first that is broken raises its sentence, with file, line and key."""
    shelf()
    for ref in shipped.published():
        shipped.marker(ref)
    read_plan()


@transaction.atomic
def load(now: datetime) -> None:
    """Bring courses, lessons, rule books and scenarios up to what is shipped."""
    packs = shelf()
    lessons = {code: publish_lesson(pack) for code, pack in packs.lessons.items()}
    for course in packs.courses.values():
        publish_course(course, lessons)
    for one in shipped.published().values():
        books = [publish_book(book, text, one.shared, now=now) for book, text in one.books]
        publish_scenario(one.scenario, one.text, books[-1], now=now)
