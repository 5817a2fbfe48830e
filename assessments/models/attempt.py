"""An attempt, the answers given in it and what was found."""

import uuid
from datetime import datetime, timedelta
from typing import Any, ClassVar

from django.db import models
from django.db.models.functions import Coalesce
from django.utils.translation import gettext_lazy as _

from assessments.models.scenario import RuleBook, Scenario
from courses.models import Person

GRACE = timedelta(seconds=30)
"""How long past the deadline an answer on its way still counts."""


class AttemptQuerySet(models.QuerySet["Attempt"]):
    """Sentences about attempts: `Attempt.objects.by(person).open().on("COA-01")`."""

    def by(self, person: Person) -> "AttemptQuerySet":
        """Return those of `person`."""
        return self.filter(person=person)

    def on(self, code: str) -> "AttemptQuerySet":
        """Return those on any version of a scenario."""
        return self.filter(scenario_code=code)

    def open(self) -> "AttemptQuerySet":
        """Return those not closed."""
        return self.filter(closed_at__isnull=True)

    def judged(self) -> "AttemptQuerySet":
        """Return those that came out."""
        return self.exclude(outcome="")

    def kept(self) -> "AttemptQuerySet":
        """Return those that were not put away unjudged."""
        return self.filter(models.Q(closed_at__isnull=True) | ~models.Q(outcome=""))

    def with_newest_outcome(self) -> "AttemptQuerySet":
        """Return them with `newest_outcome`: what they came to when they were last judged."""
        evidence: Any = self.model._meta.get_field("evidence").related_model
        newest = evidence.objects.filter(attempt=models.OuterRef("pk"), replaced_by=None).values("outcome")[:1]
        return self.annotate(newest_outcome=Coalesce(models.Subquery(newest), models.F("outcome")))  # type: ignore[no-redef]

    def listed(self) -> "AttemptQuerySet":
        """Return those kept, with what a list shows of them and no more."""
        return self.kept().with_newest_outcome().select_related("scenario").defer("facts", "scenario__text")

    def due(self, now: datetime) -> "AttemptQuerySet":
        """Return the open papers whose time and grace are over at `now`."""
        return self.open().filter(deadline__lt=now - GRACE)


class Attempt(models.Model):
    """One sitting of a scenario by one person, with facts drawn for it alone.

    `pictures` says under which code each of its pictures hangs; `described` that they were read in words instead.
    """

    class Mode(models.TextChoices):
        """What it counts for."""

        PRACTICE = "practice", _("Practice")
        PAPER = "paper", _("Paper")

    id = models.UUIDField(primary_key=True, default=uuid.uuid4, editable=False)
    person = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="attempts")
    scenario = models.ForeignKey(Scenario, on_delete=models.PROTECT, related_name="attempts")
    scenario_code = models.CharField(max_length=16)
    mode = models.CharField(max_length=8, choices=Mode)
    number = models.PositiveIntegerField()
    seed = models.CharField(max_length=40)
    facts = models.JSONField()
    opened_at = models.DateTimeField()
    deadline = models.DateTimeField(null=True, blank=True)
    closed_at = models.DateTimeField(null=True, blank=True)
    outcome = models.CharField(max_length=24, blank=True)
    points = models.FloatField(default=0)
    of = models.FloatField(default=0)
    rule_book = models.ForeignKey(RuleBook, on_delete=models.PROTECT, related_name="attempts")
    digest = models.CharField(max_length=64, blank=True)
    trace = models.JSONField(null=True)
    pictures = models.JSONField(default=dict)
    described = models.BooleanField(default=False)

    newest_outcome: str  # there only on rows asked for with it

    objects = AttemptQuerySet.as_manager()

    class Meta:
        ordering: ClassVar = ["-opened_at"]
        constraints = [
            models.UniqueConstraint(
                fields=["person", "scenario_code", "mode"],
                condition=models.Q(closed_at__isnull=True),
                name="one_open_attempt_per_scenario_and_mode",
            ),
            models.UniqueConstraint(fields=["person", "scenario_code", "mode", "number"], name="attempts_are_counted"),
            models.CheckConstraint(
                condition=models.Q(outcome="") | models.Q(closed_at__isnull=False), name="what_came_out_is_closed"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.scenario_code} {self.mode} {self.number}"

    @property
    def title(self) -> str:
        """Return the title of its scenario."""
        return self.scenario.title

    @property
    def is_open(self) -> bool:
        """Say whether answers still count."""
        return self.closed_at is None

    @property
    def is_paper(self) -> bool:
        """Say whether it is timed and counts as evidence."""
        return self.mode == self.Mode.PAPER

    def is_due(self, now: datetime) -> bool:
        """Say whether time and grace are over at `now`."""
        return self.deadline is not None and now > self.deadline + GRACE


class AnswerQuerySet(models.QuerySet["Answer"]):
    """Sentences about answers."""

    def counted(self) -> "AnswerQuerySet":
        """Return those that were acknowledged in order and in time."""
        return self.filter(sequence__isnull=False)

    def beside(self) -> "AnswerQuerySet":
        """Return those that were kept in time beside the one that counts."""
        return self.filter(sequence__isnull=True, late=False)

    def newest(self) -> dict[str, "Answer"]:
        """Return of each task the answer that counts."""
        return {answer.task: answer for answer in self.counted().order_by("sequence")}


class Answer(models.Model):
    """One answer as it was given. Nothing is overwritten: the newest acknowledged one counts."""

    attempt = models.ForeignKey(Attempt, on_delete=models.CASCADE, related_name="answers")
    task = models.CharField(max_length=60)
    client_key = models.UUIDField()
    value = models.JSONField(null=True)
    seen = models.PositiveIntegerField(default=0)
    sequence = models.PositiveIntegerField(null=True, blank=True)
    late = models.BooleanField(default=False)
    received_at = models.DateTimeField()

    objects = AnswerQuerySet.as_manager()

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["attempt", "client_key"], name="an_answer_is_kept_once"),
            models.UniqueConstraint(fields=["attempt", "task", "sequence"], name="answers_to_a_task_are_in_order"),
        ]

    def __str__(self) -> str:
        return f"{self.task} {self.sequence}"


class FindingQuerySet(models.QuerySet["Finding"]):
    """Sentences about findings."""

    def at_first(self) -> "FindingQuerySet":
        """Return those of the first judgement."""
        return self.filter(rejudgement=None)


class Finding(models.Model):
    """What one rule found in an attempt, with the values it compared; judged again, it is found again."""

    attempt = models.ForeignKey(Attempt, on_delete=models.CASCADE, related_name="findings")
    rejudgement = models.ForeignKey(
        "assessments.Rejudgement", on_delete=models.PROTECT, null=True, blank=True, related_name="findings"
    )
    place = models.PositiveSmallIntegerField()
    code = models.CharField(max_length=24)
    sentence = models.CharField(max_length=300)
    verdict = models.CharField(max_length=16)
    severity = models.CharField(max_length=8)
    points = models.FloatField()
    of = models.FloatField()
    because = models.TextField()
    values = models.JSONField(default=list)
    lesson = models.CharField(max_length=8, blank=True)
    source = models.CharField(max_length=60, blank=True)
    failed = models.CharField(max_length=300, blank=True)

    objects = FindingQuerySet.as_manager()

    class Meta:
        ordering: ClassVar = ["place"]
        constraints = [
            models.UniqueConstraint(
                fields=["attempt", "code"], condition=models.Q(rejudgement=None), name="a_rule_is_judged_once"
            ),
            models.UniqueConstraint(fields=["rejudgement", "code"], name="a_rule_is_judged_again_once"),
        ]

    def __str__(self) -> str:
        return f"{self.code} {self.verdict}"
