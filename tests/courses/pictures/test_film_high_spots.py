"""High spots of a coating."""

import numpy as np
import pytest
from numpy.typing import NDArray

from courses.pictures.panel import Panel
from courses.pictures.truth import masks
from tests.courses.pictures.films import WHOLE, canvas_of, change, film, leak, rms


def colourful(light: str, colour: str = "black") -> float:
    """Return how far colours spread apart within the patch:
    root mean square of the changes of red and blue against green.
    """
    scene = film("high_spot", 0.7, colour)
    shot: NDArray[np.float64] = Panel.build(scene, light).shoot().rgb.astype(float)
    shot -= Panel.build(scene, light, frozenset({0})).shoot().rgb
    inside = shot[masks(scene, light)[0]]
    return rms((inside[:, [0, 2]] - inside[:, [1]]).astype(np.float32))


def test_its_colours_show_best_in_soft_light() -> None:
    assert colourful("diffuse") > 2 * colourful("point")


def test_several_colours_lie_side_by_side() -> None:
    scene = film("high_spot", 0.7, "black")
    shot = Panel.build(scene, "diffuse").shoot().rgb.astype(float)[masks(scene, "diffuse")[0]]
    warmer = shot[:, 0] - shot[:, 2]
    assert np.percentile(warmer, 90) - np.percentile(warmer, 10) > 12


def test_a_light_colour_looks_wetter_there() -> None:
    scene = film("high_spot", 0.7, "white")
    assert change(scene, "diffuse")[masks(scene, "diffuse")[0]].mean() < -0.5


def test_it_is_pulled_along_the_cloth() -> None:
    shape = masks(film("high_spot", 0.7, box=(0.4, 0.35, 0.6, 0.65)), "point")[0]
    rows, columns = np.nonzero(shape)
    assert columns.std() > 1.2 * rows.std()


@pytest.mark.parametrize("light", ["diffuse", "raking"])
def test_the_mask_holds_what_changes(light: str) -> None:
    assert leak(film("high_spot", 0.6, "black"), light) < 0.2


def test_it_grows_with_severity() -> None:
    strength = [rms(change(film("high_spot", severity, "white"), "diffuse")) for severity in (0.05, 0.4, 0.9)]
    assert strength[0] < strength[1] < strength[2]


def test_a_second_one_does_not_wipe_out_the_first() -> None:
    left, right = (
        {"kind": "high_spot", "severity": 0.6, "region": {"box": [x, 0.2, x + 0.4, 0.8]}} for x in (0.05, 0.55)
    )
    both = canvas_of(film("high_spot", defects=[left, right])).film_share
    assert both is not None
    assert both[:, :110].max() > 0.5 < both[:, 130:].max()
    assert canvas_of(film("high_spot", 0.0, box=WHOLE)).film_share is not None
