"""A test spot: what is seen after the wipe."""

from typing import Any

import pytest

from courses.trade.surface import read_plan, spot
from courses.trade.surface.spots import share_words
from tests.courses.trade.model import constants
from tests.courses.trade.surface.plans import (
    CLEAR,
    DA_MEDIUM,
    FINISH,
    GEL,
    HEAVY,
    MEDIUM,
    SWIRLED,
    WASH,
    Steps,
    act,
    panel,
    sand,
)


def sentence(surface: dict[str, Any], *steps: dict[str, Any]) -> str:
    """Return what a spot shows."""
    return spot(panel(surface), read_plan(steps), constants()).sentence


@pytest.mark.parametrize(
    ("steps", "seen"),
    [
        ((MEDIUM,), "about a third of the veil is left."),
        ((MEDIUM, MEDIUM), "nothing of the veil is left."),
        ((HEAVY,), "nothing of the veil is left. It is dull: this step's own marks want a finer one."),
        ((FINISH,), "nearly all of the veil is left. It took 0.6 model µm."),
    ],
)
def test_a_spot_on_mild_chalk(steps: Steps, seen: str) -> None:
    """L10 and PLN-01: one medium set leaves a veil, two, or one heavy, clear it."""
    said = sentence(GEL | {"oxidation_um": 2.7}, *steps)
    assert said.startswith("Wiped and looked at in two lights: ")
    assert seen in said


def test_a_spot_tells_of_marks_of_strays_and_of_bands() -> None:
    assert "of the swirl marks, a little is left" in sentence(SWIRLED, DA_MEDIUM)
    assert "Lines run across the last direction" in sentence(GEL | {"tail_um": 4.7}, sand(2000, 1))
    assert "Bands follow the path of the machine" in sentence(CLEAR, MEDIUM)
    assert "there was nothing to take off" in sentence(CLEAR, FINISH)


def test_a_spot_is_washed_taped_and_takes_nothing_off_the_panel() -> None:
    surface = panel(SWIRLED)
    shown = spot(surface, read_plan([WASH, DA_MEDIUM, act("wipe")]), constants())
    assert shown.removed_um == pytest.approx(2.72, abs=0.01)
    assert dict(shown.left) == {"swirl": pytest.approx(0.045, abs=0.01)}
    assert (shown.trail_um, shown.minutes) == (0.0, pytest.approx(34.2, abs=0.05))
    assert surface == panel(SWIRLED)


def test_a_spot_lies_on_the_first_zone_whatever_zone_the_step_names() -> None:
    zoned = SWIRLED | {"edge_film_um": 30.0, "zones": [{"name": "bow"}]}
    found = spot(panel(zoned), read_plan([{**DA_MEDIUM, "zone": "bow"}]), constants())
    assert found.removed_um == pytest.approx(2.72, abs=0.01)


@pytest.mark.parametrize(
    ("share", "words"), [(0.0, "nothing"), (0.7, "about two thirds"), (0.85, "most"), (1.0, "nearly all")]
)
def test_a_share_in_words(share: float, words: str) -> None:
    assert share_words(share) == words
