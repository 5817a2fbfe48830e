"""The course list and what comes next on it."""

import pytest

from courses.actions import mark_read
from courses.models import Course, Lesson
from courses.views.catalogue import course_lines, courses_of, next_lesson, on_path, reads_of

pytestmark = pytest.mark.django_db
SEEING, PLANNING, CUTTING = ("L01", "L02", "L03", "L04", "L05"), ("L10", "L11", "L12", "L13"), ("L14", "L15", "L16")
TAUGHT = [*SEEING, *PLANNING, *CUTTING, "L24", "L25", "L29", "L31"]


def test_every_lesson_of_the_curriculum_stands_in_the_list(trainee):
    (course,) = courses_of(trainee)
    lines = course_lines(course, reads_of(trainee), None)
    listed = [lesson for module in lines.modules for lesson in module.lessons]
    assert (len(lines.modules), len(listed), len({lesson.code for lesson in listed})) == (7, 33, 33)
    assert sorted(lesson.code for lesson in listed if lesson.url) == TAUGHT


def test_what_is_read_is_counted_and_the_next_is_named(trainee, now):
    courses = courses_of(trainee)
    assert next_lesson(courses, reads_of(trainee)).code == "L01"
    for code in TAUGHT:
        if code != "L25":
            mark_read(trainee, Lesson.objects.get(code=code), now)
    reads = reads_of(trainee)
    upcoming = next_lesson(courses, reads)
    coating = course_lines(courses[0], reads, upcoming).modules[5]
    assert (upcoming.code, coating.done, coating.total) == ("L25", 1, 6)
    assert [lesson.code for lesson in coating.lessons if lesson.is_next] == ["L25"]
    mark_read(trainee, Lesson.objects.get(code="L25"), now)
    assert next_lesson(courses, reads_of(trainee)) is None


def test_the_path_is_the_order_of_reading_not_of_the_list(trainee):
    """Protect comes first: labels, pairs and the place before anything is touched (common practice, no source)."""
    (course,) = courses_of(trainee)
    path = [lesson.code for lesson in on_path(course)]
    assert path[:3] == ["L18", "L20", "L32"]
    assert sorted(path) == sorted(Lesson.objects.values_list("code", flat=True))


def test_whoever_teaches_sees_both_courses(shelves, instructor):
    assert {course.code for course in courses_of(instructor)} == set(Course.objects.values_list("code", flat=True))
