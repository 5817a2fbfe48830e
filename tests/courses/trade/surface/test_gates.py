"""The gates, each just passed and just kept; and what the share of correction counts."""

from typing import Any

import pytest

from courses.trade.surface.gates import Fault, correction, verdict_of
from tests.courses.trade.model import constants
from tests.courses.trade.surface.plans import (
    CLEAR,
    CRACKED,
    DA_MEDIUM,
    FINISH,
    GEL,
    HEAVY,
    MEDIUM,
    POLISH,
    REFER,
    SCRATCHED,
    SWIRL_OUT,
    SWIRLED,
    SWIRLS,
    TAPE,
    WASH,
    WIPE,
    Steps,
    act,
    sand,
    worked,
)


def codes(surface: dict[str, Any], steps: Steps) -> list[str]:
    """Return the codes of every reason."""
    return [one.code for one in worked(surface, steps).outcome.reasons]


@pytest.mark.parametrize(
    ("code", "passed", "kept", "steps"),
    [
        ("budget", {"budget_um": 3.3}, {"budget_um": 3.4}, SWIRL_OUT),
        ("reserve", {"reserve_um": 44.7, "budget_um": 8.0}, {"reserve_um": 44.6}, SWIRL_OUT),
        ("burn_through", {"film_um": 30.5, "film_spread": 0.5, "reserve_um": 20.0}, {"film_spread": 0.05}, SWIRL_OUT),
        ("heat", {"panel_degc": 52.0}, {"panel_degc": 40.0}, (TAPE, DA_MEDIUM)),
        ("uncured", {"cure": 0.89}, {"cure": 0.9}, SWIRL_OUT),
        ("uncorrected", {"defects": [{**SWIRLS, "depth_um": 1.6}]}, {}, SWIRL_OUT),
        ("gloss60", {"agreed": {"gloss60": 89.0}}, {"agreed": {"gloss60": 88.0}}, SWIRL_OUT),
        ("gloss20", {"agreed": {"gloss20": 81.5}}, {"agreed": {"gloss20": 80.0}}, SWIRL_OUT),
        ("strays", {"tail_um": 2.5}, {"tail_um": 2.2}, SWIRL_OUT),
        ("trail", {"trail_um": 1.9}, {"trail_um": 1.8}, SWIRL_OUT[:4]),
    ],
)
def test_a_gate_is_passed_by_a_little(code: str, passed: dict[str, Any], kept: dict[str, Any], steps: Steps) -> None:
    assert code in codes(SWIRLED | passed, steps)
    assert code not in codes(SWIRLED | kept, steps)


def test_a_film_below_its_reserve_may_still_be_refreshed() -> None:
    assert "reserve" not in codes(CLEAR | {"film_um": 29.0}, (WASH, FINISH, WIPE))
    assert "reserve" in codes(CLEAR | {"film_um": 29.0}, (WASH, FINISH, FINISH, WIPE))


@pytest.mark.parametrize(
    ("surface", "steps", "harm"),
    [
        (GEL, (WASH, MEDIUM, FINISH, WIPE), False),
        (GEL, (WASH, *POLISH), False),
        (GEL, (WASH, sand(1500, 4), *POLISH), True),
        (CLEAR, (WASH, FINISH, WIPE), False),
        (CLEAR, (WASH, MEDIUM, WIPE), False),
        (CLEAR, (WASH, MEDIUM, WIPE, FINISH, WIPE), False),
        (CLEAR, (WASH, TAPE, act("cut", machine="da"), WIPE, FINISH, WIPE), False),
        (CLEAR, (WASH, HEAVY, WIPE), True),
    ],
)
def test_how_much_is_worth_calling_too_much_grows_with_the_budget(
    surface: dict[str, Any], steps: Steps, harm: bool
) -> None:
    """On a sound panel a medium set is a waste and no harm; an eighth of a gel coat's budget, half a clear's, is."""
    assert ("over_cut" in codes(surface, steps)) is harm


def test_marks_already_on_the_panel_are_a_need() -> None:
    """A panel taken over in mid-job: the past doesn't change what it needs."""
    ladder = (sand(1000, 3), sand(1500, 4), sand(2000, 3), *POLISH)
    p800 = GEL | {"tail_um": 5.9, "rz_um": 3.4, "soiled": False}
    assert worked(p800, ladder).outcome.verdict == "pass"
    assert "over_cut" in codes(GEL | {"soiled": False}, ladder)


@pytest.mark.parametrize(
    ("steps", "wanted"),
    [((), ["untold"]), ((REFER,), []), ((WASH, HEAVY, REFER), ["through"]), ((WASH, REFER, FINISH), [])],
)
def test_a_sign_has_to_be_told_before_anything_touches_it(steps: Steps, wanted: list[str]) -> None:
    sound = GEL | {"defects": CRACKED["defects"]}
    assert [code for code in codes(sound, steps) if code in ("untold", "through")] == wanted


def test_a_sign_that_was_agreed_to_stay_was_told() -> None:
    assert codes(GEL | {"defects": CRACKED["defects"], "agreed": {"may_stay": ["crack_star"]}}, ()) == []


def test_stopping_on_a_cutting_step_is_no_finish() -> None:
    assert "cutting_last" in codes(GEL, (WASH, HEAVY))
    assert "cutting_last" not in codes(GEL, (WASH, HEAVY, FINISH))


def test_at_an_edge_only_harms_count() -> None:
    edged = SWIRLED | {"edge_film_um": 20.0}
    taped = worked(edged, (WASH, TAPE, *SWIRL_OUT[3:])).outcome
    assert {one.name: one.verdict for one in taped.zones} == {"main": "pass", "edge": "pass"}
    bare = worked(edged, (WASH, *SWIRL_OUT[3:])).outcome
    assert {one.name: one.verdict for one in bare.zones} == {"main": "pass", "edge": "harm"}
    assert {one.zone for one in bare.reasons} == {"edge"}


def test_what_may_stay_is_not_missed() -> None:
    chalky = GEL | {"oxidation_um": 12.0, "agreed": {"may_stay": ["oxidation"]}}
    assert codes(chalky, ()) == []
    assert codes(SCRATCHED | {"agreed": {"may_stay": ["scratch", "swirl"]}}, (WASH, FINISH, WIPE)) == []


def test_correction_counts_layer_marks_and_deposits_by_their_weight() -> None:
    both = CLEAR | {"defects": [SWIRLS, {"kind": "scum_line"}], "soiled": False}
    one = worked(both, (act("alkaline"),)).states[-1].conditions[0]
    assert correction(one, constants()) == pytest.approx(1 / 3)
    assert correction(worked(CLEAR, ()).start.conditions[0], constants()) == 1.0


def test_a_referral_leaves_out_what_is_deeper_than_the_budget_unless_that_would_help() -> None:
    steps = (DA_MEDIUM, WIPE, FINISH, WIPE)
    states = [worked(SCRATCHED, (WASH, TAPE, *more, *steps)).states[-1].conditions[0] for more in ((), (REFER,))]
    assert correction(states[0], constants()) < 0.8 < correction(states[1], constants())


@pytest.mark.parametrize(("found", "verdict"), [((), "pass"), (("redo",), "redo"), (("redo", "harm", "redo"), "harm")])
def test_the_worst_fault_is_the_verdict(found: tuple[str, ...], verdict: str) -> None:
    assert verdict_of(tuple(Fault("strays", one, "main", 1, 1.0) for one in found)) == verdict
