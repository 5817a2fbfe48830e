"""Lines that the pages of the record share: a piece of evidence, what an element asks, a signature."""

from collections.abc import Iterable
from typing import Any

from django.urls import reverse
from django.utils.translation import gettext as _

from assessments.competence import AskState, Missing, Standing
from assessments.models import Decision, Evidence
from assessments.record import Record
from assessments.views.wording import missing_words

SYMBOLS = {"satisfactory": "met", "not_yet_satisfactory": "partly", "critical_fail": "miss", "cannot_certify": "open"}


def evidence_line(row: Evidence) -> dict[str, Any]:
    """Return a piece of evidence: where it leads, what it is, when it was, how it came out."""
    mode = _("paper") if row.mode == "paper" else _("practice")
    words = _("%(code)s, %(mode)s: %(points)s of %(of)s points")
    figures = {"code": row.scenario_code, "mode": mode, "points": f"{row.points:g}", "of": f"{row.of:g}"}
    if row.described:
        words = _("%(code)s, %(mode)s, pictures read in words: %(points)s of %(of)s points")
    return {
        "url": reverse("attempt-verdict", args=[row.attempt_id]),
        "words": words % figures,
        "when": row.happened_at,
        "outcome": row.outcome,
    }


def evidence_lines(record: Record, ids: Iterable[str]) -> list[dict[str, Any]]:
    """Return the lines of the evidence with these ids."""
    return [evidence_line(record.row(one)) for one in ids]


def ask_line(state: AskState, standing: Standing, record: Record) -> dict[str, Any]:
    """Return one thing that is asked, how much of it is there, and what is missing."""
    missing = [said(one, record) for one in standing.missing if one.ask is state.ask]
    return {
        "words": state.ask.words,
        "have": state.have,
        "count": state.ask.count,
        "state": state.state,
        "missing": missing[0] if missing else "",
        "evidence": evidence_lines(record, [one.id for one in (*state.counted, *state.old)]),
    }


def said(missing: Missing, record: Record) -> str:
    """Return in words what is missing."""
    if missing.decision is None:
        return missing_words(missing)
    row = record.decision(missing.decision.id)
    return missing_words(missing, by=row.by.name, reason=reason_of(row))


def notches_of(standings: Iterable[Standing]) -> dict[str, int]:
    """Return how many pieces several elements ask for, what is there, and what is too old or can't be had here yet.

    What more than one of them asks for is counted once.
    """
    asks = {state.ask.code: state for standing in standings for state in standing.asks}.values()
    return {
        "done": sum(one.have for one in asks),
        "total": sum(one.ask.count for one in asks),
        "old": sum(_dashed(one) for one in asks),
    }


def _dashed(state: AskState) -> int:
    lacking = state.ask.count - state.have
    return lacking if state.state == "not_gathered" else min(len(state.old), lacking)


def reason_of(row: Decision | Evidence) -> str:
    """Return why it was decided, or judged again, or nothing where no reason was given or it was erased."""
    return str(row.note.text) if hasattr(row, "note") else ""


def signature_line(row: Decision, record: Record) -> dict[str, Any]:
    """Return a signature and, where it was withdrawn, by whom and why."""
    taken = next((one for one in record.decisions if one.withdraws_id == row.pk), None)
    return {
        "by": row.by.name,
        "when": row.at,
        "until": row.until,
        "url": reverse("decision-detail", args=[row.pk]),
        "withdrawn": {"by": taken.by.name, "when": taken.at, "reason": reason_of(taken)} if taken else None,
    }
