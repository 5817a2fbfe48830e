"""A scene read from plain values, or refused in one sentence."""

import json
from typing import Any

import pytest

from courses.pictures.scene import Scene, SceneRefused
from tests.courses.pictures.trade import catalogue

SWIRL = {"kind": "swirl", "severity": 0.5}
BOX = "defects[0].region"


def read(**given: Any) -> Scene:
    return Scene.of(given, catalogue())


def with_defect(**given: Any) -> Scene:
    return read(defects=[{"kind": "swirl", **given}])


def test_what_is_left_out_takes_its_default() -> None:
    shown = read()
    assert (shown.substrate, shown.colour, shown.size, shown.curve) == ("clear_coat", "black", (960, 640), "flat")
    assert (shown.removed_um, shown.trail_um, shown.tail_um, shown.removed_right_of, shown.oils) == (
        0,
        0,
        0,
        None,
        False,
    )
    assert shown.defects == ()
    assert not shown.gel
    assert read(substrate="gel_coat").gel


def test_a_colour_is_a_word_or_hexadecimal() -> None:
    assert read(colour="navy").rgb == (19, 31, 60)
    assert read(colour="#0a0B0c").rgb == (10, 11, 12)


def test_severity_gives_the_depth_and_depth_the_severity() -> None:
    by_severity = with_defect(severity=0.5).defects[0]
    by_depth = with_defect(depth_um=by_severity.depth_um).defects[0]
    assert (by_severity.severity, by_severity.depth_um) == (0.5, 0.8)
    assert by_depth.severity == pytest.approx(0.5)
    assert with_defect().defects[0].severity == 0.6


def test_a_kind_that_goes_through_is_as_deep_as_the_film() -> None:
    star = read(substrate="gel_coat", defects=[{"kind": "crack_star"}]).defects[0]
    assert (star.depth_um, star.thin, star.index) == (500, True, 0)


def test_equal_scenes_are_equal_and_can_be_looked_up() -> None:
    first, second = read(defects=[SWIRL]), read(defects=[{**SWIRL, "region": {"box": [0, 0, 1, 1]}}], seed=0)
    assert first == second
    assert {first: 1}[second] == 1
    assert first != read(defects=[SWIRL], seed=1)


def test_its_json_reads_back_as_the_same_scene() -> None:
    more = {"removed_um": 2, "removed_right_of": 0.5, "oils": True, "curve": "gentle"}
    shown = read(defects=[SWIRL, {"kind": "scratch", "depth_um": 9.5, "direction": 30}], **more)
    assert Scene.of(shown.as_json(), catalogue()) == shown
    assert json.loads(json.dumps(shown.as_json()))["defects"][1]["depth_um"] == 9.5


@pytest.mark.parametrize(
    ("given", "sentence"),
    [
        ({"defects": [{"kind": "swirll"}]}, "defects[0].kind: 'swirll' is not known; did you mean swirl?"),
        ({"defects": [{"severity": 0.5}]}, "defects[0]: kind is missing."),
        ({"defects": [{"kind": 3}]}, "defects[0].kind: 3 is no word; there are oxidation, "),
        ({"defects": [SWIRL] * 13}, "defects: there are 13; a picture takes at most 12."),
        ({"defects": "swirl"}, "defects: this is no list of defects."),
        ({"defects": ["swirl"]}, "defects[0]: this is no object of keys and values."),
        ({"defects": [{**SWIRL, "depth_um": 1}]}, "defects[0]: severity and depth_um say the same; keep one."),
        ({"defects": [{"kind": "swirl", "severity": 1.5}]}, "defects[0].severity: 1.5 lies outside 0 to 1; "),
        ({"defects": [{"kind": "swirl", "severity": "0.5"}]}, "defects[0].severity: '0.5' is no number; "),
        ({"defects": [{"kind": "swirl", "severity": True}]}, "defects[0].severity: 'True' is no number; "),
        ({"defects": [{"kind": "swirl", "severity": float("nan")}]}, "defects[0].severity: nan is no number; "),
        (
            {"defects": [{"kind": "swirl", "depth_um": 40}]},
            "defects[0].depth_um: 40 µm is impossible for swirl marks; give 0.2 to 2 µm.",
        ),
        (
            {"defects": [{"kind": "tannin_stain", "depth_um": 4}]},
            "defects[0].depth_um: A depth says nothing of tannin stains: ",
        ),
        ({"defects": [{"kind": "chip", "depth_um": 4}]}, "defects[0].depth_um: A depth says nothing of chips: they go"),
        ({"defects": [{**SWIRL, "direction": 1e9}]}, "defects[0].direction: 1e+09 lies outside -360 to 360; "),
        ({"defects": [{**SWIRL, "shape": "round"}]}, "defects[0]: 'shape' is no key of it; "),
        ({"defects": [{**SWIRL, "region": {"box": [0, 0, 1.2, 1]}}]}, f"{BOX}.box: 1.2 lies outside 0 to 1; "),
        ({"defects": [{**SWIRL, "region": {"box": [0.5, 0, 0.5, 1]}}]}, f"{BOX}.box: it is empty; "),
        ({"defects": [{**SWIRL, "region": {"box": [0, 1]}}]}, f"{BOX}.box: write left, top, right and lower edge"),
        ({"defects": [{**SWIRL, "region": [0, 0, 1, 1]}]}, f"{BOX}: this is no object"),
        ({"colour": "navvy"}, "colour: There is no colour 'navvy'; write #rrggbb, or did you mean navy?"),
        ({"colour": 7}, "colour: 7 is no colour; write a name such as navy, or #rrggbb."),
        ({"substrate": "gelcoat"}, "substrate: 'gelcoat' is not known; did you mean gel_coat?"),
        ({"curve": "round"}, "curve: 'round' is not known; there are flat, gentle."),
        ({"size": [32, 640]}, "size: 32 lies outside 64 to 1920; "),
        ({"size": [960, 1e9]}, "size: '1000000000.0' is no whole number; "),
        ({"size": 960}, "size: write width and height in pixels, such as [960, 640]."),
        ({"seed": -1}, "seed: -1 lies outside 0 to "),
        ({"seed": 10**40}, "seed: that lies outside 0 to "),
        ({"removed_um": -2}, "removed_um: -2 lies outside 0 to 1000; "),
        ({"removed_right_of": 2}, "removed_right_of: 2 lies outside 0 to 1; "),
        ({"oils": "yes"}, "oils: 'yes' is neither true nor false."),
        ({"colours": "navy"}, "a picture: 'colours' is no key of it; did you mean colour"),
    ],
)
def test_bad_input_is_one_sentence(given: dict[str, Any], sentence: str) -> None:
    with pytest.raises(SceneRefused) as refusal:
        read(**given)
    assert str(refusal.value).startswith(sentence)
    assert "\n" not in str(refusal.value)


@pytest.mark.parametrize("raw", [None, [], "black", 4])
def test_only_an_object_is_a_scene(raw: Any) -> None:
    with pytest.raises(SceneRefused, match="a picture: this is no object"):
        Scene.of(raw, catalogue())
