"""The page of a record: each unit with the way to its signature, and what happened."""

from datetime import datetime
from typing import Any

from django.urls import reverse
from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from assessments import log
from assessments.competence import Standing, Unit, unit_standing
from assessments.models import Decision
from assessments.record import Record, gathered, record_of
from assessments.shipped import framework
from assessments.signers import cohorts_of, may_decide
from assessments.views.lines import SYMBOLS, ask_line, evidence_line, notches_of, reason_of, said, signature_line
from courses.models import Membership, Person, School

SHOWN = 40


def record_page(reader: Person, person: Person, at: datetime, *, whole: bool = False) -> dict[str, Any]:
    """Return what the page of a record shows to `reader`."""
    record, here = record_of(person), gathered()
    hands = _hands(reader, person)
    units = [_unit(unit, record, at, here, hands) for unit in framework().units.values()]
    events = events_of(record)
    chain = log.chain_of(log.stream_of(person))
    return {
        "person": person,
        "mine": reader.pk == person.pk,
        "lead": lead([element["standing"] for unit in units for element in unit["elements"]]),
        "units": units,
        "events": events if whole else events[:SHOWN],
        "more_url": "?all=1" if len(events) > SHOWN and not whole else None,
        "chain_words": chain_words(chain.entries, whole=chain.whole),
        "chain_whole": chain.whole,
    }


def lead(standings: list[str]) -> str:
    """Return in one sentence what waits."""
    ready, signed = standings.count("ready"), standings.count("signed")
    due = standings.count("due") + standings.count("lapsed")
    said = [ngettext("%(n)d of %(all)d elements is signed.", "%(n)d of %(all)d elements are signed.", signed)]
    said[0] %= {"n": signed, "all": len(standings)}
    if ready:
        said.append(ngettext("One waits for a signature.", "%(n)d wait for a signature.", ready) % {"n": ready})
    if due:
        said.append(ngettext("One is due again.", "%(n)d are due again.", due) % {"n": due})
    return " ".join(said)


def chain_words(entries: int, *, whole: bool) -> str:
    """Return what is said of the entries of one person in the log."""
    if not whole:
        return _("The entries of this record don't fit together. Tell the school.")
    count = ngettext("%(n)d entry, not altered", "%(n)d entries, none altered", entries)
    return count % {"n": entries}


def _hands(reader: Person, person: Person) -> Any:
    """Return what says whether `reader` may decide on an element of `person`."""
    if reader.pk == person.pk:
        return lambda element: False
    held: list[Membership] = list(reader.memberships.all())
    cohorts, school = cohorts_of(person), School.objects.here()
    independence = bool(school and school.independence)
    return lambda element: may_decide(held, cohorts, element, independence=independence)


def _unit(unit: Unit, record: Record, at: datetime, here: frozenset[str], hands: Any) -> dict[str, Any]:
    standings = {one.code: record.standing(one.code, at, here) for one in unit.elements}
    elements = [_element(one.code, one.title, standings[one.code], record, hands) for one in unit.elements]
    return {
        "code": unit.code,
        "title": unit.title,
        "standing": unit_standing(standings.values()),
        **notches_of(standings.values()),
        "elements": elements,
    }


def _element(code: str, title: str, standing: Standing, record: Record, hands: Any) -> dict[str, Any]:
    signature = record.decision(standing.signature.id) if standing.signature else None
    return {
        "code": code,
        "title": title,
        "standing": standing.code,
        "until": standing.until,
        "asks": [ask_line(state, standing, record) for state in standing.asks],
        "missing": [said(one, record) for one in standing.missing if one.ask is None],
        "hand": _hand(code, standing, record) if hands(code) else None,
        "signature": signature_line(signature, record) if signature else None,
        "questioned": standing.questioned,
    }


def _hand(code: str, standing: Standing, record: Record) -> dict[str, str] | None:
    if standing.code not in ("ready", "due", "lapsed") or any(one.state != "met" for one in standing.asks):
        return None
    return {"url": reverse("sign-off", args=[record.person.handle, code]), "words": _("Look and sign")}


def events_of(record: Record) -> list[dict[str, Any]]:
    """Return what happened, newest first."""
    filed = [_filed(row) for row in record.evidence]
    decided = [_decided(row) for row in record.decisions]
    return sorted(filed + decided, key=lambda one: one["when"], reverse=True)


def _filed(row: Any) -> dict[str, Any]:
    line = evidence_line(row)
    title = _("Judged again") if row.replaces_id else _("Handed in and marked")
    symbol = SYMBOLS[row.outcome]
    return {
        "when": row.filed_at if row.replaces_id else row.happened_at,
        "symbol": symbol,
        "title": title,
        "words": line["words"],
        "outcome": row.outcome,
        "url": line["url"],
        "url_words": _("Open the attempt"),
    }


def _decided(row: Decision) -> dict[str, Any]:
    symbols = {"signed": "signed", "declined": "miss", "more_asked": "open", "withdrawn": "lapsed"}
    words = _("By %(name)s.") % {"name": row.by.name}
    return {
        "when": row.at,
        "symbol": symbols[row.kind],
        "title": f"{row.element}: {row.get_kind_display()}",
        "words": f"{words} {reason_of(row)}".strip(),
        "outcome": "",
        "url": reverse("decision-detail", args=[row.pk]),
        "url_words": _("See what was decided"),
    }
