"""The score: it ranks plans on one panel, and never says more than the verdict."""

from __future__ import annotations

from collections.abc import Sequence
from math import exp
from typing import Final

from courses.trade.gloss import smooth_gloss
from courses.trade.surface.condition import Condition
from courses.trade.surface.gates import HARM, PASS, REDO, Fault, correction, verdict_of
from courses.trade.surface.job import Job
from courses.trade.surface.need import needed_here_um
from courses.trade.surface.optics import Reading

__all__ = ["score"]

_FLOORS: Final = {PASS: 80.0, REDO: 40.0, HARM: 0.0}
"""A plan that passes scores 80 to 100, one that has to be done again 40 to 80, a harm less: verdict first."""
_UNDONE: Final = ("uncorrected", "untold")
_TIE_MARKS: Final = 1e-4
_TIE_MINUTES: Final = 1e-7
"""What marks and minutes may move a score by: less than a hundredth of a micrometre does."""


def score(job: Job, found: Sequence[Fault], readings: Sequence[Reading]) -> float:
    """0 to 100, never rounded to a tie. Source: model.

    Of two plans that pass, the one that spares more film is higher, then the one that leaves fewer marks, then the
    quicker. Where the verdict is another, the weights of the constants count first: damage done costs more than work
    left undone.
    """
    verdict = verdict_of(tuple(found))
    worked = [one for one in job.conditions if one.zone.judged] or list(job.conditions)
    spent = sum(one.removed_um * one.zone.share for one in job.conditions)
    budget = sum(one.zone.budget_um * one.zone.share for one in job.conditions)
    tie = _TIE_MARKS * _marks_left(worked) + _TIE_MINUTES * job.minutes / (job.minutes + 100.0)
    if verdict == PASS:
        return _FLOORS[PASS] + 20.0 * (1.0 - min(spent / budget, 1.0)) * (1 - 2 * _TIE_MARKS) - tie + 2 * _TIE_MARKS
    weighed = _weighed(job, worked, found, readings)
    return _FLOORS[verdict] + 0.4 * weighed * (1 - 1e-3) - 0.01 * (1 - exp(-spent / budget)) - tie + 0.02


def _marks_left(worked: Sequence[Condition]) -> float:
    """How much is left to be seen, 0 to 1: strays, trails, what isn't corrected."""
    left = max(one.tail_um + one.trail_um + one.oxidised for one in worked)
    return left / (1.0 + left)


def _weighed(job: Job, worked: Sequence[Condition], found: Sequence[Fault], readings: Sequence[Reading]) -> float:
    """0 to 100: correction, finish, marks, habits and economy, less what each fault costs."""
    law, gates = job.constants.score, job.constants.gates
    corrected = min(correction(one, job.constants) for one in worked)
    smooth = smooth_gloss(job.surface.index, 60)
    finish = min(one.gloss60 for one in readings) / smooth if readings else 1.0
    trail, tail = max(one.trail_um for one in worked), max(one.tail_um for one in worked)
    marks = max(0.0, 1 - max(trail - gates.visible_um, 0) / 0.2) * max(0.0, 1 - max(tail - 2 * gates.visible_um, 0))
    whole = law.correction * corrected + law.finish * finish + law.marks * marks
    whole += law.habits * _habits(job, worked) + law.economy * min(_economy(one) for one in worked)
    cost = {(one.code, one.verdict) for one in found}
    lost = sum(_cost(code, verdict, job) for code, verdict in cost)
    return max(0.0, min(100.0, 100 * whole - lost))


def _cost(code: str, verdict: str, job: Job) -> float:
    law = job.constants.score
    return law.harm if verdict == HARM else law.undone if code in _UNDONE else law.damage


def _habits(job: Job, worked: Sequence[Condition]) -> float:
    """Share of five habits kept in time: spot, look, wash, tape, wipe at the end."""
    kept = [job.habits.get(name, False) for name in ("tested", "inspected", "washed", "taped")]
    return sum([*kept, not any(one.oils for one in worked)]) / 5


def _economy(condition: Condition) -> float:
    """1 up to twice the film that was needed, 0 from six times."""
    need = max(needed_here_um(condition.zone), 0.5)
    return max(0.0, min(1.0, 1 - (condition.removed_um / need - 2.0) / 4))
