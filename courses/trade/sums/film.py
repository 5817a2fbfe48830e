"""The sums of hull areas and of coating: by named formulas, with the loss that is meant, in whole packs."""

from __future__ import annotations

from courses.trade import film
from courses.trade.errors import MissingInput
from courses.trade.film import FORMULAS, Hull, Packs
from courses.trade.ranges import Range
from courses.trade.sums.shape import Input, Note, Output, Quantity, Sum, Worked
from courses.trade.units import rounded

_CODES = tuple(FORMULAS)
_WORDS = tuple(formula.words for formula in FORMULAS.values())
_DOUBT_OF_AREA = 0.1
"""Plan and sides are no rectangles: the margin of 10 to 20 % that guides ask for says how far it may be off."""

_OTHER = Note("Another guide has {other} for the same part. Name the formula wherever you write the area.")
_RESERVE = Note("T1 takes the plan for a rectangle: on a pointed bow about 14 % of reserve is built in.")
_DECK = Note("Openings come off, and all that isn’t touched: non-skid, steps, seats.")


def _hull_area(formula: str, left_out_m2: float, **dimensions: float | None) -> Worked:
    area = film.hull_area_m2(formula, Hull(**dimensions), left_out_m2)
    notes = {"T1": (_RESERVE,), "D1": (_DECK,)}.get(formula, ())
    rival = film.RIVALS.get(formula)
    if rival is not None:
        other = film.hull_area_m2(rival, Hull(**dimensions))
        notes = (Note(_OTHER.text.replace("has", f"has {rival}:", 1), (("other", Quantity(other, "m2")),)),)
    return Worked(
        {"area_m2": area, "low_m2": 1.1 * area, "high_m2": 1.2 * area},
        _DOUBT_OF_AREA * area,
        notes,
    )


_CONVENTIONS = ("L1", "L2")
_METHODS = ("C1", "C2")
_TIGHT = Note("Less than 5 % to spare: one spill stops the job. Offer one more.")
_OPENED = Note("An opened bottle of moisture-cure coating isn’t kept for another day.")
_UNSEEN = Note("No shop gauge can show a film this thin.")
_THIN_UM = 2.0
"""Below the least that a gauge reading whole micrometres can tell apart."""


def _coating_needed(
    area_m2: float,
    coats: float,
    method: str,
    substrate: str,
    dry_um: float | None,
    solids_percent: float,
    loss: str,
    loss_percent: float,
    factor: float,
    pack_ml: float,
) -> Worked:
    more = film.of_loss(loss_percent) if loss == "L1" else film.of_factor(factor)
    if method == "C1":
        need = film.coating_by_rate_ml(area_m2, coats, substrate)
    elif dry_um is None:
        raise MissingInput("C2 goes by the film it shall leave; give a value such as 0.8 µm.", "dry_um")
    else:
        need = film.coating_by_film_ml(area_m2, coats, dry_um, solids_percent, more)
    packs = film.whole_packs(rounded(need, 1), pack_ml)
    wet = need / area_m2 / coats
    dry = film.dry_film_um(wet / more, solids_percent)
    figures = {
        "need_ml": need,
        "packs": float(packs.count),
        "spare_ml": packs.spare_ml,
        "slack_percent": packs.slack_percent,
        "wet_um": wet,
        "left_um": dry,
    }
    return Worked(figures, _DOUBT_OF_AREA * need, _notes(loss, loss_percent, factor, packs, dry))


def _notes(loss: str, loss_percent: float, factor: float, packs: Packs, dry_um: float) -> tuple[Note, ...]:
    said = f"Loss {loss_percent:g} % is ÷ {1 - loss_percent / 100:.2f}" if loss == "L1" else f"A factor is × {factor:g}"
    named = Note(f"{said} ({loss}). A loss of 30 % and a factor of 1.3 are 9 % apart: say which you mean.")
    tight = (_TIGHT,) if packs.tight else ()
    return (named, *tight, _OPENED, *((_UNSEEN,) if dry_um < _THIN_UM else ()))


FILM_SUMS = (
    Sum(
        "hull_area",
        "Area of a hull",
        "Topsides, deck or bottom from the main dimensions, by the formula you name.",
        (
            Input("formula", "Formula", default="T1", choices=_CODES, words=_WORDS),
            Input.over(film.LENGTH_M, "loa_m", "Length over all, LOA", optional=True),
            Input.over(film.LENGTH_M, "lwl_m", "Length on the waterline, LWL", optional=True),
            Input.over(film.BEAM_M, "beam_m", "Widest beam, B", optional=True),
            Input.over(film.DEPTH_M, "draft_m", "Draft to the keel’s base, D", optional=True),
            Input.over(film.DEPTH_M, "freeboard_m", "Mean freeboard, F", optional=True),
            Input.over(film.LEFT_OUT_M2, "left_out_m2", "Openings and what is left out", 0.0),
        ),
        (
            Output("area_m2", "Area", "m2", 2),
            Output("low_m2", "With 10 % of margin", "m2", 2),
            Output("high_m2", "With 20 % of margin", "m2", 2),
        ),
        "T1 = 2 × (LOA + B) × F, D1 = 0.75 × LOA × B, bottom = k × LWL × (B + D)",
        "yacht-paint-guides",
        "read",
        Note("Guides differ by 15 to 20 % for one hull, and add 10 to 20 % of margin; count on ±{doubt} at least."),
        _hull_area,
    ),
    Sum(
        "coating_needed",
        "Coating for an area",
        "How much a coating job takes, by the planning rate or by the film it shall leave, and how many packs.",
        (
            Input.over(film.AREA_M2, "area_m2", "Area"),
            Input.over(Range(*film.COATS, "ratio"), "coats", "Coats", 1.0),
            Input(
                "method",
                "How it is planned",
                default="C1",
                choices=_METHODS,
                words=("C1 planning rate", "C2 by the film it shall leave"),
            ),
            Input(
                "substrate",
                "Surface, for C1",
                default="gel_coat",
                choices=tuple(film.RATE_ML_M2),
                words=("gel coat, 2.5 mL/m²", "clear coat, 1.2 mL/m²"),
            ),
            Input.over(film.DRY_UM, "dry_um", "Dry film of a coat, for C2", optional=True),
            Input.over(film.SOLIDS_PERCENT, "solids_percent", "Volume solids", 35.0),
            Input(
                "loss",
                "Loss is meant as",
                default="L1",
                choices=_CONVENTIONS,
                words=("L1 a share that goes, ÷ (1 − loss)", "L2 a factor to multiply by"),
            ),
            Input.over(film.LOSS_PERCENT, "loss_percent", "Loss, for L1", 30.0),
            Input.over(film.FACTOR, "factor", "Factor, for L2", 1.3),
            Input.over(film.PACK_ML, "pack_ml", "Size of a pack", 50.0),
        ),
        (
            Output("need_ml", "Needed", "ml", 1),
            Output("packs", "Packs", "ratio", 0, page_decimals=0),
            Output("spare_ml", "Left over", "ml", 1),
            Output("slack_percent", "Left over, of what is bought", "percent", 1, page_decimals=1),
            Output("wet_um", "Wet film of a coat before loss", "um", 2, page_decimals=2),
            Output("left_um", "Dry film of a coat", "um", 2, page_decimals=2),
        ),
        "C1 = rate × A × coats + 3 mL; C2 = A × coats × DFT ÷ (10 × VS) × 1000 × loss",
        "paint-coverage-notes",
        "read",
        Note(
            "The area alone is known to a tenth, so this is too: ±{doubt}. Rate and first section are common practice."
        ),
        _coating_needed,
    ),
)
