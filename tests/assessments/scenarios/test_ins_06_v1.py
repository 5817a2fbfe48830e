"""INS-06 version 1: the printed shares and ranges, when acid is spent, four kinds of ring worked by hand."""

import pytest

from assessments.scenarios.draw import Drawn, key_of
from assessments.scenarios.fields import Record
from assessments.scenarios.ins_06_v1 import key, pictures
from assessments.scenarios.scenes import mark, scene
from courses.pictures import Scene
from courses.shipped import catalogue
from tests.assessments.scenarios.drawing import (
    assert_captions_tell_nothing,
    assert_everything_is_told,
    assert_inside,
    assert_pictures_stand,
    assert_shares,
    draws,
)

SHARES = {"mineral": 0.35, "etched": 0.3, "both": 0.2, "silica": 0.15}
CRUST, ETCH = "water_spots_mineral", "water_spots_etched"


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("INS-06@1", 120)


def test_every_draw_keeps_to_the_printed_ranges(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        facts = drawn.facts
        assert_inside(facts, {"film_um": (420, 560), "panel_degc": (14, 40)})
        assert not 24 < facts.number("panel_degc") < 34
        assert ("etch_severity" in facts) == (facts["true_defect"] in ("etched", "both"))
        assert_inside(facts, {"etch_severity": (0.44, 0.49)} if "etch_severity" in facts else {})
        assert facts["acid"] != "three_times" or facts["true_defect"] in ("etched", "silica")
        assert_pictures_stand(drawn)
        assert_everything_is_told(drawn)


def test_the_truths_come_in_their_printed_shares(sweep: list[Drawn]) -> None:
    assert_shares(sweep, lambda one: one.facts["true_defect"], SHARES)
    assert {one.facts["acid"] for one in sweep} == {"none", "dried_on", "three_times"}


def test_the_rings_fill_cells_enough_to_be_marked(sweep: list[Drawn]) -> None:
    for drawn in sweep[:40]:
        worked = key_of(drawn.scenario, drawn.facts)
        groups = worked["zones"]
        assert isinstance(groups, tuple)
        (group,) = groups
        assert isinstance(group, Record)
        cells = group["cells"]
        assert isinstance(cells, tuple)
        assert 4 <= len(cells) <= 15


def test_an_etch_is_shallow_enough_to_be_polished() -> None:
    marks = [mark(ETCH, severity=severity) for severity in (0.44, 0.49)]
    shallow, deep = Scene.of(scene(("gel_coat", "navy"), 1, *marks), catalogue()).defects
    # Common practice, no source: an etch of up to 3 µm is polished, a deeper one is referred.
    assert 2.0 < shallow.depth_um < deep.depth_um < 3.0


def rings(true_defect: str, acid: str = "none") -> Record:
    """Rings on a black side."""
    shown = {"colour": "black", "crust_severity": 0.6, "rings_left": 0.1, "rings_top": 0.2, "scene_seed": 3}
    etched = {"etch_severity": 0.45} if true_defect in ("etched", "both") else {}
    return Record({"true_defect": true_defect, "acid": acid, **etched, **shown})


@pytest.mark.parametrize(
    ("true_defect", "relief", "verdicts", "before", "after"),
    [
        # SM§1.1: lime stands up and dissolves; an etch lies below and stays; silica stands up and stays
        ("mineral", "proud", ["chemistry"], [CRUST], []),
        ("both", "both", ["chemistry"], [CRUST, ETCH], [ETCH]),
        ("etched", "below", ["polish"], [ETCH], [ETCH]),
        ("silica", "proud", ["polish", "refer"], [CRUST], [CRUST]),
    ],
)
def test_acid_takes_lime_and_nothing_else(
    true_defect: str, relief: str, verdicts: list[str], before: list[str], after: list[str]
) -> None:
    worked, shown = key(rings(true_defect)), pictures(rings(true_defect))
    assert (worked["defect"], worked["relief"], worked["right_next"]) == (true_defect, relief, verdicts)
    seen = [[one["kind"] for one in picture.scene["defects"]] for picture in shown]  # type: ignore[attr-defined]
    assert seen == [before, before, after]
    assert (shown[1].zones[0].verdict, shown[1].light) == (verdicts[0], "raking")


def test_after_three_tries_the_acid_has_nothing_left_to_tell() -> None:
    assert (key(rings("silica"))["acid_left"], key(rings("silica"))["asked"]) == (1, ["raking", "acid_spot"])
    spent = key(rings("silica", acid="three_times"))
    assert (spent["acid_left"], spent["asked"]) == (0, ["raking"])


def test_nothing_under_a_picture_names_the_rings() -> None:
    assert_captions_tell_nothing("INS-06@1", ["lime", "mineral", "etch", "silica", "hollow", "proud", "crater"])
