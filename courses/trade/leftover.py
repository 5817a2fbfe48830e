"""What a cut leaves: how much of an oxidised layer, how many marks, and how likely the film is gone somewhere.

Depths differ from place to place. A layer and a film are taken as normal about their mean, the depths of a family of
marks as log-normal about their median: our training model's choice. Depths are model micrometres.
"""

from __future__ import annotations

from math import erfc, inf, log, sqrt
from statistics import NormalDist

from courses.trade.ranges import Range

DEPTH_UM = Range(0.0, 5000.0, "um")
MEAN_UM = Range(0.01, 5000.0, "um")
SPREAD = Range(0.0, 1.0, "ratio")
"""Standard deviation ÷ mean."""
GSD = Range(1.0, 5.0, "ratio")
"""Geometric standard deviation of a family of marks: 1.6 puts two in three within ÷ 1.6 and × 1.6 of the median."""
EDGE_GAIN = Range(1.0, 10.0, "ratio")
EDGE_RATIO = Range(0.05, 1.0, "ratio")
SHARE = Range(0.0001, 0.4999, "ratio")

Z95 = 1.645
"""How many standard deviations above the mean 19 of 20 lie below: printed tables of the normal distribution."""


def share_oxidised(removed_um: float, layer_um: float, spread: float) -> float:
    """Share of the area, 0 to 1, still oxidised once ``removed_um`` is gone of a layer ``layer_um`` deep on average.

    1 − Φ((removed − layer) ÷ (spread · layer)). What counts is the film taken off, not the depth levelled. Refuses
    with `OutOfRange` beyond `DEPTH_UM`, `MEAN_UM` and `SPREAD`. Source: model.

    >>> round(share_oxidised(12.0, 10.0, 0.3), 3)
    0.252
    """
    removed = DEPTH_UM.checked("removed_um", removed_um)
    layer = MEAN_UM.checked("layer_um", layer_um)
    return 1.0 if removed == 0 else _above(removed - layer, SPREAD.checked("spread", spread) * layer)


def layer_to_um(layer_um: float, spread: float) -> float:
    """The depth, µm, that 95 of 100 places of a layer don't reach. Ranges as `share_oxidised`. Source: model.

    >>> round(layer_to_um(10.0, 0.3), 1)
    14.9
    """
    return MEAN_UM.checked("layer_um", layer_um) * (1 + Z95 * SPREAD.checked("spread", spread))


def share_deeper(depth_um: float, median_um: float, gsd: float) -> float:
    """Share of a family of marks, 0 to 1, that goes deeper than ``depth_um``: 1 − Φ(ln(depth ÷ median) ÷ ln gsd).

    Refuses with `OutOfRange` beyond `DEPTH_UM`, `MEAN_UM` and `GSD`. Source: model.

    >>> round(share_deeper(2.0, 0.8, 1.6), 3)
    0.026
    """
    depth = DEPTH_UM.checked("depth_um", depth_um)
    median = MEAN_UM.checked("median_um", median_um)
    wide = log(GSD.checked("gsd", gsd))
    return 1.0 if depth == 0 else _above(log(depth / median), wide)


def d95_um(median_um: float, gsd: float) -> float:
    """The depth, µm, that 95 of 100 marks don't reach: median · gsd^1.645. Ranges as `share_deeper`. Source: model.

    >>> round(d95_um(0.8, 1.6), 2)
    1.73
    """
    return float(MEAN_UM.checked("median_um", median_um) * GSD.checked("gsd", gsd) ** Z95)


def burn_in_field(film_um: float, spread: float, cut_um: float) -> float:
    """Chance, 0 to 1, that ``cut_um`` goes through a film of this mean and spread: Φ((cut − film) ÷ (spread · film)).

    Refuses with `OutOfRange` beyond `MEAN_UM`, `SPREAD` and `DEPTH_UM`. Source: model.

    >>> round(burn_in_field(45.0, 0.1, 40.0), 2)
    0.13
    """
    film = MEAN_UM.checked("film_um", film_um)
    return _above(film - DEPTH_UM.checked("cut_um", cut_um), SPREAD.checked("spread", spread) * film)


def burn_at_edge(film_um: float, spread: float, cut_um: float, gain: float, ratio: float) -> float:
    """The same at an edge without tape, where ``gain`` times as much is cut off ``ratio`` times the film.

    Ranges as `burn_in_field`, `EDGE_GAIN` and `EDGE_RATIO`; the model takes 2.5 and 0.75. Source: model.

    >>> round(burn_at_edge(45.0, 0.1, 12.0, 2.5, 0.75), 3)
    0.133
    """
    edge = MEAN_UM.checked("film_um", film_um) * EDGE_RATIO.checked("ratio", ratio)
    cut = DEPTH_UM.checked("cut_um", cut_um) * EDGE_GAIN.checked("gain", gain)
    return _above(edge - cut, SPREAD.checked("spread", spread) * edge)


def burn_probability(film_um: float, spread: float, cut_um: float, gain: float, ratio: float, taped: bool) -> float:
    """The larger of `burn_in_field` and, unless the edge is ``taped``, `burn_at_edge`, 0 to 1. Their ranges.

    >>> round(burn_probability(45.0, 0.1, 12.0, 2.5, 0.75, taped=False), 3)
    0.133
    >>> burn_probability(45.0, 0.1, 12.0, 2.5, 0.75, taped=True) < 0.0001
    True
    """
    field = burn_in_field(film_um, spread, cut_um)
    return field if taped else max(field, burn_at_edge(film_um, spread, cut_um, gain, ratio))


def cut_at_chance_um(film_um: float, spread: float, chance: float) -> float:
    """The cut, µm and never below 0, at which a film of this mean and spread is gone with this ``chance``.

    ``chance`` 0.0001 to 0.4999, ranges as `burn_in_field`; at an edge give that edge's film and divide by its gain.

    >>> round(cut_at_chance_um(0.75 * 45.0, 0.1, 0.02) / 2.5, 1)
    10.7
    """
    film = MEAN_UM.checked("film_um", film_um)
    below = NormalDist().inv_cdf(SHARE.checked("chance", chance))
    return max(0.0, film * (1 + SPREAD.checked("spread", spread) * below))


def _above(distance: float, deviation: float) -> float:
    """Share of a normal spread of this deviation that lies further than ``distance`` above its mean."""
    steps = distance / deviation if deviation > 0 else (inf if distance >= 0 else -inf)
    return erfc(steps / sqrt(2)) / 2
