"""What lessons 15 and 16 say of their pictures is found in those pictures again."""

import numpy as np

from courses.pictures import Panel, Scene
from courses.pictures.colour import lightness
from tests.courses.content.reading import LISTED
from tests.courses.pictures.trade import catalogue

SMALL = [480, 320]


def panel_of(code: str) -> Panel:
    """A listed picture's panel, at a quarter of its pixels."""
    return Panel.build(Scene.of({**LISTED[code].scene, "size": SMALL}, catalogue()), LISTED[code].light)


def change(code: str) -> np.ndarray:
    """How much lighter its marks make each place."""
    panel, lamp = panel_of(code), LISTED[code].lamps[0]
    with_marks, without = (panel.shoot(lamp, without=frozenset(gone)).rgb for gone in ((), (0,)))
    return lightness(with_marks) - lightness(without)


def below_the_lamp(code: str) -> tuple[float, float, float]:
    """How much lighter the marks make a strip far below the lamp's image: to its left, straight below, to its right."""
    strip = change(code)[int(0.8 * 320) : int(0.9 * 320)].mean(axis=0)
    left, middle, right = (float(strip[at - 15 : at + 15].mean()) for at in (85, 163, 220))
    return left, middle, right


def test_one_direction_is_one_column_of_light() -> None:
    left, middle, right = below_the_lamp("sanded_one_way")
    assert middle > 3 * max(left, right)


def test_two_directions_are_two_columns_like_a_pair_of_compasses() -> None:
    left, middle, right = below_the_lamp("sanded_crosswise")
    assert middle < min(left, right)


def test_trails_light_up_at_every_lamp_before_the_finish_and_at_none_after() -> None:
    before, after = (panel_of(code) for code in ("trails_before_finish", "trails_after_finish"))
    for lamp in LISTED["trails_before_finish"].lamps:
        lit = lightness(before.shoot(lamp).rgb) - lightness(after.shoot(lamp).rgb)
        assert np.percentile(lit, 99) > 3.0, lamp


def test_pigtails_are_small_and_bright() -> None:
    lit = np.abs(change("sanded_pigtails"))
    assert lit.max() > 20.0
    assert np.mean(lit > 5.0) < 0.05
