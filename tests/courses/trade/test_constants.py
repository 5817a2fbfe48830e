"""The constants of the surface model: each has a mark and a source, and each fitted one can be moved."""

import re

import pytest

from courses.trade.constants import FITTED, ROLES, read_constants
from courses.trade.errors import ImpossibleChoice, OutOfRange, TableRefused
from courses.trade.sources import MARKS
from courses.trade.surface import read_plan
from courses.trade.surface.work import work_of
from tests.courses.pictures.trade import catalogue
from tests.courses.trade.model import SOURCES, TEXT, constants


def test_every_figure_has_a_mark_and_a_known_source() -> None:
    figures = re.findall(r"^(\w+) = -?[\d.]+(?:e-?\d+)?$", TEXT, flags=re.MULTILINE)
    found = constants().marks
    assert len(found) > len(figures) > 150
    assert {mark for mark, _ in found.values()} <= set(MARKS)
    assert {source for _, source in found.values()} <= set(SOURCES)


@pytest.mark.parametrize(
    ("name", "mark"),
    [
        ("sanding.k", "model"),
        ("preston.wool.heavy", "model"),
        ("pads.wool.eta", "practice"),
        ("pads.wool.trail_um", "model"),
        ("heat.soft_gel_coat", "read"),
        ("heat.effusivity", "memory"),
        ("minutes.wash", "model"),
        ("minutes.dry", "practice"),
    ],
)
def test_marks_are_those_of_the_fact_sheet(name: str, mark: str) -> None:
    assert constants().marks[name][0] == mark


def test_every_kind_of_defect_has_a_role() -> None:
    assert set(constants().kinds) == set(catalogue().kinds)
    assert {role.role for role in constants().kinds.values()} == set(ROLES)


def test_what_goes_through_the_film_has_that_role() -> None:
    through = {code for code, kind in catalogue().kinds.items() if kind.through}
    assert through | {"blisters"} == {code for code, role in constants().kinds.items() if role.role == "through"}


@pytest.mark.parametrize("name", FITTED)
def test_a_fitted_constant_moves_alone_and_gives_the_same_object_twice(name: str) -> None:
    base, moved = constants(), constants().varied(name, 0.7)
    parts = ("sanding", "preston", "pads", "optics", "gates", "film")
    assert sum(getattr(base, part) != getattr(moved, part) for part in parts) == 1
    assert moved is base.varied(name, 0.7)


def test_no_pad_gains_more_depth_than_film() -> None:
    etas = {code: pad.eta for code, pad in constants().varied("eta", 1.3).pads.items()}
    assert etas == pytest.approx(
        {"disc": 1, "disc_soft": 1, "block": 1, "wool": 0.975, "microfibre": 0.975}
        | {"foam_cut": 0.845, "foam_finish": 0.52}
    )


@pytest.mark.parametrize(("name", "factor", "error"), [("rz", 1.3, ImpossibleChoice), ("eta", 0.0, OutOfRange)])
def test_a_constant_nobody_knows_or_a_wild_factor_is_refused(name: str, factor: float, error: type[Exception]) -> None:
    with pytest.raises(error):
        constants().varied(name, factor)


def test_a_pad_and_a_compound_that_do_not_go_together_are_refused() -> None:
    with pytest.raises(ImpossibleChoice, match="did you mean wool with heavy"):
        constants().k_of("wool", "heavier")


@pytest.mark.parametrize(
    ("written", "instead", "said"),
    [
        ("k = 5.47e-10", 'k = "much"', "write a number"),
        ("[sanding]", "[sand]", "no table .sanding."),
        ("trail_um = 0.25", "trails_um = 0.25", "did you mean trail_um"),
        ('role = "layer"', 'role = "lair"', "did you mean layer"),
        ('source = "gel-coat-cure-notes"', 'source = "hearsay"', "hearsay"),
        ('from = [{ mark = "practice", source = "practice" }]', "", "sources are missing"),
        ('    { mark = "read", source = "iso-6344-3", of = ["reference_um"] },\n    {', "    {", ""),
        ("[sanding]\n", "[sanding]\nz = 1.0\n", "no field 'z'"),
    ],
)
def test_a_table_that_cannot_be_read_is_refused_in_a_sentence(written: str, instead: str, said: str) -> None:
    assert written in TEXT
    text = TEXT.replace(written, instead, 1)
    if not said:
        assert read_constants(text, "model.toml", SOURCES).marks["sanding.reference_um"] == ("model", "model")
        return
    with pytest.raises(TableRefused, match=said):
        read_constants(text, "model.toml", SOURCES)


def test_a_figure_for_which_no_line_speaks_is_refused() -> None:
    text = TEXT.replace('    { mark = "model", source = "model" },\n]\n\n# Polishing', "]\n\n# Polishing", 1)
    with pytest.raises(TableRefused, match="speaks for k"):
        read_constants(text, "model.toml", SOURCES)


def test_a_school_puts_its_own_k_in() -> None:
    """A gauge before and after a heavy set gave 5.0 µm where the model says 4.0: its k is that much larger."""
    gauged = read_constants(
        TEXT.replace("heavy = 3.18e-11", f"heavy = {3.18e-11 * 5.0 / 4.0:.4g}", 1), "own.toml", SOURCES
    )
    (step,) = read_plan([{"op": "cut"}])
    ratio = work_of(step, 1.0, gauged).cut_um / work_of(step, 1.0, constants()).cut_um
    assert ratio == pytest.approx(1.25, abs=0.001)
