"""A test spot: a taped patch of the panel, worked, wiped with solvent and looked at in two lights."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from courses.trade.constants import Constants
from courses.trade.surface.condition import Condition
from courses.trade.surface.job import Job
from courses.trade.surface.panel import PanelSurface
from courses.trade.surface.steps import Step

__all__ = ["Spot", "share_words", "spot"]


@dataclass(frozen=True, slots=True)
class Spot:
    """What a spot shows: film that went (model µm), share of the veil left, and of each kind of mark, the deepest stray
    and trail, the minutes it took on a square metre. ``sentence`` says it as somebody would who looks.
    """

    removed_um: float
    veil_left: float
    left: tuple[tuple[str, float], ...]
    tail_um: float
    own_tail_um: float
    trail_um: float
    minutes: float
    sentence: str


def spot(surface: PanelSurface, steps: Sequence[Step], constants: Constants) -> Spot:
    """Work ``steps`` on a spot of the first zone, washed, dried and taped as a spot is; the panel stays as it was.

    Only what takes film counts. Source: model.
    """
    zone = replace(surface.parts[0], soiled=False, wet=False, oils=False, taped=True, share=1.0, has_edge=True)
    job = Job.on(replace(surface, parts=(zone,)), constants)
    for step in steps:
        if step.abrades:
            job.do(replace(step, zone="all"))
    one = job.conditions[0]
    return Spot(
        removed_um=one.removed_um,
        veil_left=one.oxidised,
        left=tuple((mark.kind, one.open_share(mark)) for mark in one.marks if mark.ground),
        tail_um=one.tail_um,
        own_tail_um=one.own_tail_um,
        trail_um=one.trail_um,
        minutes=job.minutes,
        sentence=" ".join(["Wiped and looked at in two lights:", *_said(one, constants)]),
    )


def _said(one: Condition, constants: Constants) -> Iterator[str]:
    """What is seen, the veil first, then marks, then what the last pad itself left."""
    seen = [f"{share_words(one.oxidised)} of the veil is left"] if one.zone.oxidation_um else []
    seen += [f"of the {mark.called}, {share_words(one.open_share(mark))} is left" for mark in one.marks if mark.ground]
    yield f"{'; '.join(seen)}." if seen else "there was nothing to take off."
    gates = constants.gates
    if one.tail_um > one.own_tail_um + gates.stray_um:
        yield "Lines run across the last direction: strays that this step didn't make."
    elif one.own_tail_um > gates.cutting_um:
        yield "It is dull: this step's own marks want a finer one."
    if one.trail_um > gates.visible_um:
        yield "Bands follow the path of the machine."
    yield f"It took {one.removed_um:.1f} model µm."


def share_words(share: float) -> str:
    """A share from 0 to 1 as the eye tells it.

    >>> [share_words(one) for one in (0.01, 0.09, 0.33, 0.5, 0.66, 0.97)]
    ['nothing', 'a little', 'about a third', 'about half', 'about two thirds', 'nearly all']
    """
    steps = ((0.03, "nothing"), (0.2, "a little"), (0.42, "about a third"), (0.58, "about half"))
    words = next((words for most, words in steps if share < most), "")
    return words or ("about two thirds" if share < 0.78 else "most" if share < 0.94 else "nearly all")
