"""A whole quote: the worked job of the exercise, kept as JSON and read again."""

import json

import pytest

from courses.trade.errors import MissingInput, OutOfRange
from courses.trade.estimate import Grade
from courses.trade.film import Hull
from courses.trade.minutes import minutes_of
from courses.trade.quote import PLACES, Asked, Coat, quote_of, read_quote
from tests.courses.trade.model import constants

TABLE = minutes_of(constants())
BOAT = Hull(loa_m=6.40, lwl_m=5.55, beam_m=2.45, draft_m=0.42, freeboard_m=0.80)
RATES = {"hour": 62.0, "disc": 1.4, "pack": 55.0}


def asked(**changed: object) -> Asked:
    given: dict[str, object] = {
        "formula": "T1",
        "hull": BOAT,
        "coat": Coat(1, pack_ml=30.0),
        "grades": (Grade("P1500", 4), Grade("P2000", 3)),
        "rotary": 1,
        "da_finish": 1,
        "rates": RATES,
    }
    return Asked(**{**given, **changed})  # type: ignore[arg-type]


def test_the_worked_job_of_the_exercise_by_the_simulators_own_table() -> None:
    # [calc] of the exercise: 14.16 m², 21.8 h, 40 + 2 discs, 38.4 mL in 2 × 30 mL
    quote = quote_of(asked(), TABLE)
    assert quote.area_m2 == 14.16
    assert quote.hours == pytest.approx(21.8, abs=0.11)
    assert quote.packs is not None
    assert (quote.packs.need_ml, quote.packs.count) == (38.4, 2)
    assert next(item.all for item in quote.items if item.name == "discs") == 42
    assert quote.part == "T1 topsides: 2 × (LOA + B) × F"
    assert {line.name: line.quantity for line in quote.charges} == {
        "hour": pytest.approx(quote.hours),
        "disc": 42,
        "pack": 2,
    }
    assert quote.price == pytest.approx(quote.hours * 62 + 42 * 1.4 + 110, abs=0.01)


def test_a_quote_is_kept_as_json_and_read_again_whole() -> None:
    for one in (asked(), asked(coat=Coat(0), grades=(), rates={})):
        quote = quote_of(one, TABLE)
        assert read_quote(json.loads(json.dumps(quote.as_json()))) == quote


def test_what_may_be_written_beside_it() -> None:
    estimated = quote_of(asked(), TABLE).estimated()
    assert list(estimated) == [
        *("wash", "tape", "sand_p1500", "sand_p2000", "rotary", "da_finish", "wash_off", "coat"),
        *("discs", "pads_rotary", "pads_da_finish", "coating"),
    ]
    assert estimated["discs"] == ("Discs", 40.0, "")
    assert estimated["coating"] == ("Coating", 38.4, "ml")
    assert estimated["coat"][1:] == (1.8, "h")
    assert "coating" not in quote_of(asked(coat=Coat(0)), TABLE).estimated()


@pytest.mark.parametrize(
    ("coat", "need_ml"),
    [
        (Coat(1, "C2", dry_um=0.8), 46.2),  # the exercise, L1 30 %
        (Coat(1, "C2", dry_um=0.8, loss="L2"), 42.1),
        (Coat(2, substrate="clear_coat"), 37.0),
    ],
)
def test_the_coat_by_rate_and_by_film(coat: Coat, need_ml: float) -> None:
    packs = coat.packs(14.16)
    assert packs is not None
    assert packs.need_ml == need_ml


def test_a_margin_makes_the_area_larger_and_a_deck_is_worked_at_arms_reach() -> None:
    assert quote_of(asked(margin_percent=20.0), TABLE).area_m2 == 16.99
    deck = asked(formula="D1", left_out_m2=3.0).job()
    assert (deck.area_m2, round(deck.section_m2, 2)) == (8.76, 1.44)


def test_what_can_not_be_is_refused() -> None:
    with pytest.raises(MissingInput, match="dry_um"):
        quote_of(asked(coat=Coat(1, "C2")), TABLE)
    with pytest.raises(OutOfRange, match="margin_percent"):
        quote_of(asked(margin_percent=90.0), TABLE)
    with pytest.raises(MissingInput, match="give F"):
        quote_of(asked(hull=Hull(loa_m=6.0, beam_m=2.0)), TABLE)


def test_walk_zones_glazing_and_what_is_left_alone_can_all_be_named() -> None:
    assert {"nonskid", "steps", "platform", "seats", "wheel"} <= set(PLACES)
    assert {"glazing", "vinyl", "anodes", "transducers", "teak", "metal"} <= set(PLACES)
