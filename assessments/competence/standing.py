"""How a person stands in an element, and in a unit, at a moment: one of `STANDINGS`.

A live signature, the newest that was not withdrawn, gives signed, due or lapsed. Without one, all that is asked gives
ready, anything gathered gives building, nothing gives not_started. Who declined, or asked for more, takes ready back to
building until new evidence counts.
"""

from collections.abc import Collection, Iterable
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from assessments.competence.evidence import Decision, Evidence, as_judged_now, first_of
from assessments.competence.framework import Ask, Requirement
from assessments.competence.judged import AskState, Missing, ask_state, ends, fits, met_by

STANDINGS = ("not_started", "building", "ready", "signed", "due", "lapsed")
TURNED_DOWN = ("declined", "more_asked")


@dataclass(frozen=True, slots=True)
class Standing:
    """How a person stands in an element: `code` is one of `STANDINGS`.

    `signature` is the newest signature, withdrawn or not, `until` its end while it is not withdrawn; `turned_down` the
    decision that holds ready back; `questioned` says that what was signed for was judged again and no longer meets what
    is asked; `since` is when the element became ready, empty unless it is.
    """

    code: str
    asks: tuple[AskState, ...]
    signature: Decision | None
    until: datetime | None
    turned_down: Decision | None
    questioned: bool
    since: datetime | None

    @property
    def done(self) -> int:
        """Return how many of the pieces asked for are there: one notch each."""
        return sum(one.have for one in self.asks)

    @property
    def total(self) -> int:
        """Return how many pieces are asked for."""
        return sum(one.ask.count for one in self.asks)

    @property
    def old(self) -> int:
        """Return how many of the missing pieces were there once and are too old."""
        return sum(min(len(one.old), one.ask.count - one.have) for one in self.asks)

    @property
    def missing(self) -> tuple[Missing, ...]:
        """Return what is missing: the refusal first, then ask by ask. Nothing where everything is there."""
        down = [Missing("turned_down", None, 0, self.turned_down)] if self.turned_down else []
        return (*down, *(one.missing for one in self.asks if one.missing))


def standing_of(
    requirement: Requirement,
    evidence: Iterable[Evidence],
    decisions: Iterable[Decision],
    at: datetime,
    gathered: Collection[str],
) -> Standing:
    """Return how a person stands at `at` in the element of `requirement`, from everything on their record.

    `gathered` holds the kinds of evidence and the codes of scenarios that can be had here. What lies after `at` is
    left aside.
    """
    held = [one for one in evidence if one.at <= at]
    decided = sorted(
        (one for one in decisions if one.element == requirement.element and one.at <= at),
        key=lambda one: (one.at, one.id),
    )
    now = as_judged_now(held)
    asks = tuple(ask_state(ask, now, at, gathered) for ask in requirement.asks)
    withdrawn = {one.withdraws for one in decided}
    signatures = [one for one in decided if one.kind == "signed"]
    live = next((one for one in reversed(signatures) if one.id not in withdrawn), None)
    if live:
        questioned = _is_questioned(requirement, held, live)
        return Standing(_signed(live, requirement, at), asks, live, live.until, None, questioned, None)
    last = signatures[-1] if signatures else None
    down = _turned_down(decided, asks)
    bare = Standing(_bare(requirement, held, asks), asks, last, None, down, False, None)
    if bare.code != "ready":
        return bare
    return replace(bare, code="building") if down else replace(bare, since=_since(asks))


def unit_standing(standings: Iterable[Standing]) -> str:
    """Return how a unit stands, from its elements: all signed is signed; else the worst that calls for an act.

    In this order: any lapsed, any due, any ready; then anything begun is building, nothing at all is not_started.
    """
    codes = [one.code for one in standings]
    if codes and all(one == "signed" for one in codes):
        return "signed"
    calling = next((one for one in ("lapsed", "due", "ready") if one in codes), None)
    return calling or ("building" if set(codes) - {"not_started"} else "not_started")


def _signed(live: Decision, requirement: Requirement, at: datetime) -> str:
    until = live.until or requirement.until(live.at)
    if at > until:
        return "lapsed"
    return "due" if at >= until - timedelta(days=requirement.due_days) else "signed"


def _bare(requirement: Requirement, held: list[Evidence], asks: tuple[AskState, ...]) -> str:
    if asks and all(one.state == "met" for one in asks):
        return "ready"
    begun = any(one.counted or one.old for one in asks) or any(requirement.element in one.elements for one in held)
    return "building" if begun else "not_started"


def _turned_down(decided: list[Decision], asks: tuple[AskState, ...]) -> Decision | None:
    down = next((one for one in reversed(decided) if one.kind in TURNED_DOWN), None)
    later = any(one.at > down.at for state in asks for one in state.counted) if down else False
    return None if later else down


def _since(asks: tuple[AskState, ...]) -> datetime:
    """Return when the last ask was completed: for each, the evidence with which what counts first was enough."""
    return max(_completed(one) for one in asks)


def _completed(state: AskState) -> datetime:
    firsts = (state.counted[: n + 1] for n in range(len(state.counted)))
    return next(some[-1].at for some in firsts if met_by(state.ask, some))


def _is_questioned(requirement: Requirement, held: list[Evidence], live: Decision) -> bool:
    """Say whether what the signature could stand on falls short of an ask now, and only because it was judged again."""
    pieces: dict[str, list[Evidence]] = {}
    first, now = first_of(held), as_judged_now(held)
    for one in held:
        if one.at <= live.at:
            pieces.setdefault(first[one.id], []).append(one)
    for ask in requirement.asks:
        ever = [next((one for one in judged if _counted(ask, one, live)), None) for judged in pieces.values()]
        still = [one for one in now if one.at <= live.at and _counted(ask, one, live)]
        if met_by(ask, [one for one in ever if one]) and not met_by(ask, still):
            return True
    return False


def _counted(ask: Ask, one: Evidence, live: Decision) -> bool:
    return fits(ask, one) and ends(ask, one) >= live.at
