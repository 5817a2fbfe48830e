"""Set up the demo school and serve it."""

from typing import Any

from django.conf import settings
from django.core.management import call_command
from django.core.management.base import BaseCommand, CommandParser
from django.utils import timezone

from courses.actions import invite
from courses.management.commands.invite import link_of
from courses.management.commands.serve import refuse_held
from courses.models import Cohort
from courses.models.enrolment import Role


class Command(BaseCommand):
    """`demo`: `setup`, one invitation link for each cohort, then `serve`."""

    help = "Set up the demo school, print who can sign in, and serve the site."
    requires_system_checks = ()

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--port", type=int, default=8000, help="a free port, 8000 unless told")

    def handle(self, *args: Any, **options: Any) -> None:
        refuse_held(options["port"])
        call_command("setup", stdout=self.stdout)
        settings.SITE_URL = f"http://localhost:{options['port']}"
        self.stdout.write("\nCome in as somebody new:")
        for cohort in Cohort.objects.all():
            _row, token = invite(role=Role.TRAINEE, cohort=cohort, email="", by=None, now=timezone.now())
            self.stdout.write(f"  {cohort}, {cohort.get_mode_display()}: {link_of(token)}")
        self.stdout.write("")
        self.stdout.flush()
        call_command("serve", port=options["port"], stdout=self.stdout)
