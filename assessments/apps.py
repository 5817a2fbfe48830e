"""The upper floor: how it is tried, marked, kept and certified."""

from django.apps import AppConfig
from django.db.models.signals import post_migrate


class AssessmentsConfig(AppConfig):
    """Stands on courses, and listens to it."""

    name = "assessments"
    verbose_name = "Assessments"

    def ready(self) -> None:
        from assessments import receivers
        from courses.signals import person_erased, role_changed

        role_changed.connect(receivers.enter_role, dispatch_uid="enter a role")
        person_erased.connect(receivers.enter_erased, dispatch_uid="enter an erasure")
        post_migrate.connect(receivers.guard, sender=self, dispatch_uid="guard the log")
