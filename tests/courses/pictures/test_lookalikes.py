"""Look-alikes: one kind each, the rest of the panel alike."""

import pytest

from courses.pictures import LIGHTS, Scene
from courses.pictures.lookalikes import CLEAN, SHADES, STRIPS, lookalike
from courses.shipped import catalogue


def test_two_kinds_differ_in_their_kind_alone():
    one, other = dict(lookalike("swirl", "dark")), dict(lookalike("hologram", "dark"))
    assert one.pop("defects") != other.pop("defects")
    assert one == other


@pytest.mark.parametrize("shade", SHADES)
def test_every_kind_and_the_clean_panel_can_be_rendered_in_every_shade(shade):
    for kind in (*catalogue().kinds, CLEAN):
        assert len(Scene.of(lookalike(kind, shade), catalogue()).defects) == (kind != CLEAN)


def test_each_light_has_its_lamp_places():
    """Five to seven places of a point lamp, three from aside, one in even light: our own choice."""
    assert {light: len(STRIPS[light]) for light in LIGHTS} == {"point": 7, "raking": 3, "diffuse": 1}
