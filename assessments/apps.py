"""The upper floor: how it is tried, marked, kept and certified."""

from django.apps import AppConfig


class AssessmentsConfig(AppConfig):
    """Stands on courses."""

    name = "assessments"
    verbose_name = "Assessments"
