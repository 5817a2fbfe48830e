"""The ground floor: what the school teaches, and the site it teaches on."""

from django.apps import AppConfig


class CoursesConfig(AppConfig):
    """Registers the system checks of this storey."""

    name = "courses"
    verbose_name = "Courses"

    def ready(self) -> None:
        from courses import checks  # noqa: F401  the import registers them; it needs the loaded apps
