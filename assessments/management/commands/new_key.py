"""Another key to sign the record with: `new_key`."""

from typing import Any

from django.conf import settings
from django.utils import timezone

from assessments import log
from assessments.management.log_rows import refuse_no_log
from courses.keys import KeyMissing
from courses.management.door import Door, DoorError


class Command(Door):
    """Makes a key, has the old one vouch for it in the log, and removes the secret half of the old one."""

    help = "Let a new key sign the record from here on; the old one vouches for it and its secret half is removed."

    def answer(self, **options: Any) -> object:
        refuse_no_log()
        try:
            new = log.hand_over(timezone.now())
        except KeyMissing as missing:
            raise DoorError(str(missing)) from missing
        return {"key_id": new, "public": f"{settings.VAR.name}/keys/{new}.pub"}
