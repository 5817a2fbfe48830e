"""Surfaces, colours and the catalogue that pictures and the simulator read."""

from pathlib import Path

import pytest

from courses.trade.errors import ImpossibleChoice, OutOfRange, TableRefused
from courses.trade.gloss import gloss, slope_width
from courses.trade.sources import read_sources
from courses.trade.surfaces import Catalogue, read_catalogue

TRADE = Path(__file__).parents[3] / "fixtures" / "trade"
TEXTS = {name: (TRADE / name).read_text(encoding="utf-8") for name in ("defects.toml", "surfaces.toml", "sources.toml")}
SOURCES = read_sources(TEXTS["sources.toml"], "sources.toml")


def read(surfaces: str = TEXTS["surfaces.toml"]) -> Catalogue:
    return read_catalogue((TEXTS["defects.toml"], "defects.toml"), (surfaces, "surfaces.toml"), SOURCES)


CATALOGUE = read()


def test_substrates_and_colours_are_those_of_the_doors() -> None:
    assert list(CATALOGUE.surfaces) == ["gel_coat", "topcoat_2k", "clear_coat"]
    assert list(CATALOGUE.palette) == ["white", "cream", "grey", "silver", "red", "blue", "navy", "green", "black"]


def test_film_reserve_and_budget_are_what_the_trade_works_with() -> None:
    """Common practice: reserve 250 and 30 µm, budget 60 and 8 µm; gel coat sprayed 380 to 510 µm, clear 35 to 60."""
    gel, clear = CATALOGUE.surface("gel_coat"), CATALOGUE.surface("clear_coat")
    assert (gel.film_um, gel.reserve_um, gel.budget_um) == (500.0, 250.0, 60.0)
    assert (clear.film_um, clear.reserve_um, clear.budget_um) == (45.0, 30.0, 8.0)


def test_every_figure_has_a_mark_and_a_source_that_stands_in_the_list() -> None:
    origins = [origin for surface in CATALOGUE.surfaces.values() for origin in surface.marks.values()]
    assert len(origins) == 3 * 8
    assert {source for _, source in origins} <= set(SOURCES)


@pytest.mark.parametrize(
    (
        "substrate",
        "slopes",
        "at60",
        "at20",
    ),  # the slopes of the rendered panel; bench panels of the course: 96/92, 89/80
    [("gel_coat", 0.0080, 96.0, 90.0), ("topcoat_2k", 0.0042, 88.6, 80.6), ("clear_coat", 0.0042, 88.6, 80.6)],
)
def test_a_sound_panel_is_as_smooth_as_it_is_drawn_and_reads_as_glossy(
    substrate: str, slopes: float, at60: float, at20: float
) -> None:
    one = CATALOGUE.surface(substrate)
    assert slope_width(one.rq_um, one.corr_um) == pytest.approx(slopes)
    read = [gloss(one.index, one.rq_um, one.corr_um, angle) for angle in (60, 20)]
    assert read == pytest.approx([at60, at20], abs=0.6)
    assert read[0] > one.gloss60
    assert read[1] > one.gloss20


def test_reserve_and_budget_fit_the_film() -> None:
    assert all(one.reserve_um + one.budget_um < one.film_um for one in CATALOGUE.surfaces.values())


def test_a_colour_is_of_the_palette_or_written_out() -> None:
    assert (CATALOGUE.rgb("navy"), CATALOGUE.rgb("#0A0b0c")) == ((0x13, 0x1F, 0x3C), (10, 11, 12))


@pytest.mark.parametrize("colour", ["nvy", "#12345", "", "#12345g", "navy\n#000000"])
def test_another_colour_is_refused(colour: str) -> None:
    with pytest.raises(ImpossibleChoice, match="write #rrggbb, or "):
        CATALOGUE.rgb(colour)


def test_a_misspelt_code_is_refused_with_the_nearest() -> None:
    with pytest.raises(ImpossibleChoice, match="There is no kind of defect 'swril'; did you mean swirl"):
        CATALOGUE.depth_um("swril", 0.5)
    with pytest.raises(ImpossibleChoice, match="There is no substrate 'gelcoat'; did you mean gel_coat"):
        CATALOGUE.surface("gelcoat")


def test_depth_and_severity_lead_to_one_another() -> None:
    assert (CATALOGUE.depth_um("swirl", 0.5), CATALOGUE.severity("swirl", 0.8)) == (0.8, 0.5)
    assert (CATALOGUE.depth_um("chip", 0.2), CATALOGUE.depth_um("chip", 0.2, "clear_coat")) == (500.0, 45.0)


def test_an_impossible_depth_is_refused_with_the_kinds_that_are_as_deep() -> None:
    with pytest.raises(OutOfRange) as refusal:
        CATALOGUE.severity("swirl", 12.0)
    assert refusal.value.sentence == (
        "12 µm is impossible for swirl marks; give 0.2 to 2 µm. "
        "As deep as that are scratch, water_spots_etched, bird_lime."
    )


@pytest.mark.parametrize(
    ("old", "new", "sentence"),
    [
        ("index = 1.55", 'index = "1.55"', "surfaces.toml, line 7, gel_coat: index is '1.55'; write a number"),
        ('white = "#f1f2f0"', 'white = "f1f2f0"', "white is 'f1f2f0'; write it as #rrggbb."),
        ('source = "gel-coat-index"', 'source = "gel-index"', "source is 'gel-index'; did you mean gel-coat-index"),
    ],
)
def test_a_broken_surface_is_refused(old: str, new: str, sentence: str) -> None:
    with pytest.raises(TableRefused) as refusal:
        read(TEXTS["surfaces.toml"].replace(old, new, 1))
    assert sentence in str(refusal.value)
