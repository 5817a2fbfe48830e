"""Scenarios and the rule books that judge them, version by version. A published version never changes."""

from functools import lru_cache
from typing import ClassVar

from django.db import models

from assessments.marking import Marker
from assessments.rules import RuleBook as Book
from assessments.rules import read_book, read_shared
from assessments.scenarios.read_exemplars import read_exemplars
from assessments.scenarios.reader import read_scenario
from assessments.scenarios.spec import Scenario as Spec
from assessments.shipped import shop
from courses.models import Person


class RuleBook(models.Model):
    """A rule book as it was published: its text, the shared book it leans on, and the digest of both.

    One that was written here names whoever wrote it and whoever reviewed it; a shipped one names nobody.
    """

    code = models.CharField(max_length=16)
    version = models.PositiveIntegerField()
    scenario_version = models.PositiveIntegerField()
    digest = models.CharField(max_length=64, unique=True)
    text = models.TextField()
    shared = models.TextField(blank=True)
    published_at = models.DateTimeField()
    written_by = models.ForeignKey(
        Person, on_delete=models.PROTECT, null=True, blank=True, related_name="books_written"
    )
    reviewed_by = models.ForeignKey(
        Person, on_delete=models.PROTECT, null=True, blank=True, related_name="books_reviewed"
    )

    class Meta:
        ordering: ClassVar = ["code", "version"]
        constraints = [
            models.UniqueConstraint(fields=["code", "version"], name="a_book_version_is_published_once"),
            models.CheckConstraint(
                condition=models.Q(written_by__isnull=True)
                | (models.Q(reviewed_by__isnull=False) & ~models.Q(reviewed_by=models.F("written_by"))),
                name="nobody_reviews_their_own_rules",
            ),
        ]

    def __str__(self) -> str:
        return f"{self.code}@{self.version}"

    @property
    def marks(self) -> str:
        """Return the scenario version it marks, as code and version."""
        return f"{self.code}@{self.scenario_version}"

    @property
    def book(self) -> Book:
        """Return the rules, read from the text that was published."""
        return _book(self.text, self.shared, str(self))


class ScenarioQuerySet(models.QuerySet["Scenario"]):
    """Sentences about scenarios."""

    def published(self) -> "ScenarioQuerySet":
        """Return the versions that are open for new attempts."""
        return self.filter(retired_at__isnull=True)

    def newest(self) -> "ScenarioQuerySet":
        """Return of each scenario the newest version that is open for new attempts."""
        code, version = models.OuterRef("code"), models.OuterRef("version")
        later = Scenario.objects.published().filter(code=code, version__gt=version)
        return self.published().filter(~models.Exists(later))

    def holding_in(self, jurisdiction: str) -> list["Scenario"]:
        """Return those whose limits hold in `jurisdiction`."""
        return [one for one in self if not one.spec.jurisdictions or jurisdiction in one.spec.jurisdictions]


class Scenario(models.Model):
    """One version of a scenario as it was published."""

    code = models.CharField(max_length=16)
    version = models.PositiveIntegerField()
    title = models.CharField(max_length=120)
    digest = models.CharField(max_length=64)
    text = models.TextField()
    rule_book = models.ForeignKey(RuleBook, on_delete=models.PROTECT, related_name="scenarios")
    published_at = models.DateTimeField()
    retired_at = models.DateTimeField(null=True, blank=True)

    objects = ScenarioQuerySet.as_manager()

    class Meta:
        ordering: ClassVar = ["code", "version"]
        constraints = [models.UniqueConstraint(fields=["code", "version"], name="a_version_is_published_once")]

    def __str__(self) -> str:
        return f"{self.code}@{self.version}"

    @property
    def spec(self) -> Spec:
        """Return the scenario, read from the text that was published."""
        return _spec(self.text, str(self))

    def marker(self, book: RuleBook) -> Marker:
        """Return what marks an attempt at this version by `book`, made ready once."""
        return _marker(self.text, book.text, book.shared, str(self))


@lru_cache(maxsize=256)
def _spec(text: str, name: str) -> Spec:
    return read_scenario(text, name, shop())


@lru_cache(maxsize=256)
def _book(text: str, shared: str, name: str) -> Book:
    return read_book(text, name, read_shared(shared))


@lru_cache(maxsize=256)
def _marker(text: str, book: str, shared: str, name: str) -> Marker:
    spec = _spec(text, name)
    return Marker.of(spec, _book(book, shared, name), read_exemplars(book, name, spec.tasks))
