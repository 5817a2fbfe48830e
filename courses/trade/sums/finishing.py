"""The sum of what a set leaves behind: its own marks, its trail, and the gloss that makes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from courses.trade import finish, gloss
from courses.trade.sums import cuts as shop
from courses.trade.sums.leftover import SKINS
from courses.trade.sums.shape import Input, Note, Output, Quantity, Sum, Worked
from courses.trade.units import rounded

_REST_DOUBT = 0.30
_VISIBLE_UM, _CUTTING_UM = 0.10, 0.30


@dataclass(frozen=True, slots=True)
class Look:
    """How marks become roughness: the model's figures, lengths in µm; a test holds them against the shipped ones."""

    rq_per_rz: float = 0.2
    stray_share: float = 0.05
    corr_um: float = 3.0
    trail_corr_um: float = 8.0


LOOK: Final = Look()
GRAIN_UM: Final = {"heavy": 6.0, "medium": 3.0, "fine": 1.0, "ultrafine": 0.5}
"""Working grain of a compound once it has broken down."""
REST: Final = {"wool": 0.045, "microfibre": 0.045, "foam_cut": 0.04, "foam_finish": 0.03}
"""Mean scratch that a pad leaves ÷ grain of the compound."""
TRAIL_UM: Final = {"wool": 0.25, "microfibre": 0.2, "foam_cut": 0.12, "foam_finish": 0.05}
"""Trail that a rotary leaves with a pad."""
INDEX: Final = {"gel_coat": 1.55, "topcoat_2k": 1.5, "clear_coat": 1.5}

_SHOWS = Note("A lamp shows that trail: finish it on a dual action.")
_CUTTING = Note("These are the marks of a cutting step. Don’t stop here.")
_DONE = Note("Nothing here is left that a lamp shows. Wipe, and look from two places.")
_OWN_MARKS = Note("Own marks only, on a panel where everything coarser has gone. Depths are model micrometres.")


def _finish_left(cuts: str, machine: str, substrate: str, rest: float | None, trail_um: float | None) -> Worked:
    backing, _, compound = cuts.rpartition("_")
    scratch = (REST[backing] if rest is None else rest) * GRAIN_UM[compound]
    stray = scratch * shop.BACKINGS[backing].stray
    trail = 0.0 if machine == "da" else TRAIL_UM[backing] if trail_um is None else trail_um
    read = {angle: _gloss(substrate, scratch, stray, trail, angle) for angle in (60, 20)}
    more = 1 + _REST_DOUBT
    rougher = _gloss(substrate, scratch * more, stray * more, trail * more, 60)
    return Worked(
        {
            "gloss60_gu": read[60],
            "gloss20_gu": read[20],
            "own_trail_um": trail,
            "stray_um": stray,
            "scratch_um": scratch,
        },
        read[60] - rougher,
        (*_verdict(rounded(trail, 2), rounded(stray, 2)), _OWN_MARKS),
    )


def _gloss(substrate: str, scratch: float, stray: float, trail: float, angle: int) -> float:
    rq = finish.rms_um(scratch, stray, trail, LOOK.rq_per_rz, LOOK.stray_share)
    corr = finish.length_um(scratch, trail, LOOK.corr_um, LOOK.trail_corr_um)
    return gloss.gloss(INDEX[substrate], rq, corr, angle)


def _verdict(trail: float, stray: float) -> tuple[Note, ...]:
    found = ((trail > _VISIBLE_UM, _SHOWS), (stray > _CUTTING_UM, _CUTTING))
    return tuple(note for wrong, note in found if wrong) or (_DONE,)


_POLISHES = tuple(name for name, cut in shop.CUTS.items() if not cut.is_paper)

FINISHING_SUMS = (
    Sum(
        "finish_left",
        "What a polishing set leaves",
        "The gloss a set ends at, its trail and its deepest own mark, once everything coarser has gone.",
        (
            Input(
                "cuts",
                "Pad and compound",
                default="foam_finish_fine",
                choices=_POLISHES,
                words=tuple(shop.CUTS[name].words for name in _POLISHES),
            ),
            shop.POLISHER_INPUT,
            Input(
                "substrate",
                "Film",
                default="gel_coat",
                choices=tuple(SKINS),
                words=tuple(skin.words for skin in SKINS.values()),
            ),
            Input("rest", "Own scratch ÷ grain", "ratio", 0.001, 0.2, optional=True),
            Input("trail_um", "Own trail of a rotary", "um", 0.0, 2.0, optional=True, model=True),
        ),
        (
            Output("gloss60_gu", "Gloss at 60°", "gu", 1),
            Output("gloss20_gu", "Gloss at 20°", "gu", 1),
            Output("own_trail_um", "Trail", "um", 2, page_decimals=2, model=True),
            Output("stray_um", "Deepest own mark", "um", 2, page_decimals=2, model=True),
            Output("scratch_um", "Mean own mark", "um", 2, page_decimals=2, model=True),
        ),
        "mark = share of the pad·grain; rq² = 0.95·(mark ÷ 5)² + 0.05·(deepest ÷ 5)² + (trail ÷ 5)²; gloss of that rq",
        "model",
        "model",
        Note("Marks {more} deeper read {doubt} less at 60°.", (("more", Quantity(_REST_DOUBT * 100, "percent", 0)),)),
        _finish_left,
    ),
)
