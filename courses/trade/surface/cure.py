"""Cure of a repair: how far a time at a temperature brings it, and whether a nail still marks it."""

from __future__ import annotations

from math import exp

from courses.trade.constants import Constants

__all__ = ["cured_after", "is_hard"]


def cured_after(cure: float, hours: float, degc: float, constants: Constants) -> float:
    """Cure, 0 to 1, after ``hours`` at ``degc``: what is left falls by the same share each hour, faster when warm.

    The rate doubles every 10 K, is nothing below 10 °C and no higher above 35 °C. Source: gel-coat-cure-notes for the
    lower one, practice for the upper, model for the rest.
    """
    law = constants.cure
    if degc < law.least_degc or hours <= 0:
        return cure
    rate = law.rate_h * 2.0 ** ((min(degc, law.most_degc) - law.rate_degc) / law.doubling_k)
    return 1.0 - (1.0 - cure) * exp(-rate * hours)


def is_hard(cure: float, constants: Constants) -> bool:
    """Whether a nail leaves no mark any more. Source: repair-cure; the share is our model's."""
    return cure >= constants.gates.cured
