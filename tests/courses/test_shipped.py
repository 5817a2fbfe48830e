"""What is shipped reads whole."""

import pytest
from django.core.management import CommandError, call_command

from courses import shipped
from courses.models import Lesson, School
from courses.pictures import LIGHTS, Scene


def test_everything_shipped_reads():
    assert set(shipped.shelf().courses) == {"remote", "in_person"}
    assert "which_reading" in shipped.finders()
    assert "swirl" in shipped.catalogue().kinds
    assert set(shipped.contrast().kinds) == set(shipped.catalogue().kinds)
    assert "mild_chalk" in shipped.panels()
    assert shipped.constants().minutes["wash"] == 1.5
    assert shipped.pictures()["swirl_navy"].light == "point"
    assert "four_skins" in shipped.known().drawings
    assert shipped.sources()["practice"].title == "Common practice"
    assert list(shipped.units()) == ["INS", "WAD", "PLN", "CUT", "SAF", "COA", "HOM"]


def test_every_picture_of_a_lesson_is_a_scene_that_can_be_made():
    for picture in shipped.pictures().values():
        scene = Scene.of(picture.scene, shipped.catalogue())
        assert scene.seed == picture.scene["seed"]
        assert picture.light in LIGHTS


def test_a_lesson_is_read_once_for_each_text():
    text = shipped.shelf().lessons["L24"].text
    assert shipped.lesson_in(text, "L24") is shipped.lesson_in(text, "L24")


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("file", "old", "new", "place"),
    [
        ("courses/lessons.toml", 'slug = "dew-point"', 'slug = "instruments-lie"', "lessons.toml, line "),
        ("courses/remote.toml", 'lessons = ["', 'lessons = ["L99", "', "remote.toml, line "),
        ("courses/lessons/L24-dew-point.md", "[^", "[^no-such-", "L24-dew-point.md, line "),
        ("courses/pictures.toml", 'light = "point"', 'light = "pont"', "fixtures/courses/pictures.toml, line "),
        ("rulebooks/COA-01-v1.toml", "severity = ", "severty = ", "COA-01-v1.toml, line "),
        ("rulebooks/shared.toml", "key.decision", "key.decison", "shared.toml, line "),
        ("rulebooks/names.toml", 'reserve = { t = "num"', 'reserve = { t = "nmu"', "names.toml, line "),
        ("rulebooks/names.toml", 'reserve = { t = "num"', 'resrve = { t = "num"', "shared.toml, line "),
        ("scenarios/COA-01-v1.toml", 'kind = "quantity"', 'kind = "quantty"', "COA-01-v1.toml, line "),
        ("trade/sources.toml", 'mark = "practice"', 'mark = "rumour"', "sources.toml, line "),
        ("trade/contrast.toml", "renderer = 1", "renderer = true", "fixtures/trade/contrast.toml, line "),
        ("trade/defects.toml", 'verdict = "polish"', 'verdict = "polsh"', "fixtures/trade/defects.toml, line "),
        ("trade/model.toml", "wash = 1.5", "wash = true", "fixtures/trade/model.toml, line "),
        ("trade/panels.toml", 'light = "diffuse"', 'light = "sun"', "fixtures/trade/panels.toml, line "),
        ("trade/surfaces.toml", "index = 1.55", "index = true", "fixtures/trade/surfaces.toml, line "),
        ("trade/which_reading.toml", 'source = "', 'source = "no-such-', "which_reading.toml, line "),
    ],
)
def test_a_broken_file_stops_setup_with_its_place_and_changes_nothing(other_fixtures, file, old, new, place):
    other_fixtures(file, old, new)
    with pytest.raises(CommandError) as refusal:
        call_command("setup", "--bare")
    assert place in str(refusal.value)
    assert str(refusal.value).endswith("Nothing was changed.")
    assert (refusal.value.returncode, Lesson.objects.count(), School.objects.count()) == (2, 0, 0)
