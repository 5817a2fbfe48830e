"""The steps a plan is made of: their words, their families and the settings each may carry."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

__all__ = ["CHEMISTRY", "FAMILIES", "OPS", "POLISHING", "Op"]

FAMILIES: Final = ("look", "clean", "chem", "abrade", "coat", "stop")
"""What a step is in general, as rules ask for it."""

POLISHING: Final = ("cut", "refine", "finish")
"""Steps with a pad and a compound."""

CHEMISTRY: Final = ("alkaline", "acid", "iron")
"""Steps that dissolve; each includes its rinse."""

_RUN: Final = ("machine", "speeds_rpm", "passes", "sets", "force_n", "arm_m_s", "overlap", "section_m2")


@dataclass(frozen=True, slots=True)
class Op:
    """One kind of step: ``op`` as the doors write it, ``words`` in the trade's imperative, ``takes`` beside a zone."""

    op: str
    family: str
    words: str
    takes: tuple[str, ...] = ()


def _ops() -> tuple[Op, ...]:
    polish = ("pad", "compound", *_RUN)
    return (
        Op("prerinse", "clean", "Rinse down first"),
        Op("wash", "clean", "Wash", ("product",)),
        Op("alkaline", "chem", "Clean with an alkaline cleaner", ("product",)),
        Op("acid", "chem", "Clean with a mild acid", ("product",)),
        Op("iron", "chem", "Clean with an iron remover", ("product",)),
        Op("rinse", "clean", "Rinse until neutral"),
        Op("flush_prove", "clean", "Flush and prove it"),
        Op("dry", "clean", "Dry, seams blown out"),
        Op("clay", "clean", "Clay"),
        Op("tape", "clean", "Tape the edges"),
        Op("untape", "clean", "Take the tape off"),
        Op("test_spot", "look", "Lay a test spot"),
        Op("sand", "abrade", "Sand", ("grade", "disc", "pad", *_RUN)),
        Op("cut", "abrade", "Cut", polish),
        Op("refine", "abrade", "Refine", polish),
        Op("finish", "abrade", "Finish", polish),
        Op("wipe", "clean", "Wipe with solvent"),
        Op("inspect", "look", "Inspect in two lights"),
        Op("coat", "coat", "Coat", ("product", "at_h")),
        Op("wait", "stop", "Wait", ("hours", "warm_degc", "at_h")),
        Op("cure_test", "look", "Test the cure with a nail", ("at_h",)),
        Op("record", "stop", "Record"),
        Op("tell", "stop", "Tell whoever must know"),
        Op("refer", "stop", "Refer"),
    )


OPS: Final[Mapping[str, Op]] = MappingProxyType({one.op: one for one in _ops()})
"""Every kind of step by its op, in the order of a job."""
