"""Abrasives: the grain of the standard, and the scratches of the training model."""

import pytest

from courses.trade.abrasives import (
    D50_UM,
    EXTRAPOLATED,
    d50_um,
    grain_ratio,
    grit,
    nearest_grade,
    sanding_k,
    scratch_um,
    stray_um,
)
from courses.trade.errors import ImpossibleChoice, OutOfRange
from tests.courses.trade.model import constants


@pytest.mark.parametrize(
    ("grade", "grain"),
    [("P240", 58.5), ("P600", 25.8), ("P1000", 18.3), ("P1500", 12.6), ("P2000", 10.3), ("P2500", 8.4)],
)
def test_grain_is_that_of_the_standard(grade: str, grain: float) -> None:
    """ISO 6344-3 as grit tables print it; P1500 and finer are the figures from before 2021."""
    assert d50_um(grade) == grain


def test_what_is_extrapolated_follows_20_800_over_the_grade() -> None:
    assert {grade: d50_um(grade) for grade in EXTRAPOLATED} == {
        grade: pytest.approx(20_800 / grit(grade), abs=0.06) for grade in EXTRAPOLATED
    }


def test_a_higher_number_is_a_finer_grain() -> None:
    grades = sorted(D50_UM, key=grit)
    assert [D50_UM[grade] for grade in grades] == sorted(D50_UM.values(), reverse=True)


@pytest.mark.parametrize(
    ("coarse", "fine", "ratio"),
    [
        ("P600", "P1000", 1.41),
        ("P1500", "P2000", 1.22),
        ("P2000", "P3000", 1.49),
        ("P1000", "P2000", 1.78),
        ("P800", "P1500", 1.73),
        ("P1000", "P3000", 2.65),
    ],
)
def test_ratios_of_the_fact_sheet(coarse: str, fine: str, ratio: float) -> None:
    assert grain_ratio(coarse, fine) == pytest.approx(ratio, abs=0.005)


@pytest.mark.parametrize("grade", D50_UM)
def test_a_grain_has_its_own_grade(grade: str) -> None:
    assert nearest_grade(d50_um(grade)) == grade


@pytest.mark.parametrize(
    ("grade", "said"),
    [("P1499", "P1500 or P1200"), ("1500", "did you mean P1500"), ("fine", "P80"), ("P150o", "did you mean P150")],
)
def test_a_grade_that_does_not_exist_is_refused_with_a_near_one(grade: str, said: str) -> None:
    with pytest.raises(ImpossibleChoice, match=said):
        d50_um(grade)


@pytest.mark.parametrize(
    ("grade", "mean", "stray"),
    [
        ("P320", 9.15, 15.6),
        ("P600", 4.29, 7.3),
        ("P800", 3.45, 5.9),
        ("P1000", 2.75, 4.7),
        ("P1500", 1.69, 2.9),
        ("P2000", 1.30, 2.2),
        ("P3000", 0.77, 1.3),
    ],
)
def test_scratches_of_the_fact_sheet(grade: str, mean: float, stray: float) -> None:
    law = constants().sanding
    args = (d50_um(grade), law.rz_um, law.rz_exponent, law.reference_um)
    assert scratch_um(*args) == pytest.approx(mean, abs=0.01)
    assert stray_um(*args, constants().pads["disc"].stray) == pytest.approx(stray, abs=0.05)


def test_paper_of_the_reference_grain_has_the_reference_k() -> None:
    law = constants().sanding
    assert sanding_k(18.3, law.k, law.k_exponent, law.reference_um) == pytest.approx(law.k)


@pytest.mark.parametrize(("grain", "reference"), [(0.0, 18.3), (300.0, 18.3), (18.3, 0.0)])
def test_a_grain_beyond_the_law_is_refused(grain: float, reference: float) -> None:
    with pytest.raises(OutOfRange):
        scratch_um(grain, 2.745, 1.3, reference)
