"""The finders of the lessons on seeing: every combination has its row, and what must never be said isn't."""

from itertools import product

import pytest

from courses.content.finder import FinderTable, Row, find
from courses.content.prose import render_text
from tests.courses.content.reading import FINDERS, METRIC, SOURCES


def all_rows(table: FinderTable) -> dict[tuple[str, ...], Row]:
    names = [choice.name for choice in table.choices]
    return {
        chosen: find(table, dict(zip(names, chosen, strict=True)))
        for chosen in product(*(choice.ids for choice in table.choices))
    }


def said(code: str, column: str, **chosen: str) -> str:
    table = FINDERS[code]
    row = find(table, chosen)
    at = [one.name for one in table.columns].index(column)
    return render_text(row.results[at], METRIC).replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("code", "combinations"),
    [("what_shows", 14 * 5 * 3), ("which_test", 12 * 2), ("what_to_write", 10 * 3), ("what_may_touch", 9 * 3)],
)
def test_every_combination_has_a_row_with_a_known_source(code, combinations):
    rows = all_rows(FINDERS[code])
    assert len(rows) == combinations
    assert {row.source for row in rows.values()} <= set(SOURCES)
    assert all(SOURCES[row.source].mark == row.mark for row in rows.values())


def test_beads_are_wiped_before_a_wet_test_or_a_cloth_is_believed():
    beading = {pair: row for (pair, water), row in all_rows(FINDERS["which_test"]).items() if water == "beads"}
    wiped_first = {
        pair for pair in beading if said("which_test", "test", pair=pair, water="beads").startswith("Solvent")
    }
    assert {"oxidation_fading", "oxidation_residue", "oxidation_haze", "deposit_etch", "ghost"} <= wiped_first


def test_fading_and_oxidation_are_parted_by_water_and_cloth_together():
    test = said("which_test", "test", pair="oxidation_fading", water="flat")
    assert "Wet test and dark cloth, both" in test
    assert "two shades" in said("which_test", "second", pair="oxidation_fading", water="flat")


def test_no_test_that_a_finder_names_takes_film():
    rows = all_rows(FINDERS["which_test"])
    texts = [render_text(prose, METRIC).lower() for row in rows.values() for prose in row.results]
    assert not [text for text in texts if "sand" in text or "abrasive" in text]


def test_every_test_that_uses_solvent_warns_of_it():
    for (pair, water), row in all_rows(FINDERS["which_test"]).items():
        test = said("which_test", "test", pair=pair, water=water)
        if test == "Solvent wipe." or "come back here" in test:
            assert "never on clear plastic" in render_text(row.caution, METRIC)


@pytest.mark.parametrize("sign", ["star", "rings", "parallel", "domes", "burn", "chip"])
def test_what_gives_under_the_thumb_is_told_at_once(sign):
    row = find(FINDERS["what_to_write"], {"sign": sign, "press": "soft"})
    assert said("what_to_write", "tell", sign=sign, press="soft").startswith("Foreman at once")
    assert row.caution is not None
    assert "oft under the thumb" in said("what_to_write", "write", sign=sign, press="soft")


@pytest.mark.parametrize("press", ["firm", "soft", "not_pressed"])
@pytest.mark.parametrize("sign", ["star", "rings", "parallel"])
def test_a_crack_is_written_with_place_size_press_photograph_and_not_treated(sign, press):
    write = said("what_to_write", "write", sign=sign, press=press)
    for part in ("across", "at …", "hotograph …", "Not treated"):
        assert part in write
    assert "no abrasive and no test spot" in said("what_to_write", "map", sign=sign, press=press)


@pytest.mark.parametrize("press", ["firm", "soft", "not_pressed"])
def test_a_dome_is_never_pierced(press):
    row = find(FINDERS["what_to_write"], {"sign": "domes", "press": press})
    assert render_text(row.caution, METRIC) == "Never pierce, scrape or sand a dome."


@pytest.mark.parametrize("rag", ["not_tried", "clean", "gums"])
def test_clear_plastic_never_meets_solvent_or_ammonia(rag):
    never = said("what_may_touch", "never", edge="see_through", rag=rag).lower()
    for word in ("solvent" if rag != "not_tried" else "acetone", "ammonia", "alcohol", "abrasive polish"):
        assert word in never
    assert "ater" in said("what_may_touch", "may", edge="see_through", rag=rag)


@pytest.mark.parametrize("edge", ["see_through", "lifts"])
def test_a_rag_tried_where_none_may_be_is_told_not_hidden(edge):
    row = find(FINDERS["what_may_touch"], {"edge": edge, "rag": "clean"})
    caution = render_text(row.caution, METRIC)
    assert caution.startswith("No rag test on")
    assert "Tell your foreman" in caution


@pytest.mark.parametrize(
    ("edge", "rag", "is_"),
    [
        ("one_colour", "clean", "Gel coat."),
        ("layers", "clean", "Two-pack topcoat."),
        ("layers", "gums", "One-pack paint."),
        ("sparkle", "clean", "Flake under clear."),
        ("lifts", "not_tried", "Wrap."),
    ],
)
def test_edge_and_rag_tell_the_four_skins_apart(edge, rag, is_):
    assert said("what_may_touch", "is", edge=edge, rag=rag) == is_


def test_only_gel_coat_is_for_this_kit():
    kit = {
        edge
        for (edge, _), row in all_rows(FINDERS["what_may_touch"]).items()
        if "This kit" in render_text(row.results[1], METRIC)
    }
    assert kit == {"one_colour"}
