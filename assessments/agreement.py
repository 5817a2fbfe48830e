"""Do the rows agree with the log? Evidence, decisions, reasons, what was judged and the roles, against entries."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from datetime import datetime
from functools import partial
from typing import Any, TypeVar

from django.db.models import Model, QuerySet

from assessments import log
from assessments.competence.log import Broken, Entry, committed
from assessments.models import Decision, Evidence, LogEntry, Note, RuleBook, Salt
from assessments.record import judged_text
from assessments.rules import ENGINE_VERSION, BookRefused
from courses.actions import is_erased
from courses.models import Membership

Row = TypeVar("Row", bound=Model)
PAGE = 500
TRIES = 3
"""How often a disagreement is looked at again while people go on working: row and entry come in at the same moment."""
FILED = ("evidence", "rejudged")
DECIDED = tuple(Decision.Kind.values)
PUBLISHED = "book_published"
ROLES = ("role_given", "role_changed", "role_ended")


def _moment(at: datetime | None) -> str:
    return log.stamp(at) if at else ""


FILED_SAYS: dict[str, Callable[[Evidence], object]] = {
    "attempt": lambda row: str(row.attempt_id),
    "scenario": lambda row: row.scenario_code,
    "version": lambda row: row.scenario_version,
    "mode": lambda row: row.mode,
    "rule_book": lambda row: row.rule_book,
    "elements": lambda row: row.elements,
    "substrate": lambda row: row.substrate,
    "outcome": lambda row: row.outcome,
    "points": lambda row: f"{row.points:g}",
    "of": lambda row: f"{row.of:g}",
    "judged": lambda row: row.judged,
    "happened_at": lambda row: _moment(row.happened_at),
    "replaces": lambda row: str(row.replaces_id or ""),
    "described": lambda row: "in words" if row.described else None,
}
DECIDED_SAYS: dict[str, Callable[[Decision], object]] = {
    "element": lambda row: row.element,
    "by": lambda row: log.stream_of(row.by),
    "role": lambda row: row.role,
    "requirement": lambda row: row.requirement_version,
    "digest": lambda row: row.digest,
    "proof": lambda row: row.proof,
    "proved_at": lambda row: _moment(row.proved_at),
    "until": lambda row: _moment(row.until),
    "withdraws": lambda row: str(row.withdraws_id or ""),
}
"""What an entry says of a row, each read from the row anew. Names are committed to as they were then, and change."""


@dataclass(slots=True)
class _Said:
    """The entries by the row they speak of; of a role, the newest."""

    rows: dict[str, Entry] = field(default_factory=dict)
    roles: dict[int, Entry] = field(default_factory=dict)
    books: dict[str, Entry] = field(default_factory=dict)


def first_disagreement() -> Broken | None:
    """Return the disagreement that comes first in the log; the log itself has been checked. Rows without entry: 0."""
    found = None
    for _again in range(TRIES):
        newest = LogEntry.objects.count()
        found = min(disagreements(), key=lambda one: one.seq, default=None)
        if found is None or LogEntry.objects.count() == newest:
            break
    return found


def disagreements() -> Iterator[Broken]:
    """Yield rows that aren't as their entry says, rows without an entry, entries without their row."""
    said = _Said()
    for row in _in_pages(LogEntry.objects.only("seq", "body")):
        yield from _taken(said, Entry.of(row.body))
    yield from _evidence(said.rows)
    yield from _decisions(said.rows)
    for entry in said.rows.values():
        yield _at(entry, "The row it enters is gone.")
    yield from _roles(said.roles)
    yield from _books(said.books)


def _in_pages(rows: QuerySet[Row]) -> Iterator[Row]:
    """Yield rows by their key, a page at a time: a reading that stays open keeps writers out of SQLite."""
    page = list(rows.order_by("pk")[:PAGE])
    while page:
        yield from page
        page = list(rows.filter(pk__gt=page[-1].pk).order_by("pk")[:PAGE])


def _taken(said: _Said, entry: Entry) -> Iterator[Broken]:
    what: Any = entry.what
    if entry.kind in ROLES:
        said.roles[what["membership"]] = entry
    elif entry.kind == PUBLISHED:
        said.books[f"{what['book']}@{what['version']}"] = entry
    elif entry.kind in FILED + DECIDED:
        row = what["evidence" if entry.kind in FILED else "decision"]
        if row in said.rows:
            yield _at(entry, f"Its row was entered already, as entry {said.rows[row].seq}.")
        said.rows[row] = entry


def _evidence(entries: dict[str, Entry]) -> Iterator[Broken]:
    rows = Evidence.objects.select_related("person__salt", "note", "attempt", "rejudgement")
    rows = rows.prefetch_related("attempt__findings")
    for row in _in_pages(rows):
        entry = entries.pop(str(row.pk), None)
        if entry is None:
            yield Broken(log.stream_of(row.person), 0, f"The evidence {row.pk} was never entered.")
            continue
        says = {name: read(row) for name, read in FILED_SAYS.items()}
        kind = "rejudged" if row.replaces_id else "evidence"
        yield from _unlike(entry, log.stream_of(row.person), kind, _moment(row.filed_at), says)
        yield from _reason(entry, row)
        if not _commits(entry, row, "judged", partial(_judged, row)):
            yield _at(entry, "The facts, answers or findings of its attempt are not what was judged.")


def _judged(row: Evidence) -> str:
    """Return what was judged and found, of evidence judged again by that judgement's own findings."""
    own = row.pk if row.replaces_id else None
    return judged_text(row.attempt, [one for one in row.attempt.findings.all() if one.rejudgement_id == own])


def _decisions(entries: dict[str, Entry]) -> Iterator[Broken]:
    for row in _in_pages(Decision.objects.select_related("person__salt", "by", "note")):
        entry = entries.pop(str(row.pk), None)
        if entry is None:
            yield Broken(log.stream_of(row.person), 0, f"The decision {row.pk} was never entered.")
            continue
        says = {name: read(row) for name, read in DECIDED_SAYS.items()}
        yield from _unlike(entry, log.stream_of(row.person), row.kind, _moment(row.at), says)
        yield from _reason(entry, row)


def _unlike(entry: Entry, stream: str, kind: str, at: str, says: dict[str, object]) -> Iterator[Broken]:
    said = {"stream": entry.stream, "kind": entry.kind, "at": entry.at, **{name: entry.what.get(name) for name in says}}
    for name, kept in {"stream": stream, "kind": kind, "at": at, **says}.items():
        if kept != said[name]:
            yield _at(entry, f"Its row has {name} {kept!r}; {said[name]!r} was entered.")
            return


def _reason(entry: Entry, row: Evidence | Decision) -> Iterator[Broken]:
    note: Note | None = getattr(row, "note", None)
    if bool(note) != bool(entry.what.get("reason")) and _has_salt(row):
        yield _at(entry, "Its reason is gone." if note is None else "Its row has a reason; none was entered.")
    elif note and not _commits(entry, row, "reason", lambda: note.text):
        yield _at(entry, "Its reason is not the one that was given.")


def _commits(entry: Entry, row: Evidence | Decision, label: str, text: Callable[[], str]) -> bool:
    """Say whether the entry commits to a text; of somebody who was erased nobody can tell any more."""
    if is_erased(row.person):
        return True
    return _has_salt(row) and committed(row.person.salt.value, label, text()) == entry.what.get(label)


def _has_salt(row: Evidence | Decision) -> bool:
    return isinstance(getattr(row.person, "salt", None), Salt)


def _roles(entries: dict[int, Entry]) -> Iterator[Broken]:
    for row in _in_pages(Membership.objects.select_related("person")):
        entry = entries.pop(row.pk, None)
        if entry is None or entry.kind == "role_ended":
            yield Broken(log.stream_of(row.person), entry.seq if entry else 0, f"The role {row} was never entered.")
            continue
        says = log.role_said(row)
        yield from _unlike(entry, log.stream_of(row.person), entry.kind, entry.at, says)
    for entry in entries.values():
        if entry.kind != "role_ended":
            yield _at(entry, "The role it gives is gone, and no entry ends it.")


def _books(entries: dict[str, Entry]) -> Iterator[Broken]:
    """Yield rule books that no longer say what they were published under, or that nobody entered."""
    for row in RuleBook.objects.select_related("written_by", "reviewed_by"):
        entry = entries.pop(str(row), None)
        if not _is_as_published(row):
            yield Broken(log.SCHOOL, entry.seq if entry else 0, f"The rule book {row} is not what its digest says.")
        if row.written_by and row.reviewed_by:
            hands = {"by": log.stream_of(row.written_by), "reviewed_by": log.stream_of(row.reviewed_by)}
            if entry is None:
                yield Broken(log.SCHOOL, 0, f"The rule book {row} was never entered.")
            elif {"digest": row.digest, **hands} != {name: entry.what[name] for name in ("digest", *hands)}:
                yield _at(entry, f"The rule book {row} is not the one that was entered.")
    for entry in entries.values():
        yield _at(entry, "The rule book it enters is gone.")


def _is_as_published(row: RuleBook) -> bool:
    """Say whether a book still has the digest some version of the engine published it under."""
    try:
        return any(row.book.digest_by(engine) == row.digest for engine in range(1, ENGINE_VERSION + 1))
    except BookRefused:
        return False


def _at(entry: Entry, why: str) -> Broken:
    return Broken(entry.stream, entry.seq, why)
