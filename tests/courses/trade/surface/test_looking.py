"""What a look shows, and when a zone is clear."""

from typing import Any

import pytest

from courses.trade.surface.condition import Condition
from courses.trade.surface.looking import answerable, is_clear, said_of_zones, shown
from tests.courses.trade.model import constants
from tests.courses.trade.surface.plans import CLEAR, DEEP, GEL, SCRATCHED, SWIRLED, SWIRLS, panel


def condition(surface: dict[str, Any], **changes: Any) -> Condition:
    """Return the zone of a panel, changed."""
    one = Condition.of(panel(surface).parts[0], constants())
    for name, value in changes.items():
        setattr(one, name, value)
    return one


@pytest.mark.parametrize(
    ("surface", "changes", "clear"),
    [
        (CLEAR, {}, True),
        (SWIRLED, {}, False),
        (SWIRLED, {"levelled_um": 1.7}, False),
        (SWIRLED, {"levelled_um": 1.75}, True),
        (CLEAR, {"tail_um": 0.4}, True),
        (CLEAR, {"tail_um": 0.41}, False),
        (GEL | {"oxidation_um": 3.0}, {"removed_um": 4.2}, False),
        (GEL | {"oxidation_um": 3.0}, {"removed_um": 4.3}, True),
        (GEL | {"oxidation_um": 3.0, "agreed": {"may_stay": ["oxidation"]}}, {}, True),
        (SCRATCHED, {"levelled_um": 2.0}, False),
        (SCRATCHED, {"levelled_um": 2.0, "referred": True}, True),
        (SCRATCHED, {"levelled_um": 1.0, "referred": True}, False),
        (CLEAR | {"defects": [{"kind": "tannin_stain"}]}, {}, True),
    ],
)
def test_a_zone_is_clear_by_the_words_of_the_door(
    surface: dict[str, Any], changes: dict[str, Any], clear: bool
) -> None:
    assert is_clear(condition(surface, **changes), 0.2, constants()) is clear


def test_what_was_agreed_to_stay_or_referred_has_no_answer_to_wait_for() -> None:
    kept = CLEAR | {"defects": [SWIRLS, DEEP, {"kind": "chip"}], "agreed": {"may_stay": ["swirl"]}}
    assert [one.kind for one in answerable(condition(kept))] == ["scratch"]
    assert list(answerable(condition(kept, referred=True))) == []


@pytest.mark.parametrize(
    ("surface", "changes", "codes"),
    [
        (CLEAR, {}, []),
        (SWIRLED, {}, ["swirl"]),
        (SWIRLED, {"wet": True}, ["wet"]),
        (SWIRLED, {"oils": True}, ["swirl"]),
        (SWIRLED, {"oils": True, "levelled_um": 1.3}, []),
        (CLEAR, {"trail_um": 0.25}, ["trail"]),
        (CLEAR, {"trail_um": 0.25, "oils": True}, []),
        (CLEAR, {"tail_um": 2.9}, ["strays"]),
        (GEL | {"oxidation_um": 3.0}, {}, ["oxidised"]),
    ],
)
def test_a_look_notes_what_shows(surface: dict[str, Any], changes: dict[str, Any], codes: list[str]) -> None:
    assert [code for code, _ in shown(condition(surface, **changes), constants())] == codes


def test_what_shows_in_one_zone_of_several_is_said_with_its_name() -> None:
    said = said_of_zones({"A veil is left.": ["edge", "bow"], "Strays stand.": ["main", "edge", "bow"]}, 3)
    assert said == ("The edge, the bow: a veil is left.", "Strays stand.")
