"""What the lesson on light says can be seen, held against the measured table."""

import pytest

from courses.content.prose import render_text
from tests.courses.content.reading import FINDERS, FIXTURES, LISTED, METRIC, panel_of, plain
from tests.courses.content.shows import MIDDLING, figure, finder_text, measured, word

CONTRAST = measured()


def test_the_finder_says_what_was_measured():
    assert (FIXTURES / "trade/what_shows.toml").read_text() == finder_text(CONTRAST)


def test_the_finder_never_lets_none_be_written_where_nothing_shows():
    for row in FINDERS["what_shows"].rows:
        shows, act = (render_text(prose, METRIC) for prose in row.results)
        assert ("Write “not visible here”, never “none”" in act) == (shows == "Not visible.")


@pytest.mark.parametrize(
    ("said", "kind", "figures"),
    [
        ("the swirls on black come to {}, on white to {}", "swirl", [("black", "point"), ("white", "point")]),
        ("Swirls on white by point lamp: {} in our pictures", "swirl", [("white", "point")]),
        ("{} is under 2. Nobody could see them here", "swirl", [("white", "point")]),
        ("raking light, which comes to {}", "swirl", [("white", "raking")]),
        (
            "the crack comes to {} on white, and to {} on black",
            "crack_star",
            [("white", "diffuse"), ("black", "diffuse")],
        ),
        ("{} against {} in our pictures", "blisters", [("white", "diffuse"), ("white", "raking")]),
    ],
)
def test_the_contrasts_that_l01_quotes_are_those_of_the_table(said, kind, figures):
    assert said.format(*(figure(CONTRAST, kind, *where) for where in figures)) in plain("L01")


def test_what_l01_concludes_from_its_figures_holds():
    swirls = {
        (colour, light): CONTRAST.of("swirl", colour, light, MIDDLING)
        for colour in ("black", "white")
        for light in ("point", "raking")
    }
    assert swirls["black", "point"].askable
    assert swirls["white", "point"].unseen
    assert word(swirls["white", "raking"]) == "Faint."
    star, domes = (
        {
            where: CONTRAST.of(kind, *where, MIDDLING).cnr
            for where in (("white", "diffuse"), ("black", "diffuse"), ("white", "raking"))
        }
        for kind in ("crack_star", "blisters")
    )
    assert star["white", "diffuse"] > 1.5 * star["black", "diffuse"]
    assert domes["white", "raking"] > 1.5 * domes["white", "diffuse"]


def test_all_that_lessons_show_can_be_seen_but_for_the_swirls_that_show_nothing():
    unseen = set()
    for code, picture in LISTED.items():
        shown = panel_of(code)
        for defect in () if shown.removed_um else shown.defects:
            if CONTRAST.of(defect.kind, shown.colour, picture.light, defect.severity).unseen:
                unseen.add(code)
    assert unseen == {"swirl_black_diffuse", "swirl_white_diffuse", "swirl_white_point"}
