"""The finders of the lessons on planning: grades against the trade's own table, and what no answer may say."""

import re

import pytest

from courses.trade.abrasives import D50_UM
from tests.courses.content.reading import FINDERS, SOURCES
from tests.courses.content.test_inspect_finders import all_rows, said


@pytest.mark.parametrize(("code", "combinations"), [("grade_scales", 3 * 10), ("after_the_spot", 6 * 4 * 3)])
def test_every_combination_has_a_row_whose_mark_is_that_of_its_source(code: str, combinations: int) -> None:
    rows = all_rows(FINDERS[code])
    assert len(rows) == combinations
    assert all(SOURCES[row.source].mark == row.mark for row in rows.values())


@pytest.mark.parametrize("number", [400, 500, 600, 800, 1000, 1200, 1500, 2000, 2500, 3000])
def test_a_p_grade_is_looked_up_with_the_steps_that_its_grain_allows(number: int) -> None:
    grain = D50_UM[f"P{number}"]
    assert said("grade_scales", "grain", scale="p", number=f"n{number}").startswith(f"{grain}&nbsp;µm")
    for column, most in (("easy", 1.5), ("limit", 2.0)):
        told = said("grade_scales", column, scale="p", number=f"n{number}")
        grade, ratio = re.findall(r"P\d+|\d\.\d\d", told)[:2]
        assert float(ratio) == pytest.approx(grain / D50_UM[grade], abs=0.006)
        allowed = [each for each, d50 in D50_UM.items() if d50 < grain and grain / d50 <= most + 1e-9]
        assert D50_UM[grade] == min(D50_UM[each] for each in allowed), "the finest that may follow"


# Grit tables and guidance on abrasives, two pages: the American series beside P grades.
@pytest.mark.parametrize(("number", "as_"), [(400, "P800."), (600, "P1200."), (800, "P1500."), (1000, "P2000.")])
def test_without_a_p_the_number_stands_for_a_finer_grade(number: int, as_: str) -> None:
    assert said("grade_scales", "counts_as", scale="plain", number=f"n{number}") == as_


def test_a_film_disc_is_never_given_a_grain() -> None:
    for number in FINDERS["grade_scales"].choices[1].ids:
        assert "µm" not in said("grade_scales", "grain", scale="film", number=number)


def test_no_next_try_without_a_reading_and_no_paper_on_clear_coat() -> None:
    for spot, left, film in all_rows(FINDERS["after_the_spot"]):
        next_try = said("after_the_spot", "next", spot=spot, left=left, film=film)
        if film == "unknown":
            assert next_try.startswith("None. Read the layer")
        if film == "clear":
            assert not re.search(r"P\d{3,4}", next_try)


def test_paper_comes_only_where_three_sets_or_a_heavy_one_left_half() -> None:
    papered = {
        (spot, left)
        for spot, left, film in all_rows(FINDERS["after_the_spot"])
        if re.search(r"P1\d{3} ×", said("after_the_spot", "next", spot=spot, left=left, film=film))
    }
    assert papered == {("heavy", "most"), ("polish", "most"), ("paper", "some"), ("paper", "most")}
