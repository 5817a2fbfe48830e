"""Gloss: what a smooth film mirrors, how much of it roughness takes away, and what a glossmeter makes of both.

Two numbers describe the surface: its rms roughness ``rq_um`` and the length ``corr_um`` over which heights stay alike
(Gaussian, falling to 1/e). Roughness alone doesn't fix gloss. Derivations: docs/trade.md.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import cos, erf, exp, lgamma, log, pi, radians, sin, sqrt
from types import MappingProxyType

from courses.trade.errors import ImpossibleChoice, OutOfRange
from courses.trade.ranges import Range

INDEX = Range(1.3, 2.5, "ratio")
ANGLE_DEG = Range(0.0, 90.0, "deg")
RQ_UM = Range(0.0, 2.0, "um")
CORR_UM = Range(0.5, 200.0, "um")
WAVELENGTH_UM = Range(0.38, 0.78, "um")

STANDARD_INDEX = 1.567
"""Refractive index of the polished black glass that reads 100 gloss units: iso-2813."""

LAMP_UM = 0.55
"""Wavelength at which a glossmeter is worked out here, the middle of what the eye sees: model."""

RECEPTORS: Mapping[int, tuple[float, float]] = MappingProxyType({20: (1.8, 3.6), 60: (4.4, 11.7), 85: (4.0, 6.0)})
"""Opening of the receptor in degrees, in the plane of the light and across it: iso-2813, from memory."""

HAZE_DEG = 1.9
"""How far beside the mirror direction haze is read, at 20°: astm-e430, second-hand."""

STEEPEST = 0.25
"""The largest rq ÷ corr the series is used for: beyond, slopes shade one another. Our own choice."""

_CUT_OVER = 400.0


def reflectance(index: float, angle_deg: float) -> float:
    """Share of unpolarised light that a smooth film mirrors, 0 to 1, at ``angle_deg`` from the upright.

    ``index`` 1.3 to 2.5, ``angle_deg`` 0 to 90; `OutOfRange` beyond. Source: fresnel-equations.

    >>> round(reflectance(1.5, 0.0), 4), round(reflectance(1.567, 60.0), 5)
    (0.04, 0.10006)
    """
    n = INDEX.checked("index", index)
    angle = radians(ANGLE_DEG.checked("angle_deg", angle_deg))
    into, out = cos(angle), sqrt(n * n - sin(angle) ** 2)
    across = (into - out) / (into + out)
    along = (n * n * into - out) / (n * n * into + out)
    return (across**2 + along**2) / 2


def smooth_gloss(index: float, angle_deg: float) -> float:
    """Gloss units of a perfectly smooth film: 100 times its share of what black glass mirrors at the same angle.

    Ranges as `reflectance`. A perfect film of index 1.50 reads 89 at 60°, so 100 is no pass mark. Source: iso-2813.

    >>> round(smooth_gloss(1.5, 60.0), 1), round(smooth_gloss(1.5, 20.0), 1)
    (89.1, 82.0)
    """
    return 100 * reflectance(index, angle_deg) / reflectance(STANDARD_INDEX, angle_deg)


def coherent_share(rq_um: float, angle_deg: float, wavelength_um: float = LAMP_UM) -> float:
    """Share of the mirrored light that a rough film still mirrors as if it were smooth, 0 to 1: e to the minus g.

    g = (4π·rq·cos(angle) ÷ wavelength)². ``rq_um`` 0 to 2, ``wavelength_um`` 0.38 to 0.78. Sources: davies-1954,
    bennett-porteus-1961.

    >>> round(coherent_share(0.05, 60.0), 4), round(coherent_share(0.05, 20.0), 4)
    (0.7216, 0.3159)
    """
    return exp(-_phase(rq_um, angle_deg, wavelength_um))


def scattered_share(rq_um: float, angle_deg: float, wavelength_um: float = LAMP_UM) -> float:
    """Share of the mirrored light that roughness throws aside, 0 to 1: what `coherent_share` leaves. Same ranges.

    >>> round(scattered_share(0.01, 0.0), 4)
    0.0509
    """
    return 1 - coherent_share(rq_um, angle_deg, wavelength_um)


def _phase(rq_um: float, angle_deg: float, wavelength_um: float) -> float:
    rq, angle = RQ_UM.checked("rq_um", rq_um), ANGLE_DEG.checked("angle_deg", angle_deg)
    return (4 * pi * rq * cos(radians(angle)) / WAVELENGTH_UM.checked("wavelength_um", wavelength_um)) ** 2


def caught_share(rq_um: float, corr_um: float, angle_deg: int) -> float:
    """Share of the mirrored light that falls into the receptor of a glossmeter set to 20, 60 or 85°, 0 to 1.

    ``rq_um`` 0 to 2, ``corr_um`` 0.5 to 200 and at least four times ``rq_um``: `OutOfRange` beyond, `ImpossibleChoice`
    for another angle. Sources: davies-1954 and simonsen-2005; the openings are from memory.

    >>> round(caught_share(0.05, 3.0, 60), 3), round(caught_share(0.05, 10.0, 60), 3)
    (0.815, 0.959)
    """
    along, across = _receptor(angle_deg)
    return _share_within(rq_um, corr_um, angle_deg, (-along / 2, along / 2), across / 2)


def gloss(index: float, rq_um: float, corr_um: float, angle_deg: int) -> float:
    """Gloss units that a glossmeter set to 20, 60 or 85° reads on a film. Ranges as `smooth_gloss`, `caught_share`.

    Light scattered by pigment under the film is left out: on white it adds a little at 60°. Source: iso-2813, model.

    >>> round(gloss(1.55, 0.05, 3.0, 60), 1), round(gloss(1.55, 0.05, 3.0, 20), 1)
    (79.3, 37.7)
    """
    return smooth_gloss(index, angle_deg) * caught_share(rq_um, corr_um, angle_deg)


def haze(index: float, rq_um: float, corr_um: float) -> float:
    """Light thrown 1.9° aside at 20°, both sides together, in per cent of what black glass mirrors straight on.

    Ranges as `gloss`. It rises and falls again as the film gets rougher, so more haze is not more roughness; an
    instrument's own haze unit is another scale. Source: astm-e430, second-hand.

    >>> [round(haze(1.55, rq, 3.0), 1) for rq in (0.01, 0.05, 0.1)]
    [1.0, 12.0, 7.9]
    """
    along, across = _receptor(20)
    sides = ((beside - along / 2, beside + along / 2) for beside in (-HAZE_DEG, HAZE_DEG))
    return smooth_gloss(index, 20) * sum(_share_within(rq_um, corr_um, 20, side, across / 2) for side in sides)


def slope_width(rq_um: float, corr_um: float) -> float:
    """Width of the slopes of such a film (Beckmann's alpha), by which a rendered highlight is as wide as gloss says.

    Ranges as `caught_share`. Source: a Gaussian surface has slopes of variance 2·(rq ÷ corr)² along each axis.

    >>> round(slope_width(0.006, 3.0), 4)
    0.004
    """
    rq, corr = RQ_UM.checked("rq_um", rq_um), CORR_UM.checked("corr_um", corr_um)
    _refuse_steep(rq, corr)
    return 2 * rq / corr


def geometry(gloss60: float) -> int:
    """The angle at which a film that reads ``gloss60`` at 60° is read: 20° above 70, 85° below 10, else 60°.

    Source: astm-d523, second-hand.

    >>> geometry(88.0), geometry(40.0), geometry(6.0)
    (20, 60, 85)
    """
    return 20 if gloss60 > 70 else 85 if gloss60 < 10 else 60


def _receptor(angle_deg: int) -> tuple[float, float]:
    if angle_deg not in RECEPTORS:
        raise ImpossibleChoice(f"A glossmeter reads at 20, 60 or 85°, not at {angle_deg:g}°.", "angle_deg")
    return RECEPTORS[angle_deg]


def _refuse_steep(rq: float, corr: float) -> None:
    if rq > STEEPEST * corr:
        raise OutOfRange(
            f"A roughness of {rq:g} µm over {corr:g} µm is too steep for this formula; "
            f"give a length of at least {rq / STEEPEST:g} µm.",
            "corr_um",
        )


def _share_within(
    rq_um: float, corr_um: float, angle_deg: float, along_deg: tuple[float, float], across_deg: float
) -> float:
    """The share that leaves between ``along_deg`` in the plane of the light and within ``across_deg`` of that plane."""
    corr = CORR_UM.checked("corr_um", corr_um)
    g = _phase(rq_um, angle_deg, LAMP_UM)
    _refuse_steep(rq_um, corr)
    reach = pi * corr / LAMP_UM
    low, high = (reach * cos(radians(angle_deg)) * radians(edge) for edge in along_deg)
    side = reach * radians(across_deg)
    straight = exp(-g) if low <= 0 <= high else 0.0
    return straight + sum(
        weight * (erf(high / sqrt(order)) - erf(low / sqrt(order))) / 2 * erf(side / sqrt(order))
        for order, weight in _orders(g)
    )


def _orders(g: float) -> Iterator[tuple[float, float]]:
    """The orders of scattering and their weights; of a very rough film, one order that stands for all."""
    if g == 0:
        return
    if g > _CUT_OVER:
        yield g, 1.0
        return
    for order in range(1, int(g + 12 * sqrt(g) + 25)):
        yield order, exp(order * log(g) - g - lgamma(order + 1))
