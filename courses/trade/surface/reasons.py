"""Reasons in words: what went wrong, at which step, and what would have saved it."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from math import ceil
from types import MappingProxyType
from typing import Final

from courses.trade.surface.condition import Condition
from courses.trade.surface.gates import Fault, counted
from courses.trade.surface.job import Job
from courses.trade.surface.looking import UNNAMED, zone_words
from courses.trade.surface.steps import Step, step_words
from courses.trade.surface.work import work_of

__all__ = ["Reason", "reasons_for"]


@dataclass(frozen=True, slots=True)
class Reason:
    """Why a plan is no pass: ``code``, a ``sentence``, the ``step`` that did it (None: what was there before), and what
    ``would_save`` it, in a sentence. ``verdict`` is harm or redo, ``zone`` where.
    """

    code: str
    sentence: str
    step: int | None
    would_save: str
    verdict: str
    zone: str

    def as_json(self) -> dict[str, object]:
        """The reason as the door writes it."""
        return {"code": self.code, "sentence": self.sentence, "step": self.step, "would_save": self.would_save}


@dataclass(frozen=True, slots=True)
class Said:
    """What a sentence is made of: the fault, its job, the plan, and the step that did it."""

    fault: Fault
    job: Job
    steps: Sequence[Step]

    @property
    def by(self) -> str:
        """The step that did it, as a sentence begins."""
        n = self.fault.step
        return f"Step {n}, {short(self.steps[n - 1])}" if n else "What was there before"

    @property
    def before(self) -> str:
        """Before which step something should have been done."""
        return f"before step {self.fault.step}" if self.fault.step else "first"


def short(step: Step) -> str:
    """A step in a few words, as they stand inside a sentence."""
    words = step_words(step).split(", ")[0]
    return words[0].lower() + words[1:]


def reasons_for(job: Job, steps: Sequence[Step], found: Sequence[Fault]) -> tuple[Reason, ...]:
    """A reason for each fault, harms first; one that an inspection saw and no step answered says so."""
    several = len([one for one in job.conditions if one.zone.judged]) > 1 or any(
        one.zone not in UNNAMED for one in found
    )
    told = []
    for one in sorted(found, key=lambda fault: fault.verdict != "harm"):
        sentence, save = _WORDS[one.code](Said(one, job, steps))
        seen = job.looked.get((one.zone, one.code), 0)
        if seen and seen > one.step:
            sentence += f" Step {seen} showed it; no later step answered it."
        where = f"{zone_words(one.zone)}: {sentence[0].lower()}{sentence[1:]}" if several else sentence
        told.append(Reason(one.code, where, one.step or None, save, one.verdict, one.zone))
    return tuple(told)


def _burn_through(said: Said) -> tuple[str, str]:
    one = _zone(said)
    chance = _percent(said.fault.figure)
    sentence = f"After {_small(said)} the film may be gone somewhere; the chance comes to {chance}."
    if one.zone.edge:
        return sentence, f"Tape it {said.before}."
    if one.taped:
        return sentence, f"Fewer or finer stages {said.before}: the film is thinner in places than on the gauge."
    return sentence, f"Tape the edges {said.before}, and take less: an edge is thin and wears faster."


def _reserve(said: Said) -> tuple[str, str]:
    one = _zone(said)
    stay, left = one.zone.reserve_um, one.film_um
    sentence = f"{said.by}, takes the film below the {stay:g} model µm that have to stay; {left:.1f} are left."
    if one.zone.edge:
        return sentence, f"Tape it {said.before}."
    return sentence, f"Leave out step {said.fault.step}, or leave this part as it is and say so."


def _budget(said: Said) -> tuple[str, str]:
    one = _zone(said)
    sentence = f"{said.by}, passes the budget of {one.zone.budget_um:g} model µm; {one.removed_um:.1f} went in all."
    return sentence, f"A milder stage, or fewer of them, {said.before}; what is deeper than the budget is referred."


def _over_cut(said: Said) -> tuple[str, str]:
    taken = _zone(said).removed_um
    sentence = (
        f"{taken:.1f} model µm went, {said.fault.figure:.0f} times what the panel needed; {_small(said)} took most."
    )
    return sentence, f"A test spot {said.before}, and the mildest stage that clears it."


def _small(said: Said) -> str:
    return f"step {said.fault.step}, {short(said.steps[said.fault.step - 1])},"


def _heat(said: Said) -> tuple[str, str]:
    soft = said.job.surface.soft_degc
    sentence = f"{said.by}, heats the film to {said.fault.figure:.0f} °C; it softens at {soft:.0f} °C."
    return sentence, f"Slower and lighter in step {said.fault.step}: heat follows both speed and force."


def _through(said: Said) -> tuple[str, str]:
    kinds = ", ".join(sorted({one.called for one in _zone(said).marks if one.role == "through"}))
    sentence = f"{said.by}, works over a sign nobody had been told of: {kinds}."
    return sentence, f"Refer it {said.before}, and keep off it."


def _untold(said: Said) -> tuple[str, str]:
    kinds = ", ".join(sorted({one.called for one in _zone(said).marks if one.role == "through"}))
    return f"Nobody was told of what goes through the film: {kinds}.", "Refer it."


def _uncured(said: Said) -> tuple[str, str]:
    sentence = f"{said.by}, abrades a repair that a nail still marks: it gums, tears and sinks later."
    return sentence, f"Warm it, wait and test the cure {said.before}."


def _coat_over(what: str, save: str) -> Callable[[Said], tuple[str, str]]:
    def words(said: Said) -> tuple[str, str]:
        return f"{said.by}, seals in {what}: it can only be stripped and laid again.", f"{save} {said.before}."

    return words


def _trail(said: Said) -> tuple[str, str]:
    depth = said.fault.figure
    sentence = f"{said.by}, leaves trails of {depth:.2f} model µm that show in the sun."
    return sentence, "End with a finishing foam on a dual action: a set levels about 0.25 and leaves no trail."


def _strays(said: Said) -> tuple[str, str]:
    one = _zone(said)
    sentence = f"{said.by}, left strays that still stand {one.tail_um:.1f} model µm deep."
    if one.grit_by == said.fault.step > 0:
        return _grit(said, one)
    return sentence, _more_of(said, one.tail_um - one.own_tail_um)


def _grit(said: Said, one: Condition) -> tuple[str, str]:
    """What was dragged under the pad, from which step on."""
    what = "deposits" if "deposits" in one.firsts else "soil"
    first = one.firsts.get(what, said.fault.step)
    sentence = f"Step {first}, {short(said.steps[first - 1])}, dragged {what} over the film; the scratches still show."
    if what == "soil":
        return sentence, f"Wash before step {first}."
    by = sorted({code for mark in one.zone.marks if mark.drags for code in mark.by})
    return sentence, f"The chemistry that dissolves them before step {first}: {' or '.join(by)}."


def _more_of(said: Said, deep_um: float) -> str:
    """More passes of the first later stage that gains most in each."""
    later = [
        one for one in said.steps if one.abrades and one.n > said.fault.step and one.zone in ("all", said.fault.zone)
    ]
    if not later:
        return "A stage that levels them: P1500 takes strays of P1000 in three passes."
    hardness, constants = said.job.surface.hardness, said.job.constants
    works = [(work_of(one, hardness, constants), one) for one in later]
    worn = [one for work, one in works if work.sharpness < 1]
    if worn:
        return f"A fresh disc in step {worn[0].n}, changed by area."
    gain = [work.cut_um * work.eta for work, _ in works]
    best = works[gain.index(max(gain))][1]
    if best.op == "sand":
        passes = ceil(deep_um / (max(gain) / best.passes))
        return f"{passes} more {'pass' if passes == 1 else 'passes'} in step {best.n}, {short(best)}."
    sets = ceil(deep_um / max(gain))
    return f"A stage of P1500 before step {best.n}, or {sets} more {'set' if sets == 1 else 'sets'} in step {best.n}."


def _cutting_last(said: Said) -> tuple[str, str]:
    sentence = f"{said.by}, is the last: it leaves strays of {said.fault.figure:.2f} model µm of its own."
    return sentence, f"A finer stage after step {said.fault.step}, and a finish."


def _oxidised(said: Said) -> tuple[str, str]:
    left = _zone(said).layer_left_um
    sentence = f"{_percent(said.fault.figure)} of the area is still oxidised."
    return sentence, f"A stage that takes {left:.0f} model µm more before the finish." if left >= 1 else "One more set."


def _uncorrected(said: Said) -> tuple[str, str]:
    one = _zone(said)
    share = _percent(said.fault.figure)
    only = share[0].upper() + share[1:] if said.fault.figure < 0.01 else f"Only {share}"
    sentence = f"{only} of what was found is corrected"
    worst = max(counted(one), key=lambda mark: one.open_share(mark) * mark.weight)
    return f"{sentence}; most of what is left: {worst.called}.", _answer_to(worst.role, worst.by)


def _answer_to(role: str, by: tuple[str, ...]) -> str:
    if by:
        return f"The chemistry that dissolves it: {' or '.join(by)}."
    if role == "residue":
        return "A solvent wipe."
    if role == "proud":
        return "A flat block or a hard disc across it and the surround together."
    return "A stage that reaches as deep as the marks, or an agreement on what stays."


def _gloss(angle: int) -> Callable[[Said], tuple[str, str]]:
    def words(said: Said) -> tuple[str, str]:
        zone = _zone(said).zone
        wanted = zone.gloss60 if angle == 60 else zone.gloss20
        sentence = f"Gloss at {angle}° is {said.fault.figure:.1f}; {wanted:g} was agreed."
        return sentence, "A finishing set with a finishing foam at the end."

    return words


def _percent(share: float) -> str:
    return "less than 1 %" if share < 0.01 else f"{share:.0%}".replace("%", " %")


def _zone(said: Said) -> Condition:
    return next(one for one in said.job.conditions if one.zone.name == said.fault.zone)


_WORDS: Final[Mapping[str, Callable[[Said], tuple[str, str]]]] = MappingProxyType(
    {
        "burn_through": _burn_through,
        "reserve": _reserve,
        "budget": _budget,
        "over_cut": _over_cut,
        "heat": _heat,
        "through": _through,
        "untold": _untold,
        "uncured": _uncured,
        "coat_over_water": _coat_over("water, which runs out of the seams", "Dry, seams blown out,"),
        "coat_over_residue": _coat_over("oils, residue or soil", "Take off deposits, wash, dry and wipe with solvent"),
        "coat_over_uncured": _coat_over("a repair that is still soft", "Warm it, wait and test the cure"),
        "trail": _trail,
        "strays": _strays,
        "cutting_last": _cutting_last,
        "oxidised": _oxidised,
        "uncorrected": _uncorrected,
        "gloss60": _gloss(60),
        "gloss20": _gloss(20),
    }
)
