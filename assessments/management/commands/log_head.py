"""The newest head of the log, to be kept where nobody who can write here can write: `log_head`."""

from typing import Any

from assessments.management.kept_head import printed
from assessments.management.log_rows import refuse_no_log
from assessments.models import TreeHead
from courses.management.door import Door, DoorError


class Command(Door):
    """Prints the newest signed head."""

    help = "Print the newest signed head of the log; keep it outside, and give it to verify_log --kept later."

    def answer(self, **options: Any) -> object:
        refuse_no_log()
        newest = TreeHead.objects.order_by("size").last()
        if newest is None:
            raise DoorError("The log is empty: there is no head yet.")
        return printed(newest)
