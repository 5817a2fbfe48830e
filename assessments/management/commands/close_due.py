"""Close every paper whose time and grace are over."""

from typing import Any

from django.core.management.base import BaseCommand
from django.utils import timezone

from assessments.journey import close_due


class Command(BaseCommand):
    """`close_due`: for the clock's own timetable; the next request that touches a paper closes it as well."""

    help = "Close every paper whose time and grace are over, at the time of its deadline."

    def handle(self, *args: Any, **options: Any) -> None:
        self.stdout.write(f"{close_due(timezone.now())} closed")
