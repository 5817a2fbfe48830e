"""The table of minutes against the rows that the estimating exercise prints."""

from dataclasses import replace
from itertools import pairwise

import pytest

from courses.trade.estimate import DISC_M2, PAD_M2, PASSES
from courses.trade.minutes import ROWS, minutes_of
from courses.trade.surface import PanelSurface, read_plan, simulate
from tests.courses.pictures.trade import catalogue
from tests.courses.trade.model import constants

CONSTANTS = constants()
# The exercise’s table: [model] what the sketch of the simulator returned; [practice] dry, inspect and coat.
PRINTED = {
    "wash": 1.5,
    "chem": 2.0,
    "tape": 1.5,
    "test_spot": 2.0,
    "wipe": 1.0,
    "dry": 3.0,
    "inspect": 1.8,
    "coat": 7.5,
}


def test_every_row_is_there_and_those_without_a_machine_are_as_printed() -> None:
    table = minutes_of(CONSTANTS)
    assert tuple(table) == ROWS
    assert {name: table[name] for name in PRINTED} == PRINTED


@pytest.mark.parametrize(
    ("row", "passes", "printed"),
    [("sand", 4, 9.1), ("sand", 3, 6.8), ("rotary", 3, 15.4), ("da_cut", 6, 34.2), ("da_finish", 4, 22.8)],
)
def test_passes_come_out_as_printed(row: str, passes: int, printed: float) -> None:
    assert passes * minutes_of(CONSTANTS)[row] == pytest.approx(printed, abs=0.051)
    assert row == "sand" or PASSES[row] == passes


def test_a_school_that_works_faster_quotes_less() -> None:
    brisk = replace(CONSTANTS, film=replace(CONSTANTS.film, on_panel=0.8))
    assert minutes_of(brisk)["rotary"] == pytest.approx(minutes_of(CONSTANTS)["rotary"] * 0.65 / 0.8)


def test_discs_and_pads_of_the_estimate_are_those_of_the_simulator() -> None:
    assert CONSTANTS.disc.fresh_m2 == DISC_M2
    pads = {"rotary": "wool", "da_cut": "foam_cut", "da_finish": "foam_finish"}
    for name, pad in pads.items():
        assert CONSTANTS.pads[pad].per_m2 == pytest.approx(1 / PAD_M2[name], abs=0.0005)


def test_a_plan_that_is_worked_takes_what_the_table_says() -> None:
    # the simulator's own minutes, step by step, against the rows: planning and quoting read one table
    panel = PanelSurface.of({"substrate": "gel_coat", "film_um": 500, "soiled": False}, catalogue(), CONSTANTS)
    plan = [
        {"op": op, **more}
        for op, more in (
            ("wash", {}),
            ("acid", {}),
            ("tape", {}),
            ("test_spot", {}),
            ("sand", {"grade": "P1500", "passes": 4}),
            ("dry", {}),
            ("inspect", {}),
            ("cut", {}),
            ("cut", {"machine": "da"}),
            ("finish", {}),
            ("wipe", {}),
            ("coat", {}),
        )
    ]
    clock = [state.minutes for state in simulate(panel, read_plan(plan, panel), CONSTANTS, optics="none").states]
    took = [later - before for before, later in pairwise([0.0, *clock])]
    table = minutes_of(CONSTANTS)
    rows = [
        "wash",
        "chem",
        "tape",
        "test_spot",
        "sand",
        "dry",
        "inspect",
        "rotary",
        "da_cut",
        "da_finish",
        "wipe",
        "coat",
    ]
    times = {"sand": 4, **PASSES}
    assert took == pytest.approx([times.get(row, 1) * table[row] for row in rows])
