"""Whether a verdict stands when a fitted constant is a little wrong."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from courses.trade.constants import FITTED, Constants
from courses.trade.surface.panel import PanelSurface
from courses.trade.surface.simulate import judged
from courses.trade.surface.steps import Step

__all__ = ["FACTORS", "unsteady"]

FACTORS: Final = (0.7, 0.85, 1.15, 1.3)
"""What each fitted constant is multiplied by, one at a time."""


def unsteady(surface: PanelSurface, steps: Sequence[Step], constants: Constants) -> tuple[str, ...]:
    """The variants, such as ``eta × 0.7``, whose verdict is another than the nominal one; none where it is steady.

    Gloss is left out. Source: model.
    """
    nominal = judged(surface, steps, constants)
    return tuple(
        f"{name} × {factor:g}"
        for name in FITTED
        for factor in FACTORS
        if judged(surface, steps, constants.varied(name, factor)) != nominal
    )
