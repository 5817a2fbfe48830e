"""The sums of grain: their figures against printed tables, and what they say of a step."""

import pytest

from courses.trade.abrasives import D50_UM
from courses.trade.errors import ImpossibleChoice, MissingInput
from courses.trade.sums import work_out
from courses.trade.sums.cuts import GRADES
from courses.trade.units import Preferences


def notes(name: str, **inputs: object) -> list[str]:
    return [str(note) for note in work_out(name, inputs).notes]


# Ratios of the published medians; up to 1.5 comfortable, up to 2 the limit: common practice, no source.
@pytest.mark.parametrize(
    ("first", "second", "ratio", "verdict"),
    [
        ("P600", "P1000", 1.41, "comfortable"),
        ("P1000", "P1500", 1.45, "comfortable"),
        ("P1500", "P2000", 1.22, "comfortable"),
        ("P1000", "P2000", 1.78, "the limit"),
        ("P800", "P1500", 1.73, "the limit"),
        ("P800", "P2000", 2.12, "too big a step"),
        ("P1000", "P3000", 2.65, "too big a step"),
        ("P1500", "P1000", 0.69, "step back"),
    ],
)
def test_a_step_is_judged_against_both_limits(first: str, second: str, ratio: float, verdict: str) -> None:
    result = work_out("grain_ratio", {"from_grade": first, "to_grade": second})
    assert result.value == pytest.approx(ratio, abs=0.006)
    assert verdict in str(result.notes[0])
    assert [one.value for one in result.also] == [D50_UM[first], D50_UM[second]]


def test_the_farthest_step_within_two_is_offered() -> None:
    assert notes("grain_ratio", from_grade="P800", to_grade="P2000")[1] == (
        "The finest grade after P800 within 2 is P1500."
    )
    assert notes("grain_ratio", from_grade="P5000", to_grade="P5000")[1] == (
        "Nothing finer than P5000 stands in the table."
    )


def test_extrapolated_grades_say_so() -> None:
    said = "Grades from P3000 are extrapolated here: don’t rest anything on their decimals."
    assert said in notes("grain_ratio", from_grade="P2000", to_grade="P3000")
    assert said in notes("scratch_depth", grade="P4000")
    assert said in notes("nearest_grade", d50_um=5.0)
    assert said not in notes("grain_ratio", from_grade="P1000", to_grade="P1500")


def test_a_step_is_known_as_well_as_the_lots_are() -> None:
    """Grain of a lot typically 9 % off (trade page 34), of both grades together √2 times that."""
    assert work_out("grain_ratio", {}).doubt == pytest.approx(1.452 * 0.09 * 2**0.5, abs=1e-4)


@pytest.mark.parametrize(
    ("asked", "figures"),
    [
        ({"american": "600"}, [1200, 16.0, 15.3, 1000, 1500]),
        ({"american": "400"}, [800, 23.6, 21.8, 600, 1000]),
        ({"d50_um": "12 um"}, [1500, 12.0, 12.6, 1200, 2000]),
        ({"d50_um": 240}, [80, 240.0, 201.0, 80, 100]),
        ({"d50_um": 0.5}, [5000, 0.5, 4.2, 4000, 5000]),
    ],
)
def test_the_nearest_grade_stands_between_its_neighbours(asked: dict[str, object], figures: list[float]) -> None:
    result = work_out("nearest_grade", asked)
    assert [one.value for one in (result.output, *result.also)] == figures


def test_a_false_friend_is_named() -> None:
    assert notes("nearest_grade", american="600") == [
        "A sheet marked 600 without a P is nearest to P1200, not to P600."
    ]
    assert notes("nearest_grade", american="220") == []


def test_one_of_two_has_to_be_given() -> None:
    with pytest.raises(MissingInput, match="Give the grain"):
        work_out("nearest_grade", {})
    with pytest.raises(ImpossibleChoice, match="not both"):
        work_out("nearest_grade", {"d50_um": 16, "american": "600"})


# The model's table of scratches; a soft pad leaves 0.7 of them, its strays 1.4 times the mean.
@pytest.mark.parametrize(
    ("grade", "mean_um", "stray_um", "part"),
    [
        ("P320", 9.15, 15.6, 5.0),
        ("P600", 4.29, 7.3, 6.0),
        ("P800", 3.45, 5.9, 6.3),
        ("P1000", 2.75, 4.7, 6.7),
        ("P1500", 1.69, 2.9, 7.5),
        ("P2000", 1.30, 2.2, 7.9),
        ("P3000", 0.77, 1.3, 9.0),
    ],
)
def test_a_grade_leaves_its_scratches(grade: str, mean_um: float, stray_um: float, part: float) -> None:
    result = work_out("scratch_depth", {"grade": grade})
    figures = [one.value for one in (result.output, *result.also)]
    assert figures[0] == pytest.approx(mean_um, abs=0.006)
    assert figures[1] == pytest.approx(stray_um, abs=0.051)
    assert figures[3] == pytest.approx(part, abs=0.11)
    soft = work_out("scratch_depth", {"grade": grade, "backing": "disc_soft"})
    assert soft.value == pytest.approx(0.7 * mean_um, abs=0.011)
    assert soft.also[0].value == pytest.approx(0.98 * mean_um, abs=0.011)


def test_a_school_puts_its_own_scratches_in() -> None:
    result = work_out("scratch_depth", {"grade": "P1000", "rz_um": 3.0, "stray": 2.0})
    assert (result.value, result.also[0].value) == (3.0, 6.0)


def test_every_grade_of_the_table_can_be_chosen() -> None:
    for grade in GRADES:
        said = work_out("scratch_depth", {"grade": grade}).shown(Preferences.us())
        assert said.inputs[0].text == grade
        assert said.inputs[1].text == "Hard disc"
        assert said.output.text.endswith("model\xa0µm")
        assert said.also[1].text.endswith("mil"), "grain is a real length"
