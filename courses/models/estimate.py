"""Estimates that people made for a job, and what was really used."""

from typing import ClassVar

from django.db import models

from courses.models.enrolment import Role
from courses.models.people import Person
from courses.trade.quote import Quote, read_quote


class EstimateQuerySet(models.QuerySet["Estimate"]):
    """Sentences about estimates."""

    def by(self, person: Person) -> "EstimateQuerySet":
        """Return those that `person` made."""
        return self.filter(person=person)

    def closed(self) -> "EstimateQuerySet":
        """Return those beside which stands what was used, the newest first."""
        return self.filter(used_at__isnull=False).order_by("-used_at")

    def of_staff(self) -> "EstimateQuerySet":
        """Return those made by whoever teaches, examines or manages: their rates are the school's."""
        return self.filter(person__memberships__role__in=[role for role in Role if role != Role.TRAINEE]).distinct()


class Estimate(models.Model):
    """What was asked of a job, what it was worked to at the time, and, once it is done, what was used."""

    person = models.ForeignKey(Person, on_delete=models.CASCADE, related_name="estimates")
    name = models.CharField(max_length=80)
    made_at = models.DateTimeField()
    asked = models.JSONField()
    worked = models.JSONField()
    left_out = models.JSONField(default=list, blank=True)
    tried = models.BooleanField(default=False)
    currency = models.CharField(max_length=3, blank=True)
    used = models.JSONField(default=dict, blank=True)
    used_at = models.DateTimeField(null=True, blank=True)

    objects = EstimateQuerySet.as_manager()

    class Meta:
        ordering: ClassVar = ["-made_at", "-pk"]

    def __str__(self) -> str:
        return self.name

    @property
    def quote(self) -> Quote:
        """Return the quote as it was worked."""
        return read_quote(self.worked)
