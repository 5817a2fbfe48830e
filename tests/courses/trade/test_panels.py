"""Invented panels: a kind and a number give the same surface always, and what is wrong in their table is refused."""

import pytest

from courses.shipped import catalogue, panels, sources, text_of
from courses.trade.errors import TableRefused
from courses.trade.panels import read_panels

KINDS = (
    "mild_chalk", "moderate_chalk", "heavy_chalk", "clear_swirls", "thin_clear", "deep_scratch", "decal_step",
    "mineral_spots", "crack",
)  # fmt: skip


def read(old: str, new: str) -> None:
    text = text_of("trade/panels.toml")
    assert old in text
    read_panels(text.replace(old, new, 1), "panels.toml", catalogue(), sources())


def test_every_kind_that_a_plan_may_be_tried_on_is_shipped():
    assert tuple(panels()) == KINDS


@pytest.mark.parametrize("code", KINDS)
def test_a_number_gives_the_same_panel_always_and_another_number_another_one(code):
    kind = panels()[code]
    drawn = [kind.drawn(number) for number in range(1, 40)]
    assert drawn == [kind.drawn(number) for number in range(1, 40)]
    assert len({str(one) for one in drawn}) > 8


@pytest.mark.parametrize("code", KINDS)
def test_what_is_drawn_lies_within_the_ranges_and_reaches_their_ends(code):
    kind = panels()[code]
    drawn = [kind.drawn(number) for number in range(1, 400)]
    films = [one["film_um"] for one in drawn]
    assert (min(films), max(films)) == (kind.film_um.low, kind.film_um.high)
    assert {one["colour"] for one in drawn} == set(kind.colours)
    for surface in drawn:
        assert 0.65 * surface["film_um"] < surface["edge_film_um"] < surface["film_um"]
        assert surface["film_um"] > catalogue().surface(kind.substrate).reserve_um


def test_one_panel_whole():
    assert panels()["deep_scratch"].drawn(1) == {
        "substrate": "clear_coat",
        "colour": "black",
        "film_um": 46.0,
        "edge_film_um": 37.0,
        "defects": [
            {"kind": "swirl", "depth_um": 1.0, "cover": 0.06},
            {"kind": "scratch", "depth_um": 14.0, "cover": 0.005},
        ],
    }


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('substrate = "gel_coat"', 'substrate = "gelcoat"', "did you mean gel_coat"),
        ("film_um = [430, 560, 10]", "film_um = [430, 565, 10]", "the steps ending on to"),
        ("film_um = [430, 560, 10]", "film_um = [560, 430, 10]", "write \\[from, to, step\\]"),
        ("depth_um = [10.0, 16.0, 1.0]", "depth_um = [10.0, 46.0, 1.0]", "scratch is never 46 µm deep; give 3 to 30"),
        ('kind = "scratch"', 'kind = "scrach"', "did you mean scratch"),
        ("edge = [0.7, 0.85, 0.05]", "edges = [0.7, 0.85, 0.05]", "There is no field 'edges'; did you mean edge"),
        ('may_stay = ["orange_peel"]', 'may_stay = ["orange"]', "did you mean orange_peel"),
        ('light = "diffuse"', 'light = "sun"', "light is 'sun'"),
        ('source = "model"', 'source = "a book"', "source is 'a book'"),
        ("[[thin_clear.defects]]", "[thin_clear.defects]", "TOML"),
    ],
)
def test_what_is_wrong_in_the_table_is_refused_with_its_place(old, new, said):
    with pytest.raises(TableRefused, match=f"panels.toml, line \\d+.*{said}"):
        read(old, new)
