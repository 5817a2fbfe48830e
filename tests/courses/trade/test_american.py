"""The American series against two published figures and the P grades beside it."""

import pytest

from courses.trade.abrasives import nearest_grade
from courses.trade.american import AMERICAN_D50_UM, american_d50_um
from courses.trade.errors import ImpossibleChoice


# Guidance on abrasives, trade page 34: 400 is 23.6 µm, 600 is 16 µm; the rest as two grit tables print them.
@pytest.mark.parametrize(("number", "grain_um"), [("400", 23.6), ("600", 16.0), ("220", 68.0), ("1000", 10.3)])
def test_a_number_without_a_p_has_its_own_grain(number: str, grain_um: float) -> None:
    assert american_d50_um(number) == grain_um


def test_the_same_number_with_a_p_is_coarser_from_320_up() -> None:
    same = [number for number in AMERICAN_D50_UM if nearest_grade(AMERICAN_D50_UM[number]) == f"P{number}"]
    assert same == ["80", "120", "180", "220"]


def test_the_table_runs_from_coarse_to_fine() -> None:
    assert list(AMERICAN_D50_UM.values()) == sorted(AMERICAN_D50_UM.values(), reverse=True)


def test_an_unknown_number_is_refused_with_the_nearest() -> None:
    with pytest.raises(ImpossibleChoice) as refusal:
        american_d50_um("60")
    assert str(refusal.value) == "american: No American grit is called '60'; did you mean 600 or 360?"
