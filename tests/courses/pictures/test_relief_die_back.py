"""Die-back: less gloss, and the ghost of old sanding in two directions."""

import numpy as np

from tests.courses.pictures.reliefs import look, plan, scene

CLEAR = {"substrate": "clear_coat"}


def test_the_old_marks_run_in_two_directions():
    back = plan(scene("die_back", seed=7, direction=20.0, **CLEAR))
    turn = np.degrees(back.heading) - np.degrees(back.plate.angle)
    first, second = turn[turn > 0], turn[turn < 0]
    assert abs(np.median(first) - 30) < 3
    assert abs(np.median(second) + 31.5) < 3
    assert 0.5 < first.size / turn.size < 0.75


def test_gloss_goes_down_step_by_step():
    glare = [
        look(scene("die_back", "black", severity=severity, seed=8, **CLEAR), "point") for severity in (0.2, 0.6, 1.0)
    ]
    veil = [float(seen.change[seen.mask].mean()) for seen in glare]
    assert veil == sorted(veil)
    assert veil[0] > 0


def test_the_ghost_shows_under_a_lamp_and_hardly_in_soft_light_on_white():
    assert look(scene("die_back", "navy", severity=0.8, seed=9, **CLEAR), "point").cnr > 5
    assert look(scene("die_back", "white", severity=0.8, seed=9, **CLEAR), "diffuse").cnr < 5


def test_it_stays_in_its_region():
    assert look(scene("die_back", "black", severity=0.8, seed=10, **CLEAR), "raking").leak < 0.25
