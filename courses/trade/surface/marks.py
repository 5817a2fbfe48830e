"""Families of marks on a film: how deep they go, and how many of them are still open once a depth is gone."""

from __future__ import annotations

from dataclasses import dataclass
from math import erfc, inf, log, sqrt
from typing import Final

from courses.trade.leftover import d95_um

__all__ = ["LEVELLED", "Marks"]

LEVELLED: Final = ("scratch", "pit", "texture")
"""Roles of valleys: what counts is the depth gained."""
_GROUND: Final = (*LEVELLED, "proud", "skin")
"""Roles that abrasion can bring down."""
_SQRT2: Final = sqrt(2)
_SHALLOWEST_UM: Final = 0.01


@dataclass(frozen=True, slots=True)
class Marks:
    """One family of marks: its ``kind`` and what that is to the model, its depths log-normal about ``depth_um``.

    ``deepest_um`` is the depth that 95 of 100 don't reach. ``at_start``: not made by the plan itself.
    """

    kind: str
    called: str
    role: str
    depth_um: float
    spread: float
    cover: float
    weight: float
    by: tuple[str, ...] = ()
    at_start: bool = True

    @property
    def deepest_um(self) -> float:
        """The depth, µm, that 95 of 100 of them don't reach."""
        return d95_um(max(self.depth_um, _SHALLOWEST_UM), self.spread) if self.depth_um else 0.0

    @property
    def ground(self) -> bool:
        """Whether abrasion can bring them down."""
        return self.role in _GROUND

    @property
    def drags(self) -> bool:
        """Whether a pad drags them over the film as grit: deposits that stand on it."""
        return self.role == "deposit"

    def open_share(self, gone_um: float) -> float:
        """Share of the family, 0 to 1, that goes deeper than ``gone_um``. Source: model, log-normal depths.

        >>> swirls = Marks("swirl", "swirl marks", "scratch", 0.8, 1.6, 0.06, 2.0)
        >>> round(swirls.open_share(2.0), 3), round(swirls.deepest_um, 2)
        (0.026, 1.73)
        """
        if self.depth_um < _SHALLOWEST_UM and self.ground:
            return 0.0
        if gone_um <= 0 or not self.ground:
            return 1.0
        beyond, wide = log(gone_um / self.depth_um), log(self.spread)
        steps = beyond / wide if wide > 0 else (inf if beyond >= 0 else -inf)
        return erfc(steps / _SQRT2) / 2
