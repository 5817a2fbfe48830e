"""Reasons in words: each names the step that did it, and one that would have saved it."""

from typing import Any

import pytest

from courses.trade.surface import Reason
from tests.courses.trade.surface.plans import (
    CLEAR,
    CRACKED,
    DA_MEDIUM,
    FINISH,
    GEL,
    HEAVY,
    HEAVY_CHALK,
    MEDIUM,
    MILD_CHALK,
    POLISH,
    SWIRL_OUT,
    SWIRLED,
    SWIRLS,
    TAPE,
    TEST,
    WASH,
    WIPE,
    Steps,
    act,
    sand,
    worked,
)

THIN = CLEAR | {"film_um": 33.0, "film_spread": 0.1, "budget_um": 9.0, "defects": [SWIRLS]}
DECAL = GEL | {"defects": [{"kind": "decal_ghost", "depth_um": 9.0}]}
CASES: dict[str, tuple[dict[str, Any], Steps, int | None, str, str]] = {
    "burn_through": (
        THIN,
        (WASH, HEAVY, HEAVY),
        3,
        "the film may be gone somewhere",
        "Tape the edges before step 3, and take less",
    ),
    "reserve": (
        THIN,
        (WASH, TAPE, HEAVY),
        3,
        "below the 30 model µm that have to stay; 29.0 are left",
        "Leave out step 3",
    ),
    "budget": (SWIRLED, (WASH, HEAVY, HEAVY, HEAVY), 4, "budget of 8 model µm; 12.0 went in all", "A milder stage"),
    "over_cut": (
        MILD_CHALK,
        (WASH, sand(320, 4), *POLISH),
        2,
        "model µm went, 10 times what the panel needed; step 2, sand P320, took most",
        "A test spot before step 2",
    ),
    "heat": (
        GEL,
        (WASH, TAPE, act("cut", speeds_rpm=[3000] * 3, force_n=100)),
        3,
        "99 °C; it softens at 71 °C",
        "Slower and lighter",
    ),
    "through": (
        CRACKED,
        (WASH, *POLISH),
        2,
        "works over a sign nobody had been told of: star cracks",
        "Refer it before step 2",
    ),
    "untold": (CRACKED, (WASH,), None, "Nobody was told of what goes through the film: star cracks", "Refer it"),
    "uncured": (GEL | {"cure": 0.5}, (WASH, FINISH), 2, "a nail still marks", "test the cure before step 2"),
    "coat_over_water": (
        GEL,
        (WASH, act("coat")),
        2,
        "seals in water, which runs out of the seams",
        "Dry, seams blown out, before step 2",
    ),
    "coat_over_residue": (
        GEL,
        (WASH, FINISH, act("dry"), act("coat")),
        4,
        "seals in oils, residue or soil",
        "wipe with solvent before step 4",
    ),
    "coat_over_uncured": (
        GEL | {"cure": 0.5, "soiled": False},
        (act("coat"),),
        1,
        "still soft",
        "test the cure before step 1",
    ),
    "trail": (SWIRLED, (WASH, TAPE, MEDIUM), 3, "leaves trails of 0.25 model µm", "finishing foam on a dual action"),
    "strays": (
        HEAVY_CHALK,
        (WASH, sand(600, 5), sand(2000, 2), MEDIUM, FINISH),
        2,
        "Step 2, sand P600, left strays that still stand 2.0",
        "2 more passes in step 3, sand P2000",
    ),
    "cutting_last": (
        SWIRLED,
        (WASH, TAPE, HEAVY),
        3,
        "is the last: it leaves strays of 0.41",
        "A finer stage after step 3",
    ),
    "oxidised": (
        GEL | {"oxidation_um": 8.5},
        (WASH, *POLISH),
        6,
        "66 % of the area is still oxidised",
        "takes 4 model µm more",
    ),
    "uncorrected": (
        SWIRLED,
        (WASH, TAPE, TEST, FINISH),
        4,
        "most of what is left: swirl marks",
        "A stage that reaches as deep",
    ),
    "gloss60": (
        SWIRLED | {"agreed": {"gloss60": 89.0}},
        SWIRL_OUT,
        6,
        "Gloss at 60° is 88.7; 89 was agreed",
        "A finishing set",
    ),
    "gloss20": (
        SWIRLED | {"agreed": {"gloss20": 81.5}},
        SWIRL_OUT,
        6,
        "Gloss at 20° is 80.7; 81.5 was agreed",
        "A finishing set",
    ),
}


def reason(surface: dict[str, Any], steps: Steps, code: str) -> Reason:
    """Return the reason of this code."""
    return next(one for one in worked(surface, steps).outcome.reasons if one.code == code)


@pytest.mark.parametrize("code", CASES)
def test_a_reason_names_the_step_and_what_would_have_saved_it(code: str) -> None:
    surface, steps, step, said, save = CASES[code]
    found = reason(surface, steps, code)
    assert found.step == step
    assert said in found.sentence
    assert save in found.would_save
    assert found.sentence.endswith(".")
    assert found.would_save.endswith(".")


@pytest.mark.parametrize("code", ["strays", "oxidised", "uncorrected"])
def test_what_is_said_to_save_it_saves_it(code: str) -> None:
    cured = {
        "strays": (HEAVY_CHALK, (WASH, TAPE, sand(600, 5), sand(2000, 4), MEDIUM, WIPE, FINISH, WIPE)),
        "oxidised": (GEL | {"oxidation_um": 8.5}, (WASH, TAPE, sand(1500, 4), *POLISH)),
        "uncorrected": (SWIRLED, SWIRL_OUT),
    }[code]
    assert worked(*cured).outcome.verdict == "pass"


def test_what_was_there_before_has_no_step() -> None:
    taken = GEL | {"tail_um": 4.7, "trail_um": 0.9, "soiled": False}
    found = {one.code: one for one in worked(taken, (FINISH,)).outcome.reasons}
    assert (found["strays"].step, found["trail"].step) == (None, None)
    assert found["strays"].sentence.startswith("What was there before, left strays")


def test_harms_stand_first() -> None:
    found = worked(SWIRLED, (act("cut", speeds_rpm=[2500] * 3, force_n=70),)).outcome.reasons
    verdicts = [one.verdict for one in found]
    assert verdicts == sorted(verdicts)
    assert set(verdicts) == {"harm", "redo"}


def test_a_fresh_disc_saves_what_a_worn_one_left() -> None:
    rough = GEL | {"rz_um": 4.3, "tail_um": 7.3, "soiled": False}
    assert (
        reason(rough, (sand(1500, 3, disc=1.3), *POLISH), "strays").would_save
        == "A fresh disc in step 1, changed by area."
    )


@pytest.mark.parametrize(
    ("defect", "save"),
    [
        ({"kind": "scum_line"}, "The chemistry that dissolves it: alkaline."),
        ({"kind": "rust_stain"}, "The chemistry that dissolves it: acid or iron."),
        ({"kind": "residue"}, "A solvent wipe."),
        ({"kind": "decal_ghost", "depth_um": 9.0}, "A flat block or a hard disc across it and the surround together."),
    ],
)
def test_each_kind_has_its_own_answer(defect: dict[str, Any], save: str) -> None:
    assert reason(GEL | {"defects": [defect], "soiled": False}, (), "uncorrected").would_save == save


def test_what_no_plan_can_correct_is_not_what_is_left() -> None:
    both = SWIRLED | {"defects": [SWIRLS, {"kind": "crack_star"}, {"kind": "fading"}]}
    assert "most of what is left: swirl marks" in reason(both, (act("refer"), WASH, FINISH), "uncorrected").sentence


def test_a_soft_pad_does_not_bring_a_step_down() -> None:
    soft = reason(DECAL, (WASH, sand(1500, 4, pad="disc_soft"), sand(2000, 3, pad="disc_soft"), *POLISH), "uncorrected")
    assert "most of what is left" in soft.sentence
    assert worked(DECAL, (WASH, sand(1500, 4), sand(2000, 3), *POLISH)).outcome.verdict == "pass"
    assert worked(DECAL, (WASH, FINISH)).outcome.verdict == "redo"


def test_with_several_zones_a_reason_says_where() -> None:
    zoned = SWIRLED | {"zones": [{"name": "spray_rail"}, {"name": "rest"}]}
    found = worked(zoned, ({**WASH}, {**DA_MEDIUM, "zone": "rest"}, {**FINISH, "zone": "rest"}, WIPE)).outcome.reasons
    assert {one.zone for one in found} == {"spray_rail"}
    assert all(one.sentence.startswith("The spray rail: ") for one in found)


def test_an_edge_is_saved_by_its_tape() -> None:
    edged = SWIRLED | {"edge_film_um": 30.0}
    found = reason(edged, (WASH, HEAVY, HEAVY), "reserve")
    assert (found.zone, found.would_save) == ("edge", "Tape it before step 2.")
    assert found.sentence.startswith("The edge: step 2, cut with heavy compound, takes the film below")
    assert reason(edged, (WASH, HEAVY, HEAVY, HEAVY), "budget").sentence.startswith("The rest: ")


def test_gloss_is_named_only_where_nothing_else_explains_it() -> None:
    veiled = worked(GEL | {"oxidation_um": 8.5}, (WASH, *POLISH)).outcome
    assert [one.code for one in veiled.reasons] == ["oxidised"]
    assert veiled.gloss60 is not None
    assert veiled.gloss60 < 90


def test_a_reason_is_written_with_four_keys() -> None:
    assert list(reason(SWIRLED, (WASH, MEDIUM), "trail").as_json()) == ["code", "sentence", "step", "would_save"]
