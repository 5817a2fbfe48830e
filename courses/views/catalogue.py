"""The course list: every lesson that will be taught, those taught here as links."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime

from django.contrib.auth.decorators import login_required
from django.db.models import Prefetch
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import reverse

from courses.access import get_person
from courses.models import Course, Lesson, Person, Placement


@dataclass(frozen=True, slots=True)
class LessonLine:
    """A lesson in a list: without an address it is not yet taught here."""

    code: str
    title: str
    minutes: int
    url: str
    read_on: datetime | None
    is_next: bool = False


@dataclass(frozen=True, slots=True)
class ModuleLines:
    """A module and its lessons."""

    title: str
    lessons: tuple[LessonLine, ...]

    @property
    def done(self) -> int:
        """Return how many were read."""
        return sum(1 for one in self.lessons if one.read_on)

    @property
    def total(self) -> int:
        """Return how many there are."""
        return len(self.lessons)


@dataclass(frozen=True, slots=True)
class CourseLines:
    """A course and its modules."""

    title: str
    about: str
    modules: tuple[ModuleLines, ...]


def courses_of(person: Person) -> list[Course]:
    """Return the courses of `person` with modules and lessons, in a fixed number of queries."""
    placements = Placement.objects.select_related("lesson").defer("lesson__text").order_by("place")
    return list(Course.objects.open_to(person).prefetch_related("modules", Prefetch("modules__placements", placements)))


def reads_of(person: Person) -> Mapping[int, datetime]:
    """Return lesson to the time it was read by `person`."""
    return dict(person.lessons_read.values_list("lesson_id", "read_at"))


def on_path(course: Course) -> list[Lesson]:
    """Return the lessons of a course in the order of reading."""
    lessons = {one.lesson.code: one.lesson for module in course.modules.all() for one in module.placements.all()}
    return [lessons[code] for code in course.path if code in lessons]


def next_lesson(courses: Iterable[Course], reads: Mapping[int, datetime]) -> Lesson | None:
    """Return the first lesson on the path that is taught here and not yet read."""
    path = (lesson for course in courses for lesson in on_path(course))
    return next((lesson for lesson in path if lesson.taught and lesson.pk not in reads), None)


def _line(lesson: Lesson, reads: Mapping[int, datetime], upcoming: Lesson | None) -> LessonLine:
    url = reverse("lesson-detail", args=[lesson.slug]) if lesson.taught else ""
    return LessonLine(lesson.code, lesson.title, lesson.minutes, url, reads.get(lesson.pk), lesson == upcoming)


def course_lines(course: Course, reads: Mapping[int, datetime], upcoming: Lesson | None) -> CourseLines:
    """Return a course as its list shows it."""
    modules = tuple(
        ModuleLines(module.title, tuple(_line(one.lesson, reads, upcoming) for one in module.placements.all()))
        for module in course.modules.all()
    )
    return CourseLines(course.title, course.about, modules)


@login_required
def index(request: HttpRequest) -> HttpResponse:
    """List the lessons of one's courses."""
    person = get_person(request.user)
    courses, reads = courses_of(person), reads_of(person)
    upcoming = next_lesson(courses, reads)
    lines = [course_lines(course, reads, upcoming) for course in courses]
    return render(request, "courses/lesson_list.html", {"courses": lines, "next_lesson": upcoming})
