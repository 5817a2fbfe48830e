"""Print a link that brings one person in."""

from typing import Any

from django.conf import settings
from django.core.exceptions import ValidationError
from django.core.management.base import BaseCommand, CommandError, CommandParser
from django.core.validators import validate_email
from django.urls import reverse
from django.utils import timezone

from courses.actions import INVITATION_DAYS, invite
from courses.errors import InvitationRefused
from courses.models import Cohort
from courses.models.enrolment import Role


def cohort_named(name: str) -> Cohort:
    """Return the cohort called `name`, or refuse with the names there are."""
    cohort = Cohort.objects.filter(name__iexact=name).first()
    if cohort is None:
        names = ", ".join(Cohort.objects.values_list("name", flat=True)) or "none yet"
        raise CommandError(f"There is no cohort {name!r}. Cohorts here: {names}.", returncode=2)
    return cohort


def link_of(token: str) -> str:
    """Return the address that a token opens."""
    return settings.SITE_URL + reverse("invitation-accept", args=[token])


class Command(BaseCommand):
    """`invite [E-MAIL] --cohort C | --role R`: the link works once, for a fortnight."""

    help = "Print an invitation link that works once, for a fortnight."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("email", nargs="?", default="", help="whose link it is; without it, anybody's")
        parser.add_argument("--cohort", default="", help="where a trainee learns")
        parser.add_argument("--role", choices=Role.values, default=Role.TRAINEE.value)

    def handle(self, *args: Any, **options: Any) -> None:
        email = options["email"]
        if email:
            try:
                validate_email(email)
            except ValidationError as wrong:
                message = f"{email!r} is no e-mail address. Write it like name@example.org."
                raise CommandError(message, returncode=2) from wrong
        cohort = cohort_named(options["cohort"]) if options["cohort"] else None
        try:
            _row, token = invite(role=options["role"], cohort=cohort, email=email, by=None, now=timezone.now())
        except InvitationRefused as refusal:
            raise CommandError(str(refusal), returncode=2) from refusal
        self.stdout.write(link_of(token))
        self.stderr.write(f"Works once, for {INVITATION_DAYS} days.")
