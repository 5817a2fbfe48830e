"""One lesson: its text with calculators in place, its check questions, and that it was read."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from django.contrib.auth.decorators import login_required
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.safestring import SafeString, mark_safe
from django.views.decorators.http import require_POST

from courses.access import get_lesson_for, get_person
from courses.actions import mark_read
from courses.content.finder import FinderTable, Row, find
from courses.content.lesson import Lesson as Text
from courses.content.parts import Calculator as CalculatorPart
from courses.content.parts import Check, Drawing, Option
from courses.content.parts import Finder as FinderPart
from courses.content.parts import Pictures as PicturesPart
from courses.content.prose import Prose, Show, render_text, shown_for
from courses.gallery import lesson_frame
from courses.models import Lesson, Person
from courses.shipped import finders, lesson_in, sources
from courses.trade.sources import MARKS, Source
from courses.trade.units import Preferences
from courses.views.catalogue import courses_of, on_path
from courses.views.sums import opened_with


@dataclass(frozen=True, slots=True)
class Asked:
    """A check question as the page shows it, and the option picked if one was."""

    lesson: Lesson
    check: Check
    number: int
    show: Show
    picked: Option | None = None

    @property
    def ask(self) -> SafeString:
        """Return the question."""
        return _html(self.check.question, self.show)

    @property
    def options(self) -> list[dict[str, Any]]:
        """Return the options with their words."""
        return [
            {"id": one.id, "words": _html(one.text, self.show), "chosen": one is self.picked}
            for one in self.check.options
        ]

    @property
    def said(self) -> SafeString:
        """Return why the picked option is right or wrong."""
        return _html(self.picked.why, self.show) if self.picked else SafeString("")


@dataclass(frozen=True, slots=True)
class Found:
    """A finder as the page shows it, and the row it led to."""

    table: FinderTable
    show: Show
    chosen: Mapping[str, str]
    row: Row | None

    @property
    def about(self) -> SafeString:
        """Return what it is for."""
        return _html(self.table.about, self.show)

    @property
    def results(self) -> list[tuple[str, SafeString]]:
        """Return what stands in the row found, column by column."""
        if self.row is None:
            return []
        cells = zip(self.table.columns, self.row.results, strict=True)
        return [(column.title, _html(prose, self.show)) for column, prose in cells]

    @property
    def caution(self) -> SafeString:
        """Return the caution of the row."""
        return _html(self.row.caution, self.show) if self.row and self.row.caution else SafeString("")

    @property
    def source(self) -> Source | None:
        """Return what the row rests on."""
        return sources()[self.row.source] if self.row else None

    @property
    def mark(self) -> str:
        """Return how it is known, in words."""
        return MARKS[self.row.mark] if self.row else ""


def _html(prose: Prose, show: Show) -> SafeString:
    return mark_safe(render_text(prose, show))  # noqa: S308  cleaned when it was read; quantities are escaped


def found_in(table: FinderTable, prefs: Preferences, data: Mapping[str, str]) -> Found:
    """Return a finder with what was chosen in `data`."""
    chosen = {choice.name: data[choice.name] for choice in table.choices if choice.name in data}
    return Found(table, shown_for(prefs), chosen, find(table, chosen))


def _parts(lesson: Lesson, text: Text, prefs: Preferences, data: Mapping[str, str]) -> Iterator[dict[str, Any]]:
    show, number = shown_for(prefs), 0
    for part in text.parts:
        if isinstance(part, CalculatorPart):
            yield {"kind": "sum", "calc": opened_with(part.sum, dict(part.given), prefs)}
        elif isinstance(part, FinderPart):
            yield {"kind": "finder", "finder": found_in(finders()[part.table], prefs, data)}
        elif isinstance(part, Drawing):
            yield {"kind": "drawing", "template": f"courses/drawings/{part.code}.html"}
        elif isinstance(part, PicturesPart):
            yield {"kind": "pictures", "frame": lesson_frame(part.codes)}
        elif isinstance(part, Check):
            number += 1
            yield {"kind": "check", "check": Asked(lesson, part, number, show)}
        else:
            yield {"kind": part.kind, "title": getattr(part, "title", ""), "html": _html(part.prose, show)}


def _follows(person: Person, lesson: Lesson) -> Lesson | None:
    """Return the lesson to read after this one, on the path of the course it stands in."""
    for course in courses_of(person):
        path = on_path(course)
        if lesson in path:
            return next((one for one in path[path.index(lesson) + 1 :] if one.taught), None)
    return None


@login_required
def detail(request: HttpRequest, slug: str) -> HttpResponse:
    """Show a lesson."""
    person = get_person(request.user)
    lesson = get_lesson_for(person, slug)
    text = lesson_in(lesson.text, lesson.code)
    context = {
        "lesson": lesson,
        "can": text.outcomes,
        "parts": list(_parts(lesson, text, person.preferences, request.GET)),
        "pictured": any(isinstance(part, PicturesPart) for part in text.parts),
        "sources": [sources()[key] for key in text.sources],
        "read": person.lessons_read.filter(lesson=lesson).first(),
        "next": _follows(person, lesson),
    }
    return render(request, "courses/lesson_detail.html", context)


@login_required
@require_POST
def read(request: HttpRequest, slug: str) -> HttpResponse:
    """Remember that a lesson was read, and go on."""
    person = get_person(request.user)
    lesson = get_lesson_for(person, slug)
    mark_read(person, lesson, timezone.now())
    after = _follows(person, lesson)
    return redirect("lesson-detail", after.slug) if after else redirect("lesson-list")


@login_required
@require_POST
def check(request: HttpRequest, slug: str) -> HttpResponse:
    """Say at once whether the option picked in a check question holds, and why."""
    person = get_person(request.user)
    lesson = get_lesson_for(person, slug)
    asked = _asked(lesson, request.POST.get("check", ""), request.POST.get("pick", ""), person.preferences)
    template = "courses/_check.html" if getattr(request, "htmx", False) else "courses/lesson_check.html"
    return render(request, template, {"lesson": lesson, "check": asked})


def _asked(lesson: Lesson, check_id: str, option_id: str, prefs: Preferences) -> Asked:
    checks = lesson_in(lesson.text, lesson.code).checks
    for number, one in enumerate(checks, start=1):
        if one.id == check_id:
            picked = next((option for option in one.options if option.id == option_id), None)
            return Asked(lesson, one, number, shown_for(prefs), picked)
    raise Http404
