"""The sums of what is left: film to spend, the chance of going through, oxidation, and marks that go deeper."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from courses.trade import leftover
from courses.trade.sums.cuts import EDGE_GAIN, EDGE_RATIO
from courses.trade.sums.shape import Input, Note, Output, Quantity, Sum, Worked
from courses.trade.units import rounded

_HUNDRED = 100.0
_BURN_LIMIT = 0.02
_FILM_DOUBT = 0.05
_SPREAD_OF_LAYER = 0.25
_SPREAD_OF_MARKS = 1.3
_DEPTH_DOUBT = 0.10
_READING_UM = 10.0
_DEEPEST_UM = 2000.0


@dataclass(frozen=True, slots=True)
class Skin:
    """A kind of film: what must stay, what one job may take (µm), and how unevenly it lies."""

    words: str
    reserve_um: float
    budget_um: float
    spread: float


SKINS: Mapping[str, Skin] = MappingProxyType(
    {
        "gel_coat": Skin("Gel coat", 250.0, 60.0, 0.15),
        "topcoat_2k": Skin("Two-pack topcoat", 50.0, 5.0, 0.1),
        "clear_coat": Skin("Clear coat", 30.0, 8.0, 0.08),
    }
)
"""What a calculator opens with; a test holds it against the shipped tables."""

_SKIN = Input(
    "substrate",
    "Film",
    default="gel_coat",
    choices=tuple(SKINS),
    words=tuple(skin.words for skin in SKINS.values()),
)
_FILM = Input("film_um", "Film before, as read", "um", 1.0, 5000.0)
_CUT = Input("cut_um", "Cut planned, all steps", "um", 0.0, 5000.0)
_GAIN = Input.over(leftover.EDGE_GAIN, "edge_gain", "Wear at a bare edge ÷ field", EDGE_GAIN)
_RATIO = Input.over(leftover.EDGE_RATIO, "edge_ratio", "Film at the edge ÷ field", EDGE_RATIO)

_THROUGH = Note("That is more than the whole film: it goes through, and what is less than nothing is what is missing.")
_EATS_RESERVE = Note("It eats into the reserve: plan less, or refer.")
_OVER_BUDGET = Note("It is more than one job may take.")
_THROUGH_AT_EDGE = Note("At a bare edge this cut goes through. Tape it, and by hand only.")
_GAUGE = Note(
    "A reading is a range: take its low end. Gel coat by ultrasound is ±{least} at least.",
    (("least", Quantity(_READING_UM, "um", 0)),),
)
_MODEL_UM = Note("Depths are model micrometres.")


def _film_left(
    film_um: float,
    cut_um: float,
    substrate: str,
    reserve_um: float | None,
    budget_um: float | None,
    reading_um: float,
    edge_gain: float,
    edge_ratio: float,
) -> Worked:
    skin = SKINS[substrate]
    left = film_um - cut_um
    above = left - (skin.reserve_um if reserve_um is None else reserve_um)
    budget = (skin.budget_um if budget_um is None else budget_um) - cut_um
    edge = edge_ratio * film_um - edge_gain * cut_um
    warnings = (
        (left <= 0, _THROUGH),
        (left > 0 > above - reading_um, _EATS_RESERVE),
        (budget < 0, _OVER_BUDGET),
        (edge <= 0 < left, _THROUGH_AT_EDGE),
    )
    return Worked(
        {
            "film_left_um": left,
            "above_reserve_um": above,
            "budget_left_um": budget,
            "edge_cut_um": edge_gain * cut_um,
            "edge_left_um": edge,
        },
        reading_um,
        (*(note for wrong, note in warnings if wrong), _GAUGE),
    )


def _burn_probability(
    film_um: float,
    cut_um: float,
    substrate: str,
    taped: str,
    spread: float | None,
    edge_gain: float,
    edge_ratio: float,
) -> Worked:
    uneven = SKINS[substrate].spread if spread is None else spread
    edge = (edge_gain, edge_ratio)
    chance = leftover.burn_probability(film_um, uneven, cut_um, *edge, taped == "yes")
    thinner = leftover.burn_probability(film_um * (1 - _FILM_DOUBT), uneven, cut_um, *edge, taped == "yes")
    at_limit = leftover.cut_at_chance_um(film_um * edge_ratio, uneven, _BURN_LIMIT) / edge_gain
    in_field = leftover.cut_at_chance_um(film_um, uneven, _BURN_LIMIT)
    return Worked(
        {
            "burn_percent": chance * _HUNDRED,
            "field_percent": leftover.burn_in_field(film_um, uneven, cut_um) * _HUNDRED,
            "edge_percent": leftover.burn_at_edge(film_um, uneven, cut_um, *edge) * _HUNDRED,
            "most_cut_um": in_field if taped == "yes" else min(at_limit, in_field),
        },
        abs(thinner - chance) * _HUNDRED,
        (_OVER_LIMIT if rounded(chance, 4) > _BURN_LIMIT else _UNDER_LIMIT,),
    )


_LIMIT = (("limit", Quantity(_BURN_LIMIT * _HUNDRED, "percent", 0)),)
_OVER_LIMIT = Note("Over {limit}: our simulator calls that a harm.", _LIMIT)
_UNDER_LIMIT = Note("Up to {limit}: inside our simulator’s limit. Spare the film all the same.", _LIMIT)


def _oxidation_left(layer_um: float, removed_um: float, spread: float) -> Worked:
    left = leftover.share_oxidised(removed_um, layer_um, spread)
    deeper = leftover.share_oxidised(removed_um, layer_um * (1 + _DEPTH_DOUBT), spread)
    reaches = leftover.layer_to_um(layer_um, spread)
    return Worked(
        {
            "left_percent": left * _HUNDRED,
            "cut_for_95_um": reaches,
            "still_to_cut_um": max(0.0, reaches - removed_um),
        },
        (deeper - left) * _HUNDRED,
        (_MODEL_UM, Note("A layer goes with the film: what counts is film taken off, not depth gained.")),
    )


def _share_deeper(median_um: float, gsd: float, depth_um: float) -> Worked:
    share = leftover.share_deeper(depth_um, median_um, gsd)
    deeper = leftover.share_deeper(depth_um, median_um * (1 + _DEPTH_DOUBT), gsd)
    return Worked(
        {"deeper_percent": share * _HUNDRED, "d95_um": leftover.d95_um(median_um, gsd)},
        (deeper - share) * _HUNDRED,
        (_MODEL_UM, Note("Level to the depth that 95 of 100 don’t reach, and refer the odd one that is left.")),
    )


LEFTOVER_SUMS = (
    Sum(
        "film_left",
        "Film left",
        "What a plan leaves of the film: over the reserve, under the budget, and at a bare edge.",
        (
            _FILM,
            _CUT,
            _SKIN,
            Input("reserve_um", "Reserve, if not the usual", "um", 0.0, 5000.0, optional=True),
            Input("budget_um", "Budget, if not the usual", "um", 0.0, 5000.0, optional=True),
            Input("reading_um", "Doubt of the reading", "um", 0.0, 200.0, _READING_UM),
            _GAIN,
            _RATIO,
        ),
        (
            Output("film_left_um", "Film left", "um", 1, ("film_um", "cut_um")),
            Output("above_reserve_um", "Above the reserve", "um", 1),
            Output("budget_left_um", "Left of the budget", "um", 1),
            Output("edge_cut_um", "Cut at a bare edge", "um", 1),
            Output("edge_left_um", "Left at a bare edge", "um", 1),
        ),
        "left = film − cut; at a bare edge 0.75·film − 2.5·cut. Usual: gel coat 250 and 60, clear coat 30 and 8 µm",
        "practice",
        "practice",
        Note("The reading alone leaves ±{doubt}; the cut comes on top."),
        _film_left,
    ),
    Sum(
        "burn_probability",
        "Chance of going through",
        "How likely this cut goes through the film somewhere: in the field, and at an edge without tape.",
        (
            Input("film_um", "Film, mean of the field", "um", 1.0, 5000.0),
            _CUT,
            Input(_SKIN.name, _SKIN.title, default="clear_coat", choices=_SKIN.choices, words=_SKIN.words),
            Input("taped", "Edges taped", default="no", choices=("no", "yes"), words=("No", "Yes")),
            Input.over(leftover.SPREAD, "spread", "Spread ÷ mean, if gauged", optional=True),
            _GAIN,
            _RATIO,
        ),
        (
            Output("burn_percent", "Chance", "percent", 2, page_decimals=1),
            Output("field_percent", "In the field", "percent", 2, page_decimals=1),
            Output("edge_percent", "At a bare edge", "percent", 2, page_decimals=1),
            Output("most_cut_um", "Cut at which it is 2 %", "um", 1),
        ),
        "field Φ((cut − film) ÷ sd); bare edge Φ((2.5·cut − 0.75·film) ÷ (0.75·sd)); the larger counts",
        "model",
        "model",
        Note("A film 5 % thinner than read adds {doubt}."),
        _burn_probability,
    ),
    Sum(
        "oxidation_left",
        "Oxidation left",
        "How much of the area is still oxidised once so much film has gone.",
        (
            Input("layer_um", "Depth of the layer, mean", "um", leftover.MEAN_UM.low, _DEEPEST_UM, model=True),
            Input("removed_um", "Film taken off", "um", 0.0, 5000.0, model=True),
            Input.over(leftover.SPREAD, "spread", "Spread ÷ mean of the depth", _SPREAD_OF_LAYER),
        ),
        (
            Output("left_percent", "Area still oxidised", "percent", 1, page_decimals=1),
            Output("cut_for_95_um", "Cut that leaves 5 %", "um", 1, model=True),
            Output("still_to_cut_um", "Still to cut for that", "um", 1, model=True),
        ),
        "left = 1 − Φ((removed − layer) ÷ (spread·layer))",
        "model",
        "model",
        Note("A layer 10 % deeper than you think leaves {doubt} more."),
        _oxidation_left,
    ),
    Sum(
        "share_deeper",
        "Marks that go deeper",
        "Of marks with this median depth, the share that goes deeper than you level.",
        (
            Input("median_um", "Median depth of the marks", "um", leftover.MEAN_UM.low, _DEEPEST_UM, model=True),
            Input("depth_um", "Depth you level to", "um", leftover.DEPTH_UM.low, leftover.DEPTH_UM.high, model=True),
            Input.over(leftover.GSD, "gsd", "Geometric spread of the depths", _SPREAD_OF_MARKS),
        ),
        (
            Output("deeper_percent", "Share that goes deeper", "percent", 1, page_decimals=1),
            Output("d95_um", "Depth that 95 of 100 don’t reach", "um", 2, model=True),
        ),
        "share = 1 − Φ(ln(depth ÷ median) ÷ ln spread); D95 = median·spread^1.645",
        "model",
        "model",
        Note("A median 10 % deeper than you think leaves {doubt} more."),
        _share_deeper,
    ),
)
