"""Scenes as scenarios write them: the door takes what is written."""

from assessments.scenarios.scenes import LAMP_PLACES, about, mark, scene
from courses.pictures import Scene
from courses.shipped import catalogue


def test_what_is_written_is_a_scene_that_can_be_rendered() -> None:
    written = scene(("gel_coat", "navy"), 7.0, mark("swirl", (0.1, 0.2, 0.9, 1.0), severity=0.5), oils=True)
    read = Scene.of(written, catalogue())
    assert (read.substrate, read.colour, read.seed, read.oils) == ("gel_coat", "navy", 7, True)
    assert (read.defects[0].kind, read.defects[0].box, read.defects[0].severity) == ("swirl", (0.1, 0.2, 0.9, 1.0), 0.5)


def test_a_clean_panel_has_no_defects() -> None:
    assert Scene.of(scene(("clear_coat", "black"), 1), catalogue()).defects == ()


def test_the_lamp_stands_at_five_places_well_apart() -> None:
    assert len(set(LAMP_PLACES)) == 5
    pairs = [(one, other) for n, one in enumerate(LAMP_PLACES) for other in LAMP_PLACES[n + 1 :]]
    assert min(abs(one[0] - other[0]) + abs(one[1] - other[1]) for one, other in pairs) > 0.3


def test_a_box_about_a_middle_ends_where_the_picture_ends() -> None:
    assert about(0.5, 0.5, (0.125, 0.25)) == (0.375, 0.25, 0.625, 0.75)
    assert about(0.1, 0.9, (0.2, 0.3)) == (0.0, 0.6, 0.3, 1.0)
