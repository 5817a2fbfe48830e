"""How a shop sets its machines: what stands for every setting that a step leaves out.

All of it is common practice without a source: 600, 900 and 1500 rpm for a heavy set, 4800 orbits for a dual action,
the machine's weight included in its force, half a pad of overlap, sections of two feet by two for polishing.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from courses.trade.surface.ops import POLISHING

__all__ = ["COMPOUNDS", "MACHINES", "PADS", "SPEEDS_RPM", "Settings", "runs_on", "settings"]

PADS: Final[Mapping[str, Mapping[str, str]]] = MappingProxyType(
    {
        "sand": MappingProxyType({"disc": "hard disc", "disc_soft": "disc on a soft pad", "block": "flat block"}),
        "polish": MappingProxyType(
            {
                "wool": "wool",
                "microfibre": "microfibre",
                "foam_cut": "cutting foam",
                "foam_finish": "finishing foam",
            }
        ),
    }
)
"""Pads by what they are for, with their words."""

COMPOUNDS: Final[Mapping[str, str]] = MappingProxyType(
    {"heavy": "heavy compound", "medium": "medium compound", "fine": "fine polish", "ultrafine": "ultrafine polish"}
)
"""Compounds, coarse to fine, with their words."""

MACHINES: Final[Mapping[str, Mapping[str, str]]] = MappingProxyType(
    {
        "sand": MappingProxyType({"da": "fine sander", "hand": "by hand"}),
        "polish": MappingProxyType({"rotary": "rotary", "da": "dual action", "hand": "by hand"}),
    }
)
"""Machines by what they are used for, with their words. A rotary carries no paper."""

SPEEDS_RPM: Final[Mapping[str, tuple[float, float]]] = MappingProxyType(
    {"rotary": (300.0, 3500.0), "da": (1500.0, 9000.0), "sander": (2000.0, 12000.0)}
)
"""What each machine can turn, rpm; of a dual action and a sander, orbits a minute."""

_ROTARY_RPM: Final = {
    "heavy": (600.0, 900.0, 1500.0),
    "medium": (900.0, 1500.0, 1650.0),
    "fine": (900.0, 1500.0, 1800.0),
    "ultrafine": (900.0, 1500.0, 1800.0),
}
_DA_RPM, _SANDER_RPM = 4800.0, 8000.0
_BY_OP: Final = {"cut": ("wool", "heavy", "rotary"), "refine": ("wool", "medium", "rotary")}
_FINISH: Final = ("foam_finish", "fine", "da")


@dataclass(frozen=True, slots=True)
class Settings:
    """The settings of one working step; speeds in rpm (orbits a minute of a dual action), one a pass, none by hand."""

    pad: str
    compound: str
    machine: str
    speeds_rpm: tuple[float, ...]
    passes: int
    force_n: float
    arm_m_s: float
    overlap: float
    section_m2: float


def runs_on(op: str, machine: str) -> str:
    """The machine that stands behind the words: a dual action with paper on it is a fine sander.

    >>> runs_on("sand", "da"), runs_on("cut", "da")
    ('sander', 'da')
    """
    return "sander" if op == "sand" and machine == "da" else machine


def settings(op: str, machine: str = "", pad: str = "", compound: str = "") -> Settings:
    """What a shop sets for ``op`` (sand, cut, refine, finish) once machine, pad and compound are chosen, or are not.

    >>> settings("cut").speeds_rpm, settings("cut", machine="da").pad, settings("finish").passes
    ((600.0, 900.0, 1500.0), 'foam_cut', 4)
    """
    if op not in POLISHING:
        return _sanding(machine or ("hand" if pad == "block" else "da"), pad)
    usual_pad, usual_compound, usual = _BY_OP.get(op, _FINISH)
    machine = machine or usual
    if machine != "rotary" and op != "finish":
        usual_pad, usual_compound = "foam_cut", "medium"
    pad, compound = pad or usual_pad, compound or usual_compound
    if machine == "rotary":
        speeds = _ROTARY_RPM[compound]
        return Settings(pad, compound, machine, speeds, len(speeds), 30.0, 0.05, 0.5, 0.36)
    passes, force = (4, 30.0) if op == "finish" else (6, 50.0)
    if machine == "da":
        return Settings(pad, compound, machine, (_DA_RPM,) * passes, passes, force, 0.06, 0.5, 0.36)
    return Settings(pad, compound, machine, (), passes, 30.0, 0.06, 0.5, 0.36)


def _sanding(machine: str, pad: str) -> Settings:
    if machine == "hand":
        return Settings(pad or "block", "", machine, (), 4, 30.0, 0.06, 0.5, 1.44)
    return Settings(pad or "disc", "", machine, (_SANDER_RPM,) * 4, 4, 25.0, 0.15, 0.5, 1.44)
