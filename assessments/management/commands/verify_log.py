"""The door to the log: `verify_log [--kept FILE]`."""

from dataclasses import asdict
from typing import Any

from django.conf import settings
from django.core.management.base import CommandParser

from assessments.agreement import first_disagreement
from assessments.append_only import unguarded
from assessments.competence.log import Head, Verified, first_broken
from assessments.management.kept_head import kept_head
from assessments.management.log_rows import pairs, refuse_no_log
from courses.keys import KeyMissing, public_keys
from courses.management.door import Door, DoorError


class Command(Door):
    """Checks the log from its first entry on, then the record against it."""

    help = "Check that nothing on the record or in its log was altered; exit 1 names the first entry that was."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--kept", metavar="FILE", help="a head kept elsewhere, as log_head printed it; - for input")

    def answer(self, **options: Any) -> object:
        refuse_no_log()
        found = self._checked(options["kept"])
        broken = found.broken or first_disagreement()
        if broken:
            self.wanting()
        for table in unguarded():
            self.stderr.write(
                f"{table} lacks its guard against changes. Run 'python manage.py migrate' to put it back."
            )
        return {
            "entries": found.entries,
            "heads": found.heads,
            "ok": broken is None,
            "first_broken": asdict(broken) if broken else None,
        }

    def _checked(self, source: str | None) -> Verified:
        try:
            keys = public_keys(settings.VAR)
        except KeyMissing as missing:
            raise DoorError(str(missing)) from missing
        kept: Head | None = kept_head(source, keys) if source else None
        return first_broken(pairs(), keys, kept)
