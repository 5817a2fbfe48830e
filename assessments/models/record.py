"""The record: evidence as it was filed, and what was decided on it. Rows are added, never changed or removed."""

import uuid
from typing import ClassVar

from django.db import models
from django.utils.translation import gettext_lazy as _

from assessments.models.attempt import Attempt
from assessments.models.scenario import RuleBook
from courses.models import Person


class Evidence(models.Model):
    """What one attempt showed of a person. Judged again, it is filed again beside the first."""

    id = models.UUIDField(primary_key=True, default=uuid.uuid4, editable=False)
    person = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="evidence")
    attempt = models.ForeignKey(Attempt, on_delete=models.PROTECT, related_name="evidence")
    kind = models.CharField(max_length=8)
    mode = models.CharField(max_length=8)
    scenario_code = models.CharField(max_length=16)
    scenario_version = models.PositiveIntegerField()
    rule_book = models.CharField(max_length=64)
    elements = models.JSONField()
    substrate = models.CharField(max_length=16, blank=True)
    described = models.BooleanField(default=False)
    outcome = models.CharField(max_length=24)
    points = models.FloatField()
    of = models.FloatField()
    judged = models.CharField(max_length=64)
    replaces = models.OneToOneField("self", on_delete=models.PROTECT, null=True, blank=True, related_name="replaced_by")
    happened_at = models.DateTimeField()
    filed_at = models.DateTimeField()

    class Meta:
        ordering: ClassVar = ["happened_at", "filed_at"]
        verbose_name_plural = "evidence"
        constraints = [
            models.UniqueConstraint(
                fields=["attempt"], condition=models.Q(replaces__isnull=True), name="an_attempt_is_filed_once"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.scenario_code} {self.outcome}"


class Rejudgement(models.Model):
    """What the same answers came to by another rule book: the evidence filed beside the first, and how it was found."""

    evidence = models.OneToOneField(Evidence, on_delete=models.PROTECT, primary_key=True, related_name="rejudgement")
    rule_book = models.ForeignKey(RuleBook, on_delete=models.PROTECT, related_name="rejudgements")
    trace = models.JSONField()

    def __str__(self) -> str:
        return f"{self.evidence} by {self.rule_book}"


class Decision(models.Model):
    """What somebody with the right decided on an element of a person, and exactly what they had been shown."""

    class Kind(models.TextChoices):
        """What was decided."""

        SIGNED = "signed", _("Signed")
        DECLINED = "declined", _("Declined")
        MORE_ASKED = "more_asked", _("More asked for")
        WITHDRAWN = "withdrawn", _("Signature withdrawn")

    id = models.UUIDField(primary_key=True, default=uuid.uuid4, editable=False)
    person = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="decisions")
    element = models.CharField(max_length=8)
    kind = models.CharField(max_length=10, choices=Kind)
    by = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="decided")
    role = models.CharField(max_length=10)
    requirement_version = models.PositiveIntegerField()
    deed = models.JSONField()
    digest = models.CharField(max_length=64)
    proof = models.CharField(max_length=10, blank=True)
    proved_at = models.DateTimeField(null=True, blank=True)
    until = models.DateTimeField(null=True, blank=True)
    withdraws = models.OneToOneField(
        "self", on_delete=models.PROTECT, null=True, blank=True, related_name="withdrawn_by"
    )
    at = models.DateTimeField()

    class Meta:
        ordering: ClassVar = ["at"]
        constraints = [
            models.CheckConstraint(
                condition=~models.Q(kind="signed") | models.Q(proved_at__isnull=False, until__isnull=False),
                name="a_signature_is_proved_and_ends",
            ),
            models.CheckConstraint(
                condition=models.Q(kind="withdrawn", withdraws__isnull=False)
                | (~models.Q(kind="withdrawn") & models.Q(withdraws__isnull=True)),
                name="a_withdrawal_names_its_signature",
            ),
            models.CheckConstraint(condition=~models.Q(person=models.F("by")), name="nobody_decides_on_themself"),
        ]

    def __str__(self) -> str:
        return f"{self.element} {self.kind}"


class Note(models.Model):
    """The words that go with a decision or a filing: the reason. Kept apart, so that it can be erased."""

    decision = models.OneToOneField(Decision, on_delete=models.PROTECT, null=True, blank=True, related_name="note")
    evidence = models.OneToOneField(Evidence, on_delete=models.PROTECT, null=True, blank=True, related_name="note")
    text = models.TextField()

    class Meta:
        constraints = [
            models.CheckConstraint(
                condition=models.Q(decision__isnull=False, evidence__isnull=True)
                | models.Q(decision__isnull=True, evidence__isnull=False),
                name="a_note_goes_with_one_row",
            )
        ]

    def __str__(self) -> str:
        return self.text[:60]
