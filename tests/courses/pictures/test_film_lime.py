"""Bird-lime."""

import numpy as np
import pytest

from courses.pictures.arrays import grown
from courses.pictures.truth import masks
from tests.courses.pictures.films import canvas_of, change, film, leak, rms

ONE = (0.35, 0.3, 0.65, 0.7)


def blot(severity: float, **more: float) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Return the share of mirror, the slopes' size and the core of one blot on a picture of 480 by 320."""
    scene = film("bird_lime", severity, "black", ONE, size=[480, 320], **more)
    canvas, clean = canvas_of(scene), canvas_of(film("bird_lime", 0.0, "black", ONE, size=[480, 320], **more))
    core = ~grown(~masks(scene, "point")[0], 3)
    return canvas.coat, np.hypot(canvas.nx - clean.nx, canvas.ny - clean.ny), core


def test_it_is_dull_inside() -> None:
    coat, _slope, core = blot(0.6)
    assert coat[core].mean() < 0.8 < 0.97 < coat[~grown(core, 8)].mean()


def test_a_shallow_one_slopes_only_at_its_rim_a_deep_one_wrinkles_all_over() -> None:
    _coat, shallow, core = blot(0.3)
    rim = grown(core, 3) & ~core
    assert shallow[rim].mean() > 2 * shallow[~grown(~core, 3)].mean()
    _coat, deep, core = blot(1.0)
    assert deep[~grown(~core, 3)].mean() > 5 * shallow[~grown(~core, 3)].mean()


def test_only_a_deep_one_is_broken() -> None:
    flat, broken = (float(canvas_of(film("bird_lime", severity, "white", ONE)).dark.max()) for severity in (0.4, 1.0))
    assert flat < 0.02
    assert broken > 0.1


@pytest.mark.parametrize("light", ["diffuse", "point", "raking"])
def test_the_mask_holds_what_changes(light: str) -> None:
    assert leak(film("bird_lime", 0.6, "black", ONE), light) < 0.2


def test_it_grows_with_severity() -> None:
    strength = [rms(change(film("bird_lime", severity), "diffuse")) for severity in (0.05, 0.4, 0.9)]
    assert strength[0] < strength[1] < strength[2]


def test_a_large_region_holds_several_and_a_small_one_one() -> None:
    several, one = (
        masks(film("bird_lime", 0.6, box=box), "point")[0].any(0)
        for box in ((0.0, 0.0, 1.0, 1.0), (0.45, 0.4, 0.6, 0.6))
    )
    assert several.sum() > 2 * one.sum() > 0
