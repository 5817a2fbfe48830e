"""Rows of the ground floor, in reading order."""

from courses.models.school import School
from courses.models.people import Person
from courses.models.catalogue import Course, Lesson, LessonRead, Module, Placement
from courses.models.enrolment import Cohort, Invitation, Membership
from courses.models.picture import HungPicture
from courses.models.estimate import Estimate

__all__ = [
    "Cohort",
    "Course",
    "Estimate",
    "HungPicture",
    "Invitation",
    "Lesson",
    "LessonRead",
    "Membership",
    "Module",
    "Person",
    "Placement",
    "School",
]
