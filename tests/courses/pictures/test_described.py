"""A picture in words asks what the picture asks: it names nothing, and hides what the light hides."""

import re
from types import MappingProxyType

import pytest

from courses.pictures.contrast import Contrast, Entry
from courses.pictures.described import CLEAN, FAINTLY, WHEN_MOVED, Observation, described
from courses.pictures.scene import LIGHTS, Scene
from courses.pictures.truth import CELLS
from tests.courses.pictures.trade import catalogue

TRADE = catalogue()
CLEAR, FAINT, NOTHING = Entry(20.0, 5.0), Entry(3.0, 1.0), Entry(0.5, 0.1)


def measured_as(entry: Entry, **of_kinds: Entry) -> Contrast:
    entries = {
        (kind, "navy", light): (of_kinds.get(kind, entry),) * 5 for kind in TRADE.kinds for light in LIGHTS
    }  # fmt: skip
    return Contrast(1, (0.2, 0.4, 0.6, 0.8, 1.0), MappingProxyType({"navy": 12.0}), MappingProxyType(entries))


def scene(*kinds: str) -> Scene:
    return Scene.of({"colour": "navy", "defects": [{"kind": kind, "severity": 0.6} for kind in kinds]}, TRADE)


def covering(*cells: str, share: float = 0.5) -> dict[str, float]:
    return dict.fromkeys(CELLS, 0.0) | dict.fromkeys(cells, share)


def rest_of(*cells: str) -> tuple[str, ...]:
    return tuple(cell for cell in CELLS if cell not in cells)


def test_a_defect_is_told_where_it_lies_and_the_rest_as_clean() -> None:
    told = described(scene("swirl"), "point", [covering("B2", "B3")], measured_as(CLEAR), TRADE)
    assert told == (
        Observation(rest_of("B2", "B3"), "nothing stands out: an even, sharp lamp image"),
        Observation(("B2", "B3"), "bright hair lines that close into rings round the lamp image"),
    )


def test_every_cell_is_told_once() -> None:
    shares = [covering("A1", "A2"), covering("A2", "D6")]
    told = described(scene("swirl", "rust_stain"), "diffuse", shares, measured_as(CLEAR), TRADE)
    assert sorted(cell for group in told for cell in group.cells) == sorted(CELLS)
    assert [group.cells for group in told] == [("A1",), ("A2",), rest_of("A1", "A2", "D6"), ("D6",)]
    assert told[1].words == f"{told[0].words}; {told[3].words}"


@pytest.mark.parametrize("light", LIGHTS)
def test_what_the_light_hides_reads_like_a_clean_panel(light: str) -> None:
    told = described(scene("swirl"), light, [covering("B2")], measured_as(NOTHING), TRADE)
    assert told == described(scene(), light, [], measured_as(CLEAR), TRADE) == (Observation(CELLS, CLEAN[light]),)


def test_what_shows_weakly_is_told_as_faint() -> None:
    told = described(scene("scratch"), "raking", [covering("A1")], measured_as(FAINT), TRADE)
    assert told[0].words == FAINTLY.format(words="one line with a lit and a shaded side")


def test_the_moving_lamp_adds_what_it_shows() -> None:
    told = described(scene("hologram"), "point", [covering("A1")], measured_as(CLEAR), TRADE, moved=True)
    seen = TRADE.kind("hologram")
    assert told[0].words == WHEN_MOVED.format(words=seen.seen["point"], moved=seen.moved)


def test_oil_hides_fine_marks_until_they_are_wiped() -> None:
    marks = {"colour": "navy", "defects": [{"kind": "hologram", "severity": 0.6}]}
    oily, wiped = (Scene.of({**marks, "oils": oils}, TRADE) for oils in (True, False))
    contrast = measured_as(Entry(9.0, 2.0))
    assert [one.words for one in described(oily, "point", [covering("A1")], contrast, TRADE)] == [CLEAN["point"]]
    assert len(described(wiped, "point", [covering("A1")], contrast, TRADE)) == 2
    proud = Scene.of({"colour": "navy", "oils": True, "defects": [{"kind": "chip", "severity": 0.6}]}, TRADE)
    assert len(described(proud, "point", [covering("A1")], contrast, TRADE)) == 2


def test_what_was_taken_off_beside_a_tape_is_told_left_of_it_only() -> None:
    polished = {"colour": "navy", "removed_um": 60.0, "removed_right_of": 0.5}
    chalk, crack = (
        Scene.of({**polished, "defects": [{"kind": kind, "severity": 0.6}]}, TRADE) for kind in ("oxidation", "chip")
    )
    row = covering("B1", "B2", "B3", "B4", "B5", "B6")
    told = described(chalk, "diffuse", [row], measured_as(CLEAR), TRADE)
    assert told[1].cells == ("B1", "B2", "B3")
    assert described(crack, "diffuse", [row], measured_as(CLEAR), TRADE)[1].cells == tuple(row_of("B"))


def row_of(letter: str) -> list[str]:
    return [cell for cell in CELLS if cell.startswith(letter)]


def test_a_cell_counts_from_three_per_cent() -> None:
    told = described(scene("chip"), "point", [covering("A1", share=0.03) | {"A2": 0.029}], measured_as(CLEAR), TRADE)
    assert told[0].cells == ("A1",)


@pytest.mark.parametrize("light", LIGHTS)
def test_no_words_name_a_kind_or_its_cause(light: str) -> None:
    names = {name for kind in TRADE.kinds.values() for name in (kind.called, kind.code.replace("_", " "), *kind.never)}
    for code in TRADE.kinds:
        told = described(scene(code), light, [covering("C3")], measured_as(CLEAR), TRADE, moved=True)
        words = " | ".join(group.words for group in told).lower()
        assert [name for name in names if re.search(rf"\b{name}", words)] == [], code
        assert len(told) == 2


def test_two_kinds_under_one_lamp_read_differently() -> None:
    contrast = measured_as(CLEAR, oxidation=NOTHING)
    told = described(scene("swirl", "oxidation"), "point", [covering("A1"), covering("A1", "A2")], contrast, TRADE)
    assert [group.cells for group in told] == [("A1",), rest_of("A1")]
