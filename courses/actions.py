"""Verbs of the ground floor that write: each locks, refuses, writes and returns."""

import hashlib
import json
from collections.abc import Mapping
from datetime import datetime, timedelta
from typing import Any

from allauth.account.models import EmailAddress
from django.db import transaction
from django.utils.translation import gettext as _

from courses.content.pack import CoursePack, LessonPack
from courses.errors import InvitationRefused
from courses.models import Cohort, Course, Invitation, Lesson, LessonRead, Membership, Module, Person, Placement, School
from courses.models.enrolment import Role
from courses.signals import role_changed
from courses.tokens import digest_of, new_token

INVITATION_DAYS = 14


@transaction.atomic
def found_school(fields: Mapping[str, Any]) -> School:
    """Make the one school, or bring its row up to `fields`."""
    school, _made = School.objects.update_or_create(pk=1, defaults=fields)
    return school


@transaction.atomic
def publish_lesson(pack: LessonPack) -> Lesson:
    """Bring the row of a lesson up to its pack; a changed text is a new version."""
    lesson = Lesson.objects.filter(code=pack.code).first() or Lesson(code=pack.code)
    digest = _digest(pack.slug, pack.title, pack.minutes, pack.elements, pack.version, pack.text)
    if lesson.pk and lesson.digest == digest:
        return lesson
    lesson.slug, lesson.title, lesson.minutes = pack.slug, pack.title, pack.minutes
    lesson.elements, lesson.version = list(pack.elements), pack.version
    lesson.text, lesson.digest = pack.text, digest
    lesson.save()
    return lesson


@transaction.atomic
def publish_course(pack: CoursePack, lessons: Mapping[str, Lesson]) -> Course:
    """Bring the rows of a course, its modules and the places of its lessons up to its pack."""
    course = Course.objects.filter(code=pack.code).first() or Course(code=pack.code)
    modules = [(one.title, one.unit, [lesson.code for lesson in one.lessons]) for one in pack.modules]
    path = [lesson.code for lesson in pack.path]
    digest = _digest(pack.title, pack.about, path, modules)
    if course.pk and course.digest == digest:
        return course
    course.title, course.about, course.path, course.digest = pack.title, pack.about, path, digest
    course.save()
    course.modules.all().delete()
    for place, (title, unit, codes) in enumerate(modules, start=1):
        module = Module.objects.create(course=course, place=place, title=title, unit=unit)
        Placement.objects.bulk_create(
            Placement(module=module, lesson=lessons[code], place=at) for at, code in enumerate(codes, start=1)
        )
    return course


def _digest(*parts: Any) -> str:
    return hashlib.sha256(json.dumps(parts).encode()).hexdigest()


@transaction.atomic
def gather_cohort(name: str, mode: str, course: Course) -> Cohort:
    """Make a cohort, or bring its row up to date."""
    cohort, _made = Cohort.objects.update_or_create(name=name, defaults={"mode": mode, "course": course})
    return cohort


@transaction.atomic
def enrol(
    person: Person,
    role: str,
    cohort: Cohort | None = None,
    *,
    now: datetime,
    by: Person | None = None,
    **codes: list[str],
) -> Membership:
    """Give `person` a role, in a cohort or in the whole school, with the codes they teach and may sign."""
    held = Membership.objects.select_for_update().filter(person=person, role=role, cohort=cohort).first()
    if held and all(getattr(held, name) == value for name, value in codes.items()):
        return held
    membership = held or Membership(person=person, role=role, cohort=cohort)
    for name, value in codes.items():
        setattr(membership, name, value)
    membership.save()
    role_changed.send(Membership, membership=membership, change="changed" if held else "given", by=by, now=now)
    return membership


@transaction.atomic
def welcome(email: str, password: str, **fields: Any) -> Person:
    """Make a person whose address counts as confirmed."""
    person = Person.objects.create_user(email, password, **fields)
    EmailAddress.objects.create(user=person, email=person.email, verified=True, primary=True)
    return person


@transaction.atomic
def renew_password(person: Person, password: str) -> Person:
    """Give `person` another password; the old one opens nothing from here on."""
    person.set_password(password)
    person.save(update_fields=["password"])
    return person


@transaction.atomic
def invite(*, role: str, cohort: Cohort | None, email: str, by: Person | None, now: datetime) -> tuple[Invitation, str]:
    """Make an invitation that leads in once within a fortnight; return it with the token of its link."""
    if role == Role.TRAINEE and cohort is None:
        raise InvitationRefused(_("A trainee learns in a cohort. Name one."))
    email = email.strip().lower()
    if email and Person.objects.with_email(email).exists():
        raise InvitationRefused(_("%(email)s already belongs here. Change the role instead.") % {"email": email})
    token = new_token()
    invitation = Invitation.objects.create(
        digest=digest_of(token),
        email=email.strip().lower(),
        role=role,
        cohort=cohort,
        invited_by=by,
        expires_at=now + timedelta(days=INVITATION_DAYS),
    )
    return invitation, token


@transaction.atomic
def accept(invitation: Invitation, *, email: str, name: str, password: str, metric: bool, now: datetime) -> Person:
    """Use up `invitation`: make the person it brings in, with an address that counts as confirmed, and their role."""
    invitation = Invitation.objects.select_for_update().get(pk=invitation.pk)
    if invitation.used_at or invitation.expires_at <= now:
        raise InvitationRefused(_("This invitation has been used or has expired. Ask the school for a new one."))
    address = invitation.email or email.strip().lower()
    if Person.objects.with_email(address).exists():
        raise InvitationRefused(_("%(email)s already belongs here. Sign in instead.") % {"email": address})
    person = welcome(address, password, name=name, **units(metric=metric))
    enrol(person, invitation.role, invitation.cohort, now=now, by=invitation.invited_by)
    invitation.used_at, invitation.used_by = now, person
    invitation.save(update_fields=["used_at", "used_by"])
    return person


def units(*, metric: bool) -> dict[str, str]:
    """Return the unit fields of a person who begins with one system."""
    if metric:
        return {"temperature": "degc", "film": "um", "volume": "ml", "length": "m"}
    return {"temperature": "degf", "film": "mil", "volume": "fl_oz", "length": "ft"}


@transaction.atomic
def mark_read(person: Person, lesson: Lesson, now: datetime) -> LessonRead:
    """Remember that `person` has read this version of `lesson`."""
    read, _made = LessonRead.objects.update_or_create(
        person=person, lesson=lesson, defaults={"version": lesson.version, "read_at": now}
    )
    return read


@transaction.atomic
def keep_settings(person: Person, fields: Mapping[str, str]) -> Person:
    """Keep how `person` likes to read: name, language, clock, units, lighting."""
    for name, value in fields.items():
        setattr(person, name, value)
    person.save(update_fields=list(fields))
    return person
