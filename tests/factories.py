"""One factory per model: rows that make sense unless told otherwise."""

from datetime import timedelta

import factory
from allauth.account.models import EmailAddress
from django.utils import timezone

from courses.models import Cohort, Course, Invitation, Lesson, Membership, Module, Person, Placement, School
from courses.models.enrolment import Role
from courses.tokens import digest_of

PASSWORD = "a shed with doors shut"


class SchoolFactory(factory.django.DjangoModelFactory):
    class Meta:
        model = School
        django_get_or_create = ("id",)

    id = 1
    name = "Test Yard"
    zone = "America/New_York"
    jurisdiction = "us"


class PersonFactory(factory.django.DjangoModelFactory):
    class Meta:
        model = Person

    email = factory.Sequence(lambda n: f"person{n}@test.example")
    name = factory.Sequence(lambda n: f"Person {n}")
    temperature, film, volume, length = "degc", "um", "ml", "m"

    @classmethod
    def _create(cls, model_class, *args, **kwargs):
        password = kwargs.pop("password", PASSWORD)
        person = model_class.objects.create_user(*args, password=password, **kwargs)
        EmailAddress.objects.create(user=person, email=person.email, verified=True, primary=True)
        return person


class CourseFactory(factory.django.DjangoModelFactory):
    class Meta:
        model = Course

    code = factory.Sequence(lambda n: f"course-{n}")
    title = factory.Sequence(lambda n: f"Course {n}")
    digest = "0"


class CohortFactory(factory.django.DjangoModelFactory):
    class Meta:
        model = Cohort

    name = factory.Sequence(lambda n: f"Cohort {n}")
    mode = "remote"
    course = factory.SubFactory(CourseFactory)


class MembershipFactory(factory.django.DjangoModelFactory):
    class Meta:
        model = Membership

    person = factory.SubFactory(PersonFactory)
    role = Role.TRAINEE
    cohort = factory.SubFactory(CohortFactory)


class ModuleFactory(factory.django.DjangoModelFactory):
    class Meta:
        model = Module

    course = factory.SubFactory(CourseFactory)
    place = factory.Sequence(lambda n: n)
    title = factory.Sequence(lambda n: f"Module {n}")


class LessonFactory(factory.django.DjangoModelFactory):
    class Meta:
        model = Lesson

    code = factory.Sequence(lambda n: f"T{n:03d}")
    slug = factory.Sequence(lambda n: f"test-lesson-{n}")
    title = factory.Sequence(lambda n: f"Test lesson {n}")
    minutes = 20
    version = 0


class PlacementFactory(factory.django.DjangoModelFactory):
    class Meta:
        model = Placement

    module = factory.SubFactory(ModuleFactory)
    lesson = factory.SubFactory(LessonFactory)
    place = factory.Sequence(lambda n: n)


class InvitationFactory(factory.django.DjangoModelFactory):
    """Its token is `token`; the row keeps the digest alone."""

    class Meta:
        model = Invitation

    class Params:
        token = "token-of-a-test"

    digest = factory.LazyAttribute(lambda row: digest_of(row.token))
    role = Role.TRAINEE
    cohort = factory.SubFactory(CohortFactory)
    expires_at = factory.LazyFunction(lambda: timezone.now() + timedelta(days=3))


ASKED = {
    "formula": "T1",
    "loa_m": "6.40",
    "lwl_m": "5.55",
    "beam_m": "2.45",
    "draft_m": "0.42",
    "freeboard_m": "0.80",
    "left_out_m2": "0",
    "margin_percent": "0",
    "grade_1": "P1500",
    "passes_1": "4",
    "grade_2": "P2000",
    "passes_2": "3",
    "grade_3": "",
    "passes_3": "4",
    "chemistries": "1",
    "rotary": "1",
    "da_cut": "0",
    "da_finish": "1",
    "coats": "1",
    "method": "C1",
    "substrate": "gel_coat",
    "dry_um": "",
    "solids_percent": "35",
    "loss": "L1",
    "loss_percent": "30",
    "factor": "1.3",
    "pack_ml": "30",
    "rate_hour": "62",
    "rate_pack": "55",
    "apart_h": "0",
    "name": "Blue runabout",
    "currency": "usd",
    "left_out": ["nonskid", "seats", "glazing", "anodes"],
}
"""The worked job of the estimating exercise, as a reader of metres types it."""
