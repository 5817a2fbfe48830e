"""The sums of grain: how far apart two grades are, which P grade a sheet is, and the scratches it leaves."""

from __future__ import annotations

from math import hypot

from courses.trade import abrasives
from courses.trade.abrasives import D50_UM, EXTRAPOLATED, RATIO_EASY, RATIO_LIMIT
from courses.trade.american import AMERICAN_D50_UM, american_d50_um
from courses.trade.errors import ImpossibleChoice, MissingInput
from courses.trade.sums.cuts import BACKINGS, GRADES, SANDING
from courses.trade.sums.shape import Input, Note, Output, Quantity, Sum, Worked
from courses.trade.units import rounded

_LOT = 0.09
"""How far the grain of one lot may be off its grade: typical by the grit tables."""
_K_DOUBT = 0.30

_LOTS = (("lot", Quantity(_LOT * 100, "percent", 0)),)
_MODEL_UM = Note("Depths are model micrometres: good for comparing, not for quoting.")
_GUESSED = Note("Grades from P3000 are extrapolated here: don’t rest anything on their decimals.")
_EASY = Note("At or under 1.5: a comfortable step.")
_LIMIT = Note("Over 1.5, up to 2: the limit. Allow for more passes.")
_TOO_BIG = Note("Over 2: too big a step. Put a grade between, or pay for it in passes.")
_BACKWARDS = Note("The second grade is the coarser one: that is a step back.")


def _grain_ratio(from_grade: str, to_grade: str) -> Worked:
    ratio = abrasives.grain_ratio(from_grade, to_grade)
    return Worked(
        {"grain_ratio": ratio, "from_d50_um": D50_UM[from_grade], "to_d50_um": D50_UM[to_grade]},
        ratio * hypot(_LOT, _LOT),
        (_verdict(rounded(ratio, 3)), _next_after(from_grade), *_guessed(from_grade, to_grade)),
    )


def _verdict(ratio: float) -> Note:
    if ratio < 1:
        return _BACKWARDS
    return _EASY if ratio <= RATIO_EASY else _LIMIT if ratio <= RATIO_LIMIT else _TOO_BIG


def _next_after(grade: str) -> Note:
    within = [to for to in GRADES if 1 < abrasives.grain_ratio(grade, to) <= RATIO_LIMIT]
    if not within:
        return Note(f"Nothing finer than {grade} stands in the table.")
    return Note(f"The finest grade after {grade} within 2 is {within[-1]}.")


def _guessed(*grades: str) -> tuple[Note, ...]:
    return (_GUESSED,) if set(grades) & set(EXTRAPOLATED) else ()


def _nearest_grade(d50_um: float | None, american: str | None) -> Worked:
    if d50_um is not None and american is not None:
        raise ImpossibleChoice("Give the grain or the American number, not both.", "american")
    if d50_um is None and american is None:
        raise MissingInput("Give the grain in µm, or the number of an American sheet.", "d50_um")
    grain = american_d50_um(american) if american is not None else d50_um
    assert grain is not None
    grade = abrasives.nearest_grade(grain)
    at = GRADES.index(grade)
    return Worked(
        {
            "p_number": abrasives.grit(grade),
            "grain_um": grain,
            "p_d50_um": D50_UM[grade],
            "coarser_p": abrasives.grit(GRADES[max(at - 1, 0)]),
            "finer_p": abrasives.grit(GRADES[min(at + 1, len(GRADES) - 1)]),
        },
        0.0,
        (*_false_friend(american, grade), *_guessed(grade)),
    )


def _false_friend(american: str | None, grade: str) -> tuple[Note, ...]:
    if american is None or f"P{american}" == grade:
        return ()
    return (Note(f"A sheet marked {american} without a P is nearest to {grade}, not to P{american}."),)


def _scratch_depth(grade: str, backing: str, rz_um: float, stray: float | None) -> Worked:
    behind = BACKINGS[backing]
    law = (D50_UM[grade], rz_um * behind.rz_share, SANDING.rz_exponent, SANDING.reference_um)
    depth = abrasives.scratch_um(*law)
    return Worked(
        {
            "scratch_um": depth,
            "stray_um": abrasives.stray_um(*law, behind.stray if stray is None else stray),
            "d50_um": D50_UM[grade],
            "grain_over_scratch": D50_UM[grade] / depth,
        },
        depth * _K_DOUBT,
        (_MODEL_UM, *_guessed(grade)),
    )


_PAPER_BACKINGS = ("disc", "disc_soft", "block")

GRADE_SUMS = (
    Sum(
        "grain_ratio",
        "Step between two grades",
        "How many times finer the second grade is, and whether that is a step or a jump.",
        (
            Input("from_grade", "From", default="P1000", choices=GRADES),
            Input("to_grade", "To", default="P1500", choices=GRADES),
        ),
        (
            Output("grain_ratio", "Times finer", "ratio", 3, page_decimals=2),
            Output("from_d50_um", "Grain of the first", "um", 1),
            Output("to_d50_um", "Grain of the second", "um", 1),
        ),
        "ratio = d50 of the first ÷ d50 of the second; up to 1.5 comfortable, up to 2 the limit",
        "grit-tables",
        "calc",
        Note("With lots {lot} off their grade the step is known to about ±{doubt}.", _LOTS),
        _grain_ratio,
    ),
    Sum(
        "nearest_grade",
        "Which P grade is it",
        "The P grade nearest to a grain, or to the number of an American sheet that carries no P.",
        (
            Input("d50_um", "Median grain", "um", abrasives.GRAIN_UM.low, abrasives.GRAIN_UM.high, optional=True),
            Input("american", "Or: number without a P", choices=tuple(AMERICAN_D50_UM), optional=True),
        ),
        (
            Output("p_number", "Nearest grade: P", "ratio", 0, page_decimals=0),
            Output("grain_um", "Grain asked for", "um", 1),
            Output("p_d50_um", "Grain of that grade", "um", 1),
            Output("coarser_p", "Next coarser: P", "ratio", 0, page_decimals=0),
            Output("finer_p", "Next finer: P", "ratio", 0, page_decimals=0),
        ),
        "the P grade whose d50 lies nearest by ratio",
        "grit-tables",
        "read",
        Note("Grain of one lot may be {lot} off its grade.", _LOTS),
        _nearest_grade,
    ),
    Sum(
        "scratch_depth",
        "Scratches that a grade leaves",
        "How deep the lines of a grade are in our training model, and how deep the deepest among them.",
        (
            Input("grade", "Grade", default="P1500", choices=GRADES),
            Input(
                "backing",
                "Behind it",
                default="disc",
                choices=_PAPER_BACKINGS,
                words=tuple(BACKINGS[one].words for one in _PAPER_BACKINGS),
            ),
            Input("rz_um", "Depth for P1000", "um", 0.1, 20.0, SANDING.rz_um, model=True),
            Input("stray", "Deepest ÷ mean, if not the model’s", "ratio", 1.0, 5.0, optional=True),
        ),
        (
            Output("scratch_um", "Mean scratch", "um", 2, model=True),
            Output("stray_um", "Deepest stray", "um", 2, model=True),
            Output("d50_um", "Grain", "um", 1),
            Output("grain_over_scratch", "Grain ÷ scratch", "ratio", 1, page_decimals=1),
        ),
        "Rz = 2.745·(d50 ÷ 18.3)^1.3; stray = 1.7·Rz; on a soft pad 0.7 of that, and 1.4 times it",
        "model",
        "model",
        Note("Our law lies between one third and one tenth of the grain; ±30 % of it is ±{doubt}."),
        _scratch_depth,
    ),
)
