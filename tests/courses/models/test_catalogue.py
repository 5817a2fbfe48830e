"""Courses, modules, lessons: who may open what."""

import pytest
from django.db import IntegrityError, transaction

from courses.models import Course, Lesson, LessonRead
from tests.factories import LessonFactory, MembershipFactory, ModuleFactory, PersonFactory, PlacementFactory

pytestmark = pytest.mark.django_db


def test_courses_are_open_to_their_cohorts_and_to_staff(now):
    mine, another = MembershipFactory(), MembershipFactory()
    staff = MembershipFactory(cohort=None, role="manager")
    seen = [set(Course.objects.open_to(one.person)) for one in (mine, another, staff)]
    assert seen == [{mine.cohort.course}, {another.cohort.course}, {mine.cohort.course, another.cohort.course}]
    assert not Course.objects.open_to(PersonFactory()).exists()


def test_a_lesson_is_open_once_it_is_taught():
    member = MembershipFactory()
    module = ModuleFactory(course=member.cohort.course)
    taught, named = LessonFactory(version=1), LessonFactory()
    for lesson in (taught, named):
        PlacementFactory(module=module, lesson=lesson)
    assert list(Lesson.objects.open_to(member.person)) == [taught]
    assert (taught.taught, named.taught) == (True, False)


def test_a_lesson_in_two_modules_is_listed_once():
    member = MembershipFactory()
    lesson = LessonFactory(version=1)
    for _module in range(2):
        PlacementFactory(module=ModuleFactory(course=member.cohort.course), lesson=lesson)
    assert Lesson.objects.open_to(member.person).count() == 1


def test_a_place_holds_one_lesson(now):
    placement = PlacementFactory()
    with pytest.raises(IntegrityError), transaction.atomic():
        PlacementFactory(module=placement.module, place=placement.place)


def test_rows_say_what_they_are(now):
    placement = PlacementFactory()
    read = LessonRead(person=PersonFactory(), lesson=placement.lesson, version=1, read_at=now)
    lesson, module = placement.lesson, placement.module
    assert str(lesson) == f"{lesson.code} {lesson.title}"
    assert [str(module), str(module.course), str(placement)] == [
        module.title,
        module.course.title,
        f"{module.pk}.{placement.place}",
    ]
    assert str(read) == f"{read.person_id} {lesson.pk}"
