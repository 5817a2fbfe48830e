"""Cohorts, memberships with their roles, and the invitations that lead to them."""

from datetime import datetime
from typing import ClassVar

from django.db import models
from django.utils.translation import gettext_lazy as _

from courses.models.catalogue import Course
from courses.models.people import Person


class Cohort(models.Model):
    """People who learn together, in one way, along one course."""

    class Mode(models.TextChoices):
        """Where they meet."""

        IN_PERSON = "in_person", _("in person")
        REMOTE = "remote", _("remote")

    name = models.CharField(max_length=60, unique=True)
    mode = models.CharField(max_length=9, choices=Mode)
    course = models.ForeignKey(Course, on_delete=models.PROTECT, related_name="cohorts")

    class Meta:
        ordering: ClassVar = ["name"]

    def __str__(self) -> str:
        return self.name


class Role(models.TextChoices):
    """What a membership lets a person do."""

    TRAINEE = "trainee", _("trainee")
    INSTRUCTOR = "instructor", _("instructor")
    EXAMINER = "examiner", _("examiner")
    MANAGER = "manager", _("manager")


class MembershipQuerySet(models.QuerySet["Membership"]):
    """Sentences about memberships."""

    def staff(self) -> "MembershipQuerySet":
        """Return those who teach, examine or manage."""
        return self.exclude(role=Role.TRAINEE)

    def managing(self) -> "MembershipQuerySet":
        """Return those who manage the school."""
        return self.filter(role=Role.MANAGER)


class Membership(models.Model):
    """A role of a person, in one cohort or in the whole school."""

    person = models.ForeignKey(Person, on_delete=models.CASCADE, related_name="memberships")
    role = models.CharField(max_length=10, choices=Role)
    cohort = models.ForeignKey(Cohort, on_delete=models.PROTECT, null=True, blank=True, related_name="memberships")
    teaches = models.JSONField(default=list, blank=True)
    may_sign = models.JSONField(default=list, blank=True)

    objects = MembershipQuerySet.as_manager()

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["person", "role", "cohort"], name="a_role_is_held_once_in_a_cohort"),
            models.UniqueConstraint(
                fields=["person", "role"],
                condition=models.Q(cohort__isnull=True),
                name="a_role_is_held_once_in_the_school",
            ),
            models.CheckConstraint(
                condition=~models.Q(role=Role.TRAINEE) | models.Q(cohort__isnull=False),
                name="a_trainee_learns_in_a_cohort",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.person_id} {self.role}"


class InvitationQuerySet(models.QuerySet["Invitation"]):
    """Sentences about invitations."""

    def open_at(self, now: datetime) -> "InvitationQuerySet":
        """Return the invitations that still lead in at `now`."""
        return self.filter(used_at__isnull=True, expires_at__gt=now)


class Invitation(models.Model):
    """A link that leads in once, until it expires. Only a digest of it is kept."""

    digest = models.CharField(max_length=64, unique=True)
    email = models.EmailField(blank=True)
    role = models.CharField(max_length=10, choices=Role)
    cohort = models.ForeignKey(Cohort, on_delete=models.CASCADE, null=True, blank=True, related_name="invitations")
    invited_by = models.ForeignKey(Person, on_delete=models.SET_NULL, null=True, blank=True, related_name="invited")
    made_at = models.DateTimeField(auto_now_add=True)
    expires_at = models.DateTimeField()
    used_at = models.DateTimeField(null=True, blank=True)
    used_by = models.ForeignKey(Person, on_delete=models.SET_NULL, null=True, blank=True, related_name="invitation")

    objects = InvitationQuerySet.as_manager()

    def __str__(self) -> str:
        return f"{self.role} {self.email}".strip()
