"""The one school of this installation."""

from django.db import models
from django.utils.translation import gettext_lazy as _


class SchoolQuerySet(models.QuerySet["School"]):
    """One installation is one school."""

    def here(self) -> "School | None":
        """Return the school, or None before `setup`."""
        return self.order_by("pk").first()


class School(models.Model):
    """Its name, its clock, the law it works under, and whether it lets nobody sign what they taught."""

    class Jurisdiction(models.TextChoices):
        """Whose limits a lesson or scenario rests on."""

        US = "us", _("United States")
        UK = "uk", _("United Kingdom")
        EU = "eu", _("European Union")

    name = models.CharField(max_length=120)
    place = models.CharField(max_length=120, blank=True)
    about = models.CharField(max_length=300, blank=True)
    zone = models.CharField(max_length=60, default="UTC")
    jurisdiction = models.CharField(max_length=2, choices=Jurisdiction, default=Jurisdiction.US)
    metric = models.BooleanField(default=False)
    independence = models.BooleanField(default=False)

    objects = SchoolQuerySet.as_manager()

    class Meta:
        constraints = [models.CheckConstraint(condition=models.Q(pk=1), name="one_installation_is_one_school")]

    def __str__(self) -> str:
        return self.name
