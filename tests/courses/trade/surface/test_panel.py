"""A panel read from JSON: every default filled in, everything impossible refused in a sentence."""

import json
from typing import Any

import pytest
from hypothesis import given, settings

from courses.trade.errors import PlanRefused
from courses.trade.surface import PanelSurface
from tests.courses.pictures.trade import catalogue
from tests.courses.trade.model import constants
from tests.courses.trade.surface.drawn import surfaces
from tests.courses.trade.surface.plans import CLEAR, GEL, SWIRLS, panel


def test_defaults_are_those_of_the_substrate_and_its_film() -> None:
    (gel,), (clear,) = (
        panel({"substrate": kind, "film_um": film}).parts for kind, film in (("gel_coat", 500), ("clear_coat", 36))
    )
    assert (gel.reserve_um, gel.budget_um, gel.film_spread, gel.gloss60) == (250.0, 60.0, 0.15, 90.0)
    assert (clear.reserve_um, clear.budget_um, clear.film_spread, clear.gloss20) == (30.0, 6.0, 0.08, 75.0)
    assert (gel.soiled, gel.wet, gel.oils, gel.taped, gel.cure, gel.tail_um) == (True, False, False, False, 1.0, 0.1)


def test_a_quantity_may_be_text_with_its_unit() -> None:
    (zone,) = panel({"substrate": "gel_coat", "film_um": "20 mil", "oxidation_um": "8,5"}).parts
    assert (zone.film_um, zone.oxidation_um) == (508.0, 8.5)


def test_a_film_at_its_reserve_leaves_a_refresh_as_its_budget() -> None:
    assert panel({"substrate": "clear_coat", "film_um": 28}).parts[0].budget_um == 1.0


def test_a_soft_film_softens_earlier_and_a_hard_one_later() -> None:
    found = [panel(CLEAR | {"hardness": hardness}).soft_degc for hardness in (0.7, 1.0, 1.3)]
    assert found == pytest.approx([75.0, 65.0, 60.0], abs=0.05)  # the fact sheet's hard, usual and soft clear


@given(surface=surfaces)
@settings(max_examples=60)
def test_written_out_and_read_again_it_is_the_same_panel(surface: dict[str, Any]) -> None:
    first = panel(surface)
    written = json.loads(json.dumps(first.as_json()))
    assert panel(written) == first
    assert panel(written).as_json() == written


def test_zones_and_edges_are_written_out_and_read_again() -> None:
    raw = GEL | {"edge_film_um": 380.0, "oxidation_um": 8.0, "defects": [{"kind": "crack_star", "zone": "bow"}, SWIRLS]}
    first = panel(raw | {"zones": [{"name": "bow", "film_um": 262.0, "edge_film_um": 200.0, "share": 0.2}]})
    assert first.zones == ("main", "edge", "bow", "bow_edge")
    assert [one.edge_of for one in first.parts] == ["", "main", "", "bow"]
    assert panel(json.loads(json.dumps(first.as_json()))) == first


@pytest.mark.parametrize(
    ("more", "zones"),
    [
        ({}, ("main",)),
        ({"edge_film_um": 300}, ("main", "edge")),
        ({"zones": [{"name": "bow"}]}, ("main", "bow")),
        ({"zones": [{"name": "bow"}, {"name": "rest"}]}, ("rest", "bow")),
        ({"rest": "side", "zones": [{"name": "part"}]}, ("side", "part")),
        ({"rest": "side", "zones": [{"name": "part"}, {"name": "side"}]}, ("side", "part")),
    ],
)
def test_the_rest_is_what_has_no_zone_of_its_own(more: dict[str, Any], zones: tuple[str, ...]) -> None:
    assert panel(GEL | more).zones == zones


def test_an_edge_made_of_its_film_may_keep_less_and_one_that_is_listed_says_for_itself() -> None:
    made = panel(CLEAR | {"edge_film_um": 38.0, "zones": [{"name": "chine", "edge": True, "film_um": 40.0}]})
    assert {one.name: one.reserve_um for one in made.parts} == {"main": 30.0, "edge": 22.5, "chine": 30.0}


def test_shares_fill_the_panel() -> None:
    found = panel(GEL | {"edge_film_um": 300, "zones": [{"name": "bow"}, {"name": "stern", "share": 0.25}]})
    assert [round(one.share, 3) for one in found.parts] == [0.6, 0.05, 0.1, 0.25]


def test_a_zone_takes_over_what_it_leaves_out_and_a_defect_lies_where_it_says() -> None:
    found = panel(
        GEL
        | {
            "oxidation_um": 8.0,
            "agreed": {"may_stay": ["fading"]},
            "defects": [SWIRLS, {"kind": "chip", "zone": "bow"}],
        }
        | {"zones": [{"name": "bow", "film_um": 300.0, "defects": [{"kind": "scratch", "depth_um": 4}]}]}
    )
    main, bow = found.parts
    assert (bow.oxidation_um, bow.may_stay, bow.budget_um) == (8.0, ("fading",), 50.0)
    assert [[mark.kind for mark in one.marks] for one in (main, bow)] == [["swirl"], ["swirl", "chip", "scratch"]]
    assert found.zone("bow") is bow


def test_trails_and_layers_go_where_they_belong() -> None:
    (found,) = panel(
        GEL | {"defects": [{"kind": "hologram", "depth_um": 0.3}, {"kind": "oxidation", "depth_um": 6}]}
    ).parts
    assert (found.trail_um, found.oxidation_um, found.marks) == (0.3, 6.0, ())


@pytest.mark.parametrize("kind", sorted(catalogue().kinds))
def test_every_kind_of_defect_is_taken(kind: str) -> None:
    assert panel(GEL | {"defects": [{"kind": kind}]})


@pytest.mark.parametrize(
    ("raw", "said", "field"),
    [
        ([], "A surface is an object", "surface"),
        ({"film_um": 500}, "Substrate is left out; there are gel_coat", "surface substrate"),
        (GEL | {"substrate": "gelcoat"}, "did you mean gel_coat", "surface substrate"),
        ({"substrate": "gel_coat"}, "Film_um is None; write a number from 1", "surface film_um"),
        (GEL | {"film_um": 0}, "write a number from 1", "surface film_um"),
        (GEL | {"film_um": -5}, "Film_um is -5", "surface film_um"),
        (GEL | {"film_um": float("nan")}, "Film_um is nan", "surface film_um"),
        (GEL | {"film_um": float("inf")}, "Film_um is inf", "surface film_um"),
        (GEL | {"film_um": "thick"}, "'thick' is no number", "surface film_um"),
        (GEL | {"film_um": "5 kg"}, "a mass, not a length", "surface film_um"),
        (GEL | {"film_um": True}, "Film_um is True", "surface film_um"),
        (GEL | {"tail": 3}, "did you mean tail_um", "surface tail"),
        (GEL | {"colour": "blu"}, "did you mean blue", "surface colour"),
        (GEL | {"soiled": "no"}, "write true or false", "surface soiled"),
        (GEL | {"oxidation_um": 60}, "60 µm is impossible for oxidation", "surface oxidation_um"),
        (GEL | {"defects": [{"kind": "swril"}]}, "did you mean swirl", "surface defects 1 kind"),
        (GEL | {"defects": [{"kind": "swirl", "depth_um": 12}]}, "12 µm is impossible for swirl marks; give 0.2 to 2",
         "surface defects 1 depth_um"),
        (GEL | {"defects": [{"kind": "tannin_stain", "depth_um": 3}]}, "none of their own",
         "surface defects 1 depth_um"),
        (GEL | {"defects": [{"kind": "swirl", "zone": "bow"}]}, "no zone 'bow'", "surface defects 1 zone"),
        (GEL | {"defects": [{"kind": "swirl", "spread": 0.5}]}, "from 1 to 5", "surface defects 1 spread"),
        (GEL | {"defects": ["swirl"]}, "Number 1 of defects is no object", "surface defects 1"),
        (GEL | {"defects": "swirl"}, "no list of at most 40", "surface defects"),
        (GEL | {"zones": [{"name": "all"}]}, "none is called all", "surface zones 1 name"),
        (GEL | {"zones": [{"film_um": 300}]}, "a zone has a name", "surface zones 1 name"),
        (GEL | {"zones": [{"name": "bow"}, {"name": "bow"}]}, "two zones are called 'bow'", "surface zones"),
        (GEL | {"zones": [{"name": "bow", "share": 0.6}, {"name": "aft", "share": 0.5}]}, "leave some for main",
         "surface zones"),
        (GEL | {"zones": [{"name": "bow", "substrate": "clear_coat"}]}, "no 'substrate' here",
         "surface zones 1 substrate"),
        (GEL | {"agreed": 90}, "Agreed is an object", "surface agreed"),
        (GEL | {"agreed": {"gloss60": 99}}, "no gel coat reads more than 97.3 at 60°", "surface agreed gloss60"),
        (GEL | {"agreed": {"may_stay": ["swirls"]}}, "did you mean swirl", "surface agreed may_stay"),
        (GEL | {"agreed": {"may_stay": "swirl"}}, "no list of kinds", "surface agreed may_stay"),
        (GEL | {"agreed": {"gloss": 90}}, "did you mean gloss", "surface agreed gloss"),
    ],
)  # fmt: skip
def test_what_no_panel_is_is_refused_in_a_sentence(raw: Any, said: str, field: str) -> None:
    with pytest.raises(PlanRefused) as refused:
        PanelSurface.of(raw, catalogue(), constants())
    assert said.lower() in refused.value.sentence.lower()
    assert refused.value.field == field
    assert not refused.value.sentence[0].islower()


def test_a_zone_nobody_knows_is_refused() -> None:
    with pytest.raises(PlanRefused, match="there are main"):
        panel(GEL).zone("bow")
