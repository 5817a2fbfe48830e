"""The rows of the log as the database has written them, for the check of it: every column as text."""

from collections.abc import Iterator
from itertools import islice

from django.db import DatabaseError, connection

from assessments.append_only import KEPT
from assessments.competence.log import Pair, RawEntry, RawHead
from courses.management.door import DoorError

AS_TEXT = {
    "sqlite": ("CAST({} AS BLOB)", "CAST({} AS BLOB)"),
    "postgresql": ("CAST({} AS TEXT)", "to_char({} AT TIME ZONE 'UTC', 'YYYY-MM-DD\"T\"HH24:MI:SS.US\"Z\"')"),
}
"""How a column, and how a moment, is taken as it stands."""
BEFORE_ALL = -(2**63)
ENTRIES = """{} FROM assessments_logentry e LEFT JOIN assessments_treehead h ON h.size = e.seq
WHERE e.seq > %s ORDER BY e.seq LIMIT 500"""
ASTRAY = "{} FROM assessments_treehead h WHERE h.size NOT IN (SELECT seq FROM assessments_logentry) ORDER BY h.size"


def refuse_no_log() -> None:
    """Refuse where no log was set up yet, or its database doesn't answer."""
    try:
        stand = set(connection.introspection.table_names())
    except DatabaseError as wrong:
        raise DoorError(
            f"The database doesn't answer: {wrong}. If there is none, run 'manage.py setup' once."
        ) from wrong
    if not set(KEPT) <= stand:
        raise DoorError("There is no log here yet. Run 'python manage.py setup' once.")


def pairs() -> Iterator[Pair]:
    """Yield every entry with its head, then heads without one; in pages: an open reading keeps SQLite's writers out."""
    entry = [_column("e", name) for name in RawEntry._fields]
    head = [_column("h", name) for name in RawHead._fields]
    query, last = ENTRIES.format("SELECT " + ", ".join(entry + head)), BEFORE_ALL
    while page := _rows(query, last):
        yield from map(_pair, page)
        last = int(_text(page[-1][0]))
    for row in _rows(ASTRAY.format("SELECT " + ", ".join(head))):
        yield None, RawHead(*map(_text, row))


def _column(table: str, name: str) -> str:
    plain, moment = AS_TEXT[connection.vendor]
    return (moment if name.endswith("_at") else plain).format(f"{table}.{name}")


def _rows(query: str, *given: int) -> list[tuple[object, ...]]:
    with connection.cursor() as cursor:
        cursor.execute(query, given or None)
        return list(cursor.fetchall())


def _pair(row: tuple[object, ...]) -> Pair:
    width = len(RawEntry._fields)
    entry, head = (map(_text, part) for part in (islice(row, width), row[width:]))
    return RawEntry(*entry), (RawHead(*head) if row[width] is not None else None)


def _text(value: object) -> str:
    """Return a column as text; bytes that are no UTF-8 stay visible as half characters, which no entry may hold."""
    return value.decode("utf-8", "surrogateescape") if isinstance(value, bytes) else str(value or "")
