"""Verbs of the ground floor that write: each locks, refuses, writes and returns."""

import hashlib
import json
from collections.abc import Mapping
from datetime import datetime, timedelta
from typing import Any

from allauth.account.models import EmailAddress
from allauth.mfa.models import Authenticator
from django.contrib.auth import SESSION_KEY
from django.contrib.sessions.models import Session
from django.db import transaction
from django.db.models import Q
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy

from courses.content.pack import CoursePack, LessonPack
from courses.errors import CohortRefused, InvitationRefused, PersonRefused, RoleRefused
from courses.models import (
    Cohort,
    Course,
    Estimate,
    Invitation,
    Lesson,
    LessonRead,
    Membership,
    Module,
    Person,
    Placement,
    School,
)
from courses.models.enrolment import Role
from courses.signals import person_erased, role_changed
from courses.tokens import digest_of, new_token

INVITATION_DAYS = 14
CHANGED_MEANWHILE = gettext_lazy("Somebody changed this role meanwhile. Open it again to see what it is now.")
NO_MANAGER_LEFT = gettext_lazy("The school needs a manager who can sign in. Give somebody else that role first.")


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
def keep_cohort(cohort: Cohort | None, *, name: str, mode: str, course: Course) -> Cohort:
    """Make a cohort, or give one that stands another name, mode or course."""
    _lock_school()
    kept = cohort or Cohort()
    if Cohort.objects.filter(name__iexact=name).exclude(pk=kept.pk).exists():
        raise CohortRefused(_("There is a cohort %(name)s already. Choose another name.") % {"name": name})
    kept.name, kept.mode, kept.course = name, mode, course
    kept.save()
    return kept


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
    _locked(person)
    _suits(role, cohort, codes)
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
def change_role(
    membership: Membership,
    *,
    cohort: Cohort | None,
    teaches: list[str],
    may_sign: list[str],
    by: Person | None,
    now: datetime,
) -> Membership:
    """Bring a role up to its cohort and codes; said once, and only where something changed."""
    _locked(membership.person)
    held = _held(membership)
    if _what(held) != _what(membership):
        raise RoleRefused(CHANGED_MEANWHILE)
    _suits(held.role, cohort, {"teaches": teaches, "may_sign": may_sign})
    if Membership.objects.filter(person=held.person_id, role=held.role, cohort=cohort).exclude(pk=held.pk).exists():
        raise RoleRefused(_("They hold this role there already. Change that one, or end this one."))
    before = _what(held)
    held.cohort, held.teaches, held.may_sign = cohort, teaches, may_sign
    if _what(held) == before:
        return held
    held.save()
    role_changed.send(Membership, membership=held, change="changed", by=by, now=now)
    return held


@transaction.atomic
def end_role(membership: Membership, *, by: Person | None, now: datetime) -> None:
    """End a role; the school keeps a manager, and nobody ends their own last role as one."""
    _lock_school()
    held = _held(membership)
    if held.role == Role.MANAGER:
        others = Membership.objects.managing().exclude(pk=held.pk)
        if by == held.person and not others.filter(person=by).exists():
            raise RoleRefused(_("This role lets you see this page. Another manager has to end it."))
        if not others.filter(person__is_active=True).exists():
            raise RoleRefused(NO_MANAGER_LEFT)
    _end(held, by, now)


def _what(membership: Membership) -> tuple[Any, ...]:
    return membership.cohort_id, membership.teaches, membership.may_sign


def _end(membership: Membership, by: Person | None, now: datetime) -> None:
    role_changed.send(Membership, membership=membership, change="ended", by=by, now=now)
    membership.delete()


def _held(membership: Membership) -> Membership:
    rows = Membership.objects.select_for_update(of=("self",)).select_related("person", "cohort")
    held = rows.filter(pk=membership.pk).first()
    if held is None:
        raise RoleRefused(_("Somebody ended this role meanwhile."))
    return held


def _suits(role: str, cohort: Cohort | None, codes: Mapping[str, list[str]]) -> None:
    if role == Role.TRAINEE and cohort is None:
        raise RoleRefused(_("A trainee learns in a cohort. Name one."))
    if role == Role.TRAINEE and any(codes.values()):
        raise RoleRefused(_("A trainee teaches nothing and signs nothing. Take the codes out."))


def _lock_school() -> None:
    """Two managers at once take turns: the row of the school is the one thing both have to hold."""
    School.objects.select_for_update().here()


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


@transaction.atomic
def revoke_invitation(invitation: Invitation, *, now: datetime) -> Invitation:
    """End an invitation, so that its link opens nothing from `now` on."""
    held = Invitation.objects.select_for_update().get(pk=invitation.pk)
    if held.used_at:
        raise InvitationRefused(_("Somebody came in by this invitation meanwhile. It can’t be ended any more."))
    held.expires_at = min(held.expires_at, now)
    held.save(update_fields=["expires_at"])
    return held


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
def keep_estimate(person: Person, fields: Mapping[str, Any], *, now: datetime) -> Estimate:
    """Keep an estimate as it was asked for and as it was worked; it doesn't change any more."""
    return Estimate.objects.create(person=person, made_at=now, **fields)


@transaction.atomic
def write_used(estimate: Estimate, used: Mapping[str, float], *, now: datetime) -> Estimate:
    """Write what was used beside what was estimated."""
    held = Estimate.objects.select_for_update().get(pk=estimate.pk)
    held.used, held.used_at = dict(used), now
    held.save(update_fields=["used", "used_at"])
    return held


@transaction.atomic
def keep_settings(person: Person, fields: Mapping[str, str]) -> Person:
    """Keep how `person` likes to read: name, language, clock, units, lighting."""
    for name, value in fields.items():
        setattr(person, name, value)
    person.save(update_fields=list(fields))
    return person


@transaction.atomic
def keep_person(person: Person, fields: Mapping[str, Any]) -> Person:
    """Keep name, address or extra time of `person`; an address that the school gives counts as confirmed."""
    _lock_school()
    held, changed = _locked(person), dict(fields)
    email = changed["email"] = changed.get("email", held.email).strip().lower()
    if email != held.email:
        _give_address(held, email)
    for name, value in changed.items():
        setattr(held, name, value)
    held.save(update_fields=list(changed))
    return held


def _give_address(person: Person, email: str) -> None:
    elsewhere = EmailAddress.objects.filter(email__iexact=email).exclude(user=person)
    if elsewhere.exists() or Person.objects.with_email(email).exclude(pk=person.pk).exists():
        raise PersonRefused(_("%(email)s belongs to somebody else here.") % {"email": email})
    EmailAddress.objects.filter(user=person).delete()
    EmailAddress.objects.create(user=person, email=email, verified=True, primary=True)


@transaction.atomic
def deactivate(person: Person, *, by: Person | None) -> Person:
    """Shut `person` out until they are let in again; their roles and their record stand."""
    held = _may_leave(person, by)
    _shut_out(held)
    held.is_active = False
    held.save(update_fields=["is_active"])
    return held


@transaction.atomic
def activate(person: Person) -> Person:
    """Let `person` sign in again."""
    held = _locked(person)
    held.is_active = True
    held.save(update_fields=["is_active"])
    return held


@transaction.atomic
def erase_person(person: Person, *, by: Person | None, now: datetime) -> Person:
    """Remove who `person` is, for good: roles end, name, address and devices go; their work stands, nameless."""
    held = _may_leave(person, by)
    for membership in held.memberships.select_for_update():
        _end(membership, by, now)
    _shut_out(held)
    addressed = Invitation.objects.filter(email=held.email)
    addressed.filter(used_at__isnull=True).delete()  # without its address it would let anybody in
    Invitation.objects.filter(Q(email=held.email) | Q(used_by=held)).update(email="")
    EmailAddress.objects.filter(user=held).delete()
    Authenticator.objects.filter(user=held).delete()
    held.name, held.email, held.is_active = "Erased person", _address_of_nobody(held), False
    held.extra_time_percent, held.zone, held.last_login = 0, "", None
    held.set_unusable_password()
    held.save()
    person_erased.send(Person, person=held, by=by, now=now)
    return held


def is_erased(person: Person) -> bool:
    """Say whether `person` was erased."""
    return person.email == _address_of_nobody(person)


def _address_of_nobody(person: Person) -> str:
    return f"{person.handle}@erased.invalid"


def _locked(person: Person) -> Person:
    held: Person = Person.objects.select_for_update().get(pk=person.pk)
    if is_erased(held):
        raise PersonRefused(_("This person was erased. Nothing of theirs can be changed."))
    return held


def _may_leave(person: Person, by: Person | None) -> Person:
    _lock_school()
    held = _locked(person)
    if held == by:
        raise PersonRefused(_("You can’t shut yourself out. Another manager has to do it."))
    managing = Membership.objects.managing().filter(person__is_active=True)
    if managing.filter(person=held).exists() and not managing.exclude(person=held).exists():
        raise PersonRefused(NO_MANAGER_LEFT)
    return held


def _shut_out(person: Person) -> None:
    mine = [row for row in Session.objects.iterator() if row.get_decoded().get(SESSION_KEY) == str(person.pk)]
    Session.objects.filter(pk__in=[row.pk for row in mine]).delete()
