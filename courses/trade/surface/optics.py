"""How a worked zone shines: gloss at 60 and 20 degrees, and haze, from its scratches."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from functools import lru_cache

from courses.trade.constants import Constants
from courses.trade.finish import DEPTH_UM, length_um, rms_um
from courses.trade.gloss import CORR_UM, RQ_UM, STEEPEST, gloss, haze
from courses.trade.surface.condition import Condition
from courses.trade.surface.marks import LEVELLED

__all__ = ["Reading", "dullest", "reading_of"]


@dataclass(frozen=True, slots=True)
class Reading:
    """Gloss units at 60 and 20°, and haze, in per cent of what black glass mirrors."""

    gloss60: float
    gloss20: float
    haze: float

    def as_json(self) -> dict[str, object]:
        """The three, rounded to what a meter shows."""
        return {"gloss60": round(self.gloss60, 1), "gloss20": round(self.gloss20, 1), "haze": round(self.haze, 1)}


def reading_of(condition: Condition, index: float, constants: Constants, but: Collection[str] = ()) -> Reading:
    """What a meter reads on a zone once it is wiped, kinds of defects in ``but`` left out.

    Sources: those of `courses.trade.gloss`; the mixing is ours.
    """
    law = constants.optics
    deepest = DEPTH_UM.high
    rz, tail = min(condition.rz_um, deepest), min(condition.tail_um, deepest)
    rq = rms_um(rz, tail, condition.trail_um, law.rq_per_rz, law.stray_share)
    clean = _shine(index, rq, length_um(rz, condition.trail_um, condition.corr_um, law.trail_corr_um))
    chalk = 0.0 if "oxidation" in but else condition.oxidised
    scatter = min(
        law.most_scatter,
        sum(
            one.cover * condition.open_share(one)
            for one in condition.marks
            if one.role in LEVELLED and one.kind not in but
        ),
    )
    dull = _shine(index, law.chalk_rq_um, law.chalk_corr_um).gloss60 if chalk else 0.0
    return Reading(
        (1 - chalk) * clean.gloss60 * (1 - scatter) + chalk * dull,
        (1 - chalk) * clean.gloss20 * (1 - scatter),
        (1 - chalk) * clean.haze + law.haze_of_marks * scatter + law.haze_of_chalk * chalk,
    )


def dullest(readings: Iterable[Reading]) -> Reading:
    """The reading of the zone that shines least at 20°."""
    return min(readings, key=lambda one: (one.gloss20, one.gloss60))


@lru_cache(maxsize=4096)
def _shine(index: float, rq_um: float, corr_um: float) -> Reading:
    """The readings of an even film. One too rough for the series is taken at its roughest with the same slopes, one too
    steep at its steepest.
    """
    rq = min(rq_um, RQ_UM.high)
    corr = min(max(corr_um * (rq / rq_um if rq_um else 1.0), CORR_UM.low, rq / STEEPEST), CORR_UM.high)
    return Reading(gloss(index, rq, corr, 60), gloss(index, rq, corr, 20), haze(index, rq, corr))
