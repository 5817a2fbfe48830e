"""The draft of a rule book: written by some, reviewed by somebody else, then published or thrown away."""

import uuid
from typing import ClassVar

from django.db import models
from django.utils.translation import gettext_lazy as _

from assessments.models.scenario import RuleBook, Scenario
from courses.models import Person


class DraftQuerySet(models.QuerySet["Draft"]):
    """Sentences about drafts."""

    def open(self) -> "DraftQuerySet":
        """Return those that can still become a version, with whoever began them."""
        return self.filter(state__in=("draft", "in_review")).select_related("started_by")


class Draft(models.Model):
    """The next version of a rule book while it is written. Its rows are the tables of the book's text.

    `base` is the version it began from; `revision` counts what was kept. Whoever kept something is one of the
    `writers`, and reviews nothing here.
    """

    class State(models.TextChoices):
        """Where it stands."""

        DRAFT = "draft", _("Draft")
        IN_REVIEW = "in_review", _("In review")
        PUBLISHED = "published", _("Published")
        DISCARDED = "discarded", _("Thrown away")

    id = models.UUIDField(primary_key=True, default=uuid.uuid4, editable=False)
    scenario = models.ForeignKey(Scenario, on_delete=models.PROTECT, related_name="drafts")
    base = models.ForeignKey(RuleBook, on_delete=models.PROTECT, related_name="drafts")
    lesson = models.CharField(max_length=8, blank=True)
    rows = models.JSONField()
    exemplars = models.JSONField(default=list)
    revision = models.PositiveIntegerField(default=0)
    state = models.CharField(max_length=9, choices=State, default=State.DRAFT)
    started_by = models.ForeignKey(Person, on_delete=models.PROTECT, related_name="drafts_started")
    started_at = models.DateTimeField()
    writers = models.ManyToManyField(Person, related_name="drafts_written")
    sent_by = models.ForeignKey(Person, on_delete=models.PROTECT, null=True, blank=True, related_name="drafts_sent")
    sent_at = models.DateTimeField(null=True, blank=True)
    remark = models.TextField(blank=True)
    remark_by = models.ForeignKey(
        Person, on_delete=models.PROTECT, null=True, blank=True, related_name="drafts_remarked"
    )
    book = models.OneToOneField(RuleBook, on_delete=models.PROTECT, null=True, blank=True, related_name="draft")

    objects = DraftQuerySet.as_manager()

    class Meta:
        ordering: ClassVar = ["-started_at"]
        constraints = [
            models.UniqueConstraint(
                fields=["scenario"],
                condition=models.Q(state__in=("draft", "in_review")),
                name="one_open_draft_per_scenario",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.scenario} {self.state}"

    @property
    def is_open(self) -> bool:
        """Say whether it can still become a version."""
        return self.state in (self.State.DRAFT, self.State.IN_REVIEW)

    @property
    def is_written(self) -> bool:
        """Say whether it is being written, not reviewed."""
        return self.state == self.State.DRAFT

    def row(self, code: str) -> dict[str, object] | None:
        """Return the row of a rule, or None."""
        return next((row for row in self.rows if code in (row.get("code"), row.get("shared"))), None)
