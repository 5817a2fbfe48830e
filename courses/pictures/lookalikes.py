"""Which panels stand side by side on the page of look-alikes: one kind each on the same panel, under the same lamp."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

CLEAN = "clean"
"""The panel without any defect, which may stand beside a kind."""
SHADES: Mapping[str, str] = MappingProxyType({"dark": "navy", "mid": "grey", "white": "white"})
"""The colour that stands for each shade."""
STRIPS: Mapping[str, tuple[tuple[float, float], ...]] = MappingProxyType(
    {
        "point": tuple((round(0.2 + 0.1 * place, 1), 0.42) for place in range(7)),
        "raking": ((0.2, 0.42), (0.5, 0.42), (0.8, 0.42)),
        "diffuse": ((0.5, 0.42),),
    }
)
"""The places of the lamp in each light, in fractions of the picture."""
SEED = 7
SIZE = (960, 640)
SEVERITY = 0.6


def lookalike(kind: str, shade: str, size: tuple[int, int] = SIZE) -> Mapping[str, object]:
    """The scene of one kind, or of the clean panel, in a shade of `SHADES`; every other kind shares panel and grain.

    >>> lookalike("swirl", "dark")["defects"], lookalike("clean", "white")["colour"]
    ([{'kind': 'swirl', 'severity': 0.6}], 'white')
    """
    defects = [] if kind == CLEAN else [{"kind": kind, "severity": SEVERITY}]
    return {
        "substrate": "gel_coat",
        "colour": SHADES[shade],
        "size": list(size),
        "seed": SEED,
        "curve": "flat",
        "defects": defects,
    }
