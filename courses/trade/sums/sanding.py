"""The sum of sanding an area with one grade: cut, deepest line, time and discs."""

from __future__ import annotations

from courses.trade import abrasives, estimate, film, removal
from courses.trade.abrasives import D50_UM
from courses.trade.sums import cuts as shop
from courses.trade.sums.shape import Input, Note, Output, Quantity, Sum, Worked

_APART_MIN, _TIME_DOUBT = 4.8, 0.25
_SECTION_M2 = 1.44
_PAPERS = tuple(name for name, cut in shop.CUTS.items() if cut.is_paper)


def _sanding(grade: str, passes: float, area_m2: float, section_m2: float, apart_min: float) -> Worked:
    used, law = shop.usual(grade, "sander"), shop.SANDING
    pad_m = shop.MOVERS[used.machine].pad_m
    stripe = removal.stripe_m(pad_m, 0.5)
    slip = shop.slip_mps(used.machine, pad_m, used.speed_rpm)
    one = removal.pass_removal_um(shop.CUTS[grade].k / shop.TERA, used.force_n, slip, used.arm_mps, stripe)
    minutes = passes * removal.pass_min_m2(used.arm_mps, stripe, shop.ON_PANEL) + apart_min
    job = estimate.Job(area_m2, section_m2, grades=(estimate.Grade(grade, 1),))
    return Worked(
        {
            "hours_h": area_m2 * minutes / 60,
            "discs": estimate.discs(job),
            "discs_by_area": area_m2 / estimate.DISC_M2,
            "removed_um": passes * one,
            "stray_um": abrasives.stray_um(
                *(D50_UM[grade], law.rz_um, law.rz_exponent, law.reference_um), shop.BACKINGS["disc"].stray
            ),
        },
        area_m2 * minutes / 60 * _TIME_DOUBT,
        (_ROUNDED_UP, _STOP),
    )


_ROUNDED_UP = Note(
    "A disc does {area} and isn’t carried into the next section: sections and discs are each rounded up.",
    (("area", Quantity(estimate.DISC_M2, "m2", 2)),),
)
_STOP = Note("Stop when only this grade’s own lines are left: more passes cost film and change nothing.")

SANDING_SUMS = (
    Sum(
        "sanding",
        "Sanding an area with one grade",
        "Time, discs, cut and the deepest line that is left, for one grade by machine, in sections.",
        (
            Input("grade", "Grade", default="P1500", choices=_PAPERS),
            Input.over(shop.PASSES, "passes", "Passes", 4.0),
            Input.over(film.AREA_M2, "area_m2", "Area"),
            Input.over(estimate.SECTION_M2, "section_m2", "Section", _SECTION_M2),
            Input("apart_min", "Drying and looking, 1 m²", "min", 0.0, 60.0, _APART_MIN),
        ),
        (
            Output("hours_h", "Time", "h", 2, page_decimals=2),
            Output("discs", "Discs of 150 mm", "ratio", 0, page_decimals=0),
            Output("discs_by_area", "By area alone", "ratio", 1, page_decimals=1),
            Output("removed_um", "Cut", "um", 2, model=True),
            Output("stray_um", "Deepest line left", "um", 2, model=True),
        ),
        "time = area·(passes·2.28 + drying and looking) ÷ 60; discs = ⌈area ÷ section⌉·⌈section ÷ 0.75⌉",
        "model",
        "model",
        Note("Shops need 0.20 to 0.35 h for 1 m² of a grade; a quarter either way is ±{doubt}."),
        _sanding,
    ),
)
