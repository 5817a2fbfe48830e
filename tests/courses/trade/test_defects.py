"""Kinds of defects: all that the doors name, deep as the trade says, seen without a name."""

import re
from itertools import pairwise
from pathlib import Path

import pytest

from courses.trade.defects import Kind, read_kinds
from courses.trade.errors import OutOfRange, TableRefused
from courses.trade.sources import read_sources

TRADE = Path(__file__).parents[3] / "fixtures" / "trade"
TEXT = (TRADE / "defects.toml").read_text(encoding="utf-8")
SOURCES = read_sources((TRADE / "sources.toml").read_text(encoding="utf-8"), "sources.toml")
KINDS = read_kinds(TEXT, "defects.toml", SOURCES)

# The list of kinds as the shapes of the doors name them (words of the doors, section 1, defect kinds).
DOORS = """oxidation fading swirl hologram da_haze scratch sanding_marks pigtail crosshatch haze decal_ghost
water_spots_mineral water_spots_etched scum_line tannin_stain rust_stain bird_lime burn_through crack_star crack_ring
crack_parallel blisters chip orange_peel die_back run residue high_spot"""


def test_every_kind_of_the_doors_stands_here_and_no_other() -> None:
    assert list(KINDS) == DOORS.split()


def test_every_kind_cites_a_source_that_stands_in_the_list() -> None:
    assert {kind.source for kind in KINDS.values()} <= set(SOURCES)


@pytest.mark.parametrize(
    ("code", "low", "high"),  # common practice, no source; shallowest and deepest of the typical range
    [
        ("swirl", 0.2, 2.0),
        ("hologram", 0.05, 0.5),
        ("da_haze", 0.05, 0.4),
        ("scratch", 3.0, 30.0),
        ("sanding_marks", 0.5, 10.0),
        ("water_spots_mineral", 0.1, 5.0),
        ("orange_peel", 2.0, 10.0),
        ("die_back", 0.3, 2.0),
        ("run", 20.0, 200.0),
        ("high_spot", 0.1, 2.0),
    ],
)
def test_depths_span_what_the_trade_says(code: str, low: float, high: float) -> None:
    assert (KINDS[code].depth_um(0.0, 500.0), KINDS[code].depth_um(1.0, 500.0)) == (low, high)


GRADED = [kind for kind in KINDS.values() if kind.graded]


@pytest.mark.parametrize("kind", GRADED, ids=lambda kind: kind.code)
def test_depth_rises_with_severity_and_leads_back_to_it(kind: Kind) -> None:
    steps = [step / 20 for step in range(21)]
    depths = [kind.depth_um(step, 500.0) for step in steps]
    assert all(low < high for low, high in pairwise(depths))
    assert [kind.severity(depth) for depth in depths] == pytest.approx(steps)


def test_what_goes_through_is_as_deep_as_the_film() -> None:
    through = [kind for kind in KINDS.values() if kind.through]
    assert {kind.code for kind in through} == {"burn_through", "crack_star", "crack_ring", "crack_parallel", "chip"}
    assert {kind.depth_um(0.3, 45.0) for kind in through} == {45.0}
    assert {kind.verdict for kind in through} == {"refer"}


def test_what_sits_in_the_pores_has_no_depth_to_cut() -> None:
    assert [KINDS[code].depth_um(1.0, 500.0) for code in ("tannin_stain", "rust_stain", "residue")] == [0.0] * 3


@pytest.mark.parametrize(
    ("code", "depth_um", "sentence"),
    [
        ("swirl", 12.0, "12 µm is impossible for swirl marks; give 0.2 to 2 µm."),
        ("swirl", float("nan"), "nan µm is impossible for swirl marks; give 0.2 to 2 µm."),
        ("chip", 12.0, "A depth says nothing of chips: they go through the film; give the severity, 0 to 1."),
        (
            "rust_stain",
            0.0,
            "A depth says nothing of rust stains: they have none of their own; give the severity, 0 to 1.",
        ),
    ],
)
def test_an_impossible_depth_is_refused(code: str, depth_um: float, sentence: str) -> None:
    with pytest.raises(OutOfRange) as refusal:
        KINDS[code].severity(depth_um)
    assert (refusal.value.input, refusal.value.sentence) == ("depth_um", sentence)


@pytest.mark.parametrize("severity", [-0.1, 1.1, float("nan")])
def test_a_severity_beyond_nought_to_one_is_refused(severity: float) -> None:
    with pytest.raises(OutOfRange, match="lies outside 0 to 1; give a value within"):
        KINDS["swirl"].depth_um(severity, 500.0)


def test_a_deep_one_is_another_matter() -> None:
    scratch = KINDS["scratch"]  # common practice: polished out within the budget of a clear coat, else referred
    assert (scratch.verdict_at(5.0), scratch.verdict_at(12.0), KINDS["swirl"].verdict_at(2.0)) == (
        "polish",
        "refer",
        "polish",
    )


def told(kind: Kind) -> str:
    return " | ".join((*kind.seen.values(), kind.moved)).lower()


def test_no_observation_names_a_kind_or_its_cause() -> None:
    names = {name for kind in KINDS.values() for name in (kind.called, kind.code.replace("_", " "), *kind.never)}
    named = [(kind.code, name) for kind in KINDS.values() for name in names if re.search(rf"\b{name}", told(kind))]
    assert named == []


PLAIN = {"colour", "under", "random", "directions", "hard", "tilted", "place"}
"""Words of causes that give nothing away by themselves."""


def test_no_observation_borrows_a_telling_word_from_its_own_cause() -> None:
    for kind in KINDS.values():
        words = set(re.findall(r"[a-z-]{5,}", kind.cause.lower())) - PLAIN
        assert [word for word in words if re.search(rf"\b{word}\b", told(kind))] == [], kind.code


def test_no_two_kinds_read_alike_under_the_point_lamp() -> None:
    assert len({kind.seen["point"] for kind in KINDS.values()}) == len(KINDS)


@pytest.mark.parametrize(
    ("old", "new", "sentence"),
    [
        ("depth_um = [0.2, 0.8, 2.0]", "depth_um = [0.2, 2.0, 0.8]", "depth_um has to rise from severity 0"),
        ('source = "practice"', 'source = "practise"', "source is 'practise'; did you mean practice?"),
        ('best = "point"', 'best = "diffuse"', "best, weak and hidden have to name each light once"),
        ("thin = false", "thinn = false", "There is no field 'thinn'; did you mean thin?"),
    ],
)
def test_a_broken_kind_is_refused_with_its_line(old: str, new: str, sentence: str) -> None:
    start = TEXT.index("[swirl]")
    with pytest.raises(TableRefused) as refusal:
        read_kinds(TEXT[:start] + TEXT[start:].replace(old, new, 1), "defects.toml", SOURCES)
    line = TEXT[:start].count("\n") + 1
    assert str(refusal.value).startswith(f"defects.toml, line {line}, swirl: {sentence}")
