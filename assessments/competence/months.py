"""Calendar months, as the windows of evidence and the life of a signature are counted.

Months are counted in UTC. A month that is too short ends on its last day: a year and a half after 31 August is the
last of February, at the same time of day. The day of the start decides, so two steps may differ from their sum.
"""

from calendar import monthrange
from datetime import UTC, datetime


def months_after(at: datetime, months: int) -> datetime:
    """Return the moment, in UTC, so many calendar `months` after `at`, which carries a zone; negative ones lie before.

    >>> months_after(datetime(2026, 8, 31, 9, tzinfo=UTC), 18).isoformat()
    '2028-02-29T09:00:00+00:00'
    """
    here = at.astimezone(UTC)
    year, month = divmod(here.year * 12 + here.month - 1 + months, 12)
    return here.replace(year=year, month=month + 1, day=min(here.day, monthrange(year, month + 1)[1]))
