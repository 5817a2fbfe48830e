"""What the calculators of cutting share: what cuts, on which machine, and the settings they open with.

The figures are those of the shipped training model, so that a calculator opens with them; a test holds them equal. A
school that gauged its own cut types its own k over them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from courses.trade import removal
from courses.trade.abrasives import D50_UM, sanding_k
from courses.trade.errors import OutOfRange
from courses.trade.ranges import Range
from courses.trade.sums.shape import Input, Note

TERA: Final = 1e12
"""k is typed in units of 10⁻¹² per Pa."""

PASSES: Final = Range(1.0, 20.0, "ratio")
K: Final = Range(0.01, 100_000.0, "ratio")
SHARE: Final = Range(0.01, 1.0, "ratio")
PAD_MM: Final = Range(removal.PAD_M.low * 1000, removal.PAD_M.high * 1000, "mm")
ORBIT_MM: Final = Range(removal.ORBIT_M.low * 1000, removal.ORBIT_M.high * 1000, "mm")


@dataclass(frozen=True, slots=True)
class Sanding:
    """The model's law of wet paper: k of the reference grain in 10⁻¹² per Pa, its power, and its scratches."""

    reference_um: float = 18.3
    k: float = 547.0
    k_exponent: float = 1.25
    rz_um: float = 2.745
    rz_exponent: float = 1.3


@dataclass(frozen=True, slots=True)
class Backing:
    """What lies behind the abrasive: ``eta`` depth gained ÷ film lost, friction, and the film's share of the heat."""

    words: str
    eta: float
    friction: float
    heat_share: float
    rz_share: float = 1.0
    stray: float = 1.7


@dataclass(frozen=True, slots=True)
class Cut:
    """One thing that cuts: a backing with its k in 10⁻¹² per Pa."""

    words: str
    backing: str
    k: float

    @property
    def is_paper(self) -> bool:
        """Whether it is wet paper, which cuts by the pass and not by the set."""
        return self.backing == "disc"


@dataclass(frozen=True, slots=True)
class Mover:
    """A machine: pad and orbit in metres, how fast it can go, and how fast its pad turns under load where it orbits."""

    words: str
    pad_m: float
    high_rpm: float
    orbit_m: float = 0.0
    spin_rpm: float = 0.0
    hand_mps: float = 0.0


@dataclass(frozen=True, slots=True)
class Usual:
    """The settings of one set as shops run it: passes, their mean speed, force and arm; half a pad over."""

    machine: str
    passes: int
    speed_rpm: float
    force_n: float
    arm_mps: float


SANDING: Final = Sanding()

BACKINGS: Final[Mapping[str, Backing]] = MappingProxyType(
    {
        "disc": Backing("Hard disc", 0.95, 0.5, 0.15),
        "disc_soft": Backing("Disc on a soft pad", 0.85, 0.5, 0.15, 0.7, 1.4),
        "block": Backing("Flat block", 1.0, 0.5, 0.15),
        "wool": Backing("Wool", 0.75, 0.4, 0.45, stray=1.5),
        "microfibre": Backing("Microfibre", 0.75, 0.45, 0.5, stray=1.5),
        "foam_cut": Backing("Cutting foam", 0.65, 0.45, 0.55, stray=1.4),
        "foam_finish": Backing("Finishing foam", 0.4, 0.4, 0.55, stray=1.3),
    }
)

_COMPOUNDS = {
    "wool": {"heavy": 31.8, "medium": 17.7, "fine": 9.0},
    "microfibre": {"heavy": 26.0, "medium": 15.0},
    "foam_cut": {"heavy": 17.0, "medium": 10.0, "fine": 7.0},
    "foam_finish": {"medium": 8.0, "fine": 5.7, "ultrafine": 3.5},
}
_PAPERS = ("P320", "P400", "P500", "P600", "P800", "P1000", "P1200", "P1500", "P2000", "P2500", "P3000")


def _all_cuts() -> Mapping[str, Cut]:
    polish = {
        f"{pad}_{compound}": Cut(f"{BACKINGS[pad].words}, {compound} compound", pad, k)
        for pad, row in _COMPOUNDS.items()
        for compound, k in row.items()
    }
    paper = {
        grade: Cut(
            f"{grade}, wet, on a hard disc",
            "disc",
            sanding_k(D50_UM[grade], SANDING.k, SANDING.k_exponent, SANDING.reference_um),
        )
        for grade in _PAPERS
    }
    return MappingProxyType({**polish, **paper})


CUTS: Final = _all_cuts()

MOVERS: Final[Mapping[str, Mover]] = MappingProxyType(
    {
        "rotary": Mover("Rotary", 0.2, 3500.0),
        "da": Mover("Dual action, 15 mm orbit", 0.15, 9000.0, 0.015, 300.0),
        "sander": Mover("Fine sander, 5 mm orbit", 0.15, 12_000.0, 0.005, 250.0),
        "hand": Mover("By hand", 0.12, 0.0, hand_mps=0.4),
    }
)

ON_PANEL: Final = 0.65
TOO_FAST_RPM: Final = 1800.0
OVER_1800: Final = Note("Over 1800 on a rotary heat, trails and edge wear rise together. Common practice says never.")
EDGE_GAIN: Final = 2.5
EDGE_RATIO: Final = 0.75

_ONE_PASS = Usual("sander", 1, 8000.0, 25.0, 0.15)
_ROTARY_RPM = {"heavy": 1000.0, "medium": 1350.0}
_FINISHING_RPM = 1400.0


def usual(cuts: str, machine: str) -> Usual:
    """The set in which ``cuts`` is worked on a rotary or a dual action: practice. Paper is one pass of the fine sander.

    >>> usual("wool_heavy", "rotary").speed_rpm, usual("foam_finish_fine", "da").passes
    (1000.0, 4)
    """
    if CUTS[cuts].is_paper:
        return _ONE_PASS
    compound = cuts.rpartition("_")[2]
    if machine == "rotary":
        return Usual(machine, 3, _ROTARY_RPM.get(compound, _FINISHING_RPM), 30.0, 0.05)
    cutting = compound in _ROTARY_RPM
    return Usual(machine, 6 if cutting else 4, 4800.0, 50.0 if cutting else 30.0, 0.06)


def slip_mps(machine: str, pad_m: float, speed_rpm: float) -> float:
    """Mean speed of the pad over the film, m/s, at this many turns or orbits a minute; a hand has its own speed.

    `OutOfRange` where the machine can't go that fast.

    >>> round(slip_mps("rotary", 0.2, 1500.0), 2), slip_mps("hand", 0.12, 0.0)
    (10.47, 0.4)
    """
    mover = MOVERS[machine]
    if mover.hand_mps:
        return mover.hand_mps
    if speed_rpm > mover.high_rpm:
        sentence = f"{mover.words}: {speed_rpm:g} a minute is more than it can turn; give up to {mover.high_rpm:g}."
        raise OutOfRange(sentence, "speed_rpm")
    if mover.orbit_m:
        return removal.dual_action_slip_mps(pad_m, mover.orbit_m, speed_rpm, mover.spin_rpm)
    return removal.rotary_slip_mps(pad_m, speed_rpm)


def pad_of(machine: str, pad_mm: float | None) -> float:
    """The pad in metres: the one that was given in mm, or the machine's own.

    >>> pad_of("da", None), pad_of("rotary", 180.0)
    (0.15, 0.18)
    """
    return MOVERS[machine].pad_m if pad_mm is None else pad_mm / 1000


def _words_of(rows: Mapping[str, Cut] | Mapping[str, Mover] | Mapping[str, Backing]) -> tuple[str, ...]:
    return tuple(row.words for row in rows.values())


GRADES: Final = tuple(D50_UM)
CUTS_INPUT: Final = Input("cuts", "What cuts", default="wool_heavy", choices=tuple(CUTS), words=_words_of(CUTS))
MACHINE_INPUT: Final = Input("machine", "Machine", default="rotary", choices=tuple(MOVERS), words=_words_of(MOVERS))
PASSES_INPUT: Final = Input.over(PASSES, "passes", "Passes", 3.0)
FORCE_INPUT: Final = Input.over(removal.FORCE_N, "force_n", "Force, machine included", 30.0)
ARM_INPUT: Final = Input.over(removal.ARM_MPS, "arm_mps", "Arm speed", 0.05)
OVERLAP_INPUT: Final = Input.over(removal.OVERLAP, "overlap", "Overlap, share of the pad", 0.5)
PAD_INPUT: Final = Input.over(PAD_MM, "pad_mm", "Pad, if not the usual", optional=True)
_POLISHERS = ("rotary", "da")
POLISHER_INPUT: Final = Input(
    "machine",
    "Machine",
    default="rotary",
    choices=_POLISHERS,
    words=tuple(MOVERS[one].words for one in _POLISHERS),
)
