"""The ground floor: what the school teaches, and the site it teaches on."""

from django.apps import AppConfig


class CoursesConfig(AppConfig):
    """Registers the system checks of this storey, and lets the audit trail listen."""

    name = "courses"
    verbose_name = "Courses"

    def ready(self) -> None:
        from courses import audit, checks  # noqa: F401  the imports register them; they need the loaded apps

        audit.listen()
