"""Make this installation ready: keys, tables, shipped content and, unless told otherwise, the demo school."""

import textwrap
from collections.abc import Callable
from typing import Any

from django.conf import settings
from django.core.management import call_command
from django.core.management.base import BaseCommand, CommandError, CommandParser
from django.utils import timezone

from assessments.filing import catch_up
from assessments.management import demo, shelves
from courses.actions import found_school
from courses.errors import Refused
from courses.gallery import hang_shipped
from courses.keys import make_keys, secret_of
from courses.models import School

Step = tuple[str, Callable[[], object]]


class Command(BaseCommand):
    """`setup`: asks nothing, can be run again at any time, changes nothing if what is shipped is broken."""

    help = "Make this installation ready; run it again after every update."
    requires_system_checks = ()
    untouched = "Nothing was changed."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--bare", action="store_true", help="no demo people")

    def handle(self, *args: Any, **options: Any) -> None:
        try:
            self.run_steps(bare=options["bare"])
        except (ValueError, Refused) as fault:
            raise CommandError(f"{fault} {self.untouched}", returncode=2) from fault
        if options["bare"]:
            self.stdout.write("\nMake the first manager: python manage.py invite you@example.org --role manager")
            return
        self.tell_people()

    def run_steps(self, *, bare: bool) -> None:
        """Do the steps in order, each named as it begins."""
        now = timezone.now()
        steps: list[Step] = [
            ("Reading what is shipped", shelves.refuse_broken),
            ("Keys", self.make_keys),
            ("Tables", lambda: call_command("migrate", verbosity=0, interactive=False)),
            ("Cache", lambda: call_command("createcachetable", verbosity=0)),
            ("Courses, lessons, scenarios", lambda: shelves.load(now, self.say)),
            ("Pictures", hang_shipped),
            ("The record", lambda: catch_up(now)),
            ("The school", (lambda: self.open_school()) if bare else (lambda: demo.load(settings.VAR, now, self.say))),
            ("Files of the pages", lambda: call_command("collectstatic", verbosity=0, interactive=False)),
        ]
        for number, (name, step) in enumerate(steps, start=1):
            self.stdout.write(f"{number} of {len(steps)}  {name}")
            self.stdout.flush()
            step()
            self.untouched = "No lesson, scenario or person was changed."

    def make_keys(self) -> None:
        """Make the keys, and go on with the site's own secret where this run began with a throw-away one."""
        make_keys(settings.VAR)
        settings.SECRET_KEY = secret_of(settings.VAR) or settings.SECRET_KEY

    def say(self, words: str) -> None:
        """Print a detail of the step that runs."""
        self.stdout.write(f"        {words}")

    def open_school(self) -> School:
        """Return the school of this installation, made with a plain name if there is none."""
        return School.objects.here() or found_school({"name": "Our school"})

    def tell_people(self) -> None:
        """Print who can sign in to the demo school, and with what."""
        known = demo.passwords(settings.VAR)
        self.stdout.write("\nThe demo school is invented. Its people and their passwords on this machine:")
        for one in demo.staff_first():
            where = f"{one.get_role_display()}{f' in {one.cohort}' if one.cohort else ''}"
            self.stdout.write(f"  {one.person.email:28}{known[one.person.email]:16}{one.person.name}, {where}")
        for person in demo.signers():
            key = " ".join(textwrap.wrap(demo.device_key(person), 4))
            self.stdout.write(
                f"\n{person.name} signs with a code device. Its set-up key, for any app that shows codes: {key}"
            )
