"""The exposure rests on the clean panel alone."""

from courses.pictures.meter import exposure_for
from courses.pictures.scene import LIGHTS
from tests.courses.pictures.panels import marked, scene


def test_no_defect_and_no_cut_changes_it() -> None:
    for light in LIGHTS:
        assert exposure_for(marked("oxidation", 0.9), light) == exposure_for(scene(removed_um=9), light)


def test_dark_colours_are_exposed_longer() -> None:
    assert exposure_for(scene(colour="black"), "point") > 2 * exposure_for(scene(colour="white"), "point")


def test_its_size_hardly_matters() -> None:
    small, large = (exposure_for(scene(size=size), "point") for size in ((240, 160), (960, 640)))
    assert small == large
