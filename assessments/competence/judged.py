"""One ask held against the evidence: what counts for it, what is too old, what is still missing."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import UTC, datetime

from assessments.competence.evidence import SATISFACTORY, Decision, Evidence
from assessments.competence.framework import Ask
from assessments.competence.months import months_after


@dataclass(frozen=True, slots=True)
class Missing:
    """What is missing, and why; `ask` is empty where the element as a whole was turned down by `decision`.

    `why` is one of none, too_few, too_old, one_day, one_substrate, wrong_witness, not_gathered, turned_down.
    """

    why: str
    ask: Ask | None
    have: int
    decision: Decision | None
    since: datetime | None = None


@dataclass(frozen=True, slots=True)
class AskState:
    """An ask is met, open, old (enough, but too old) or not_gathered; `have` of its count, what counts, what did."""

    ask: Ask
    state: str
    have: int
    counted: tuple[Evidence, ...]
    old: tuple[Evidence, ...]
    missing: Missing | None = None


def ask_state(ask: Ask, evidence: Iterable[Evidence], at: datetime, gathered: Collection[str]) -> AskState:
    """Return how `ask` stands at `at`; `evidence` is as judged now, `gathered` what can be had here."""
    held = [one for one in evidence if one.at <= at]
    fitting = [one for one in held if fits(ask, one)]
    old = tuple(one for one in fitting if ends(ask, one) < at)
    counted = tuple(one for one in fitting if ends(ask, one) >= at)
    why = _lack(ask, counted)
    have = min(len(counted), ask.count)
    if why is None:
        return AskState(ask, "met", have, counted, old)
    if not is_gathered(ask, gathered):
        return AskState(ask, "not_gathered", have, counted, old, Missing("not_gathered", ask, have, None))
    if old and _lack(ask, (*old, *counted)) is None:
        missing = Missing("too_old", ask, have, None, _too_old_since(ask, (*old, *counted)))
        return AskState(ask, "old", have, counted, old, missing)
    anyhow = [one for one in held if fits(ask, one, seen_by_anybody=True) and ends(ask, one) >= at]
    why = why if _lack(ask, anyhow) else "wrong_witness"
    return AskState(ask, "open", have, counted, old, Missing(why, ask, have, None))


def fits(ask: Ask, one: Evidence, *, seen_by_anybody: bool = False) -> bool:
    """Say whether evidence is of the sort asked for, however old; `seen_by_anybody` leaves the witness aside."""
    return (
        one.outcome == SATISFACTORY
        and one.kind == ask.kind
        and ask.mode in ("", one.mode)
        and (not ask.scenarios or one.scenario in ask.scenarios)
        and not set(ask.elements).isdisjoint(one.elements)
        and set(ask.tags) <= set(one.tags)
        and (isinstance(ask.substrates, int) or not ask.substrates or one.substrate in ask.substrates)
        and (seen_by_anybody or not ask.witness or any(set(letters) <= set(one.witness) for letters in ask.witness))
    )


def ends(ask: Ask, one: Evidence) -> datetime:
    """Return the last moment at which evidence still counts for an ask: the end of its window."""
    return months_after(one.at, ask.window_months)


def met_by(ask: Ask, evidence: Iterable[Evidence]) -> bool:
    """Say whether evidence that counts is all that is asked."""
    return _lack(ask, tuple(evidence)) is None


def is_gathered(ask: Ask, gathered: Collection[str]) -> bool:
    """Say whether what is asked can be had here: its kind, its tags, one of its scenarios or one of its unit."""
    if ask.kind not in gathered or not set(ask.tags) <= set(gathered):
        return False
    if ask.scenarios:
        return not set(ask.scenarios).isdisjoint(gathered)
    units = {code.rstrip("0123456789") for code in ask.elements}
    return ask.kind != "scenario" or any(code.split("-")[0] in units for code in gathered)


def _too_old_since(ask: Ask, fitting: Collection[Evidence]) -> datetime:
    """Return the first end of a window after which what was left was not enough."""
    last = {end: [one for one in fitting if ends(ask, one) > end] for end in (ends(ask, one) for one in fitting)}
    return min(end for end, left in last.items() if _lack(ask, left))


def _lack(ask: Ask, counted: Collection[Evidence]) -> str | None:
    if len(counted) < ask.count:
        return "too_few" if counted else "none"
    if len({one.at.astimezone(UTC).date() for one in counted}) < ask.days:
        return "one_day"
    seen = {one.substrate for one in counted} - {""}
    short = len(seen) < ask.substrates if isinstance(ask.substrates, int) else not set(ask.substrates) <= seen
    return "one_substrate" if short else None
