"""Evidence, decisions and asks for the tests of competence: invented, each field to be overridden."""

from datetime import UTC, datetime, timedelta
from typing import Any

from assessments.competence import Ask, Decision, Evidence, Requirement

NOON = datetime(2026, 4, 14, 12, tzinfo=UTC)
HERE = frozenset({"scenario", "COA-01"})


def days(count: float) -> datetime:
    """Return the moment so many days after `NOON`."""
    return NOON + timedelta(days=count)


def ask(**fields: Any) -> Ask:
    """Return one paper at COA-01 within 18 months, unless `fields` say otherwise."""
    plain: dict[str, Any] = {
        "code": "COA2-01", "words": "A paper at COA-01", "kind": "scenario", "mode": "paper", "scenarios": ("COA-01",),
        "count": 1, "window_months": 18, "witness": (), "days": 1, "substrates": (), "tags": (), "elements": ("COA2",),
    }  # fmt: skip
    return Ask(**{**plain, **fields})


def requirement(*asks: Ask, **fields: Any) -> Requirement:
    """Return what COA2 requires: these asks, or the one of `ask`; a signature lives 24 months."""
    plain: dict[str, Any] = {"element": "COA2", "version": 0, "asks": asks or (ask(),), "recertify_months": 24}
    return Requirement(**{**plain, **fields})


def paper(name: str = "p", at: datetime = NOON, **fields: Any) -> Evidence:
    """Return a satisfactory paper at COA-01."""
    plain: dict[str, Any] = {
        "id": name, "kind": "scenario", "mode": "paper", "scenario": "COA-01", "version": 1, "elements": ("COA2",),
        "outcome": "satisfactory", "at": at, "substrate": "gel_coat",
    }  # fmt: skip
    return Evidence(**{**plain, **fields})


def decision(kind: str, at: datetime, name: str = "", **fields: Any) -> Decision:
    """Return a decision on COA2; one that signs ends 730 days later."""
    until = at + timedelta(days=730) if kind == "signed" else None
    plain: dict[str, Any] = {"id": name or kind, "kind": kind, "element": "COA2", "by": "x", "at": at, "until": until}
    return Decision(**{**plain, **fields})
