"""What holds of every plan on every panel, and what each kind of step does."""

from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from courses.trade.surface import read_plan, simulate
from courses.trade.surface.abrading import burn_chance
from courses.trade.surface.condition import Condition
from courses.trade.surface.gates import VERDICTS
from tests.courses.trade.model import constants
from tests.courses.trade.surface.drawn import QUIET, abrasive, plans, surfaces
from tests.courses.trade.surface.plans import (
    CLEAR,
    CRACKED,
    DA_MEDIUM,
    FINISH,
    FOURTEEN,
    GEL,
    HEAVY,
    MEDIUM,
    MILD_CHALK,
    POLISH,
    REFER,
    SCRATCHED,
    SWIRLED,
    SWIRLS,
    TAPE,
    TEST,
    WASH,
    WIPE,
    Steps,
    act,
    panel,
    sand,
    worked,
)

CLOSE = 1e-9


def conditions(surface: dict[str, Any], steps: Steps) -> list[Condition]:
    """Return the first zone before the plan and after each of its steps."""
    run = worked(surface, steps, optics="none")
    return [run.start.conditions[0], *(state.conditions[0] for state in run.states)]


@given(surface=surfaces, steps=plans)
@settings(max_examples=60)
def test_film_never_grows_and_what_is_gone_is_gone(surface: dict[str, Any], steps: Steps) -> None:
    """Invariants 3, 4 and 5 of the fact sheet."""
    found = conditions(surface, steps)
    for before, after in pairwise(found):
        assert 0 <= after.film_um <= before.film_um
        assert after.film_um + after.removed_um == pytest.approx(surface["film_um"])
        assert after.levelled_um <= after.removed_um + CLOSE
        assert after.planed_um <= after.removed_um + CLOSE
        assert after.oxidised <= before.oxidised + CLOSE
        assert burn_chance(after, constants()) >= burn_chance(before, constants()) - CLOSE
        for one in before.zone.marks:
            assert after.open_share(one) <= before.open_share(one) + CLOSE
            assert after.left_um(one) <= before.left_um(one) + CLOSE


@given(surface=surfaces, steps=st.lists(st.one_of(abrasive), min_size=1, max_size=5))
@settings(max_examples=60)
def test_no_finish_is_finer_than_its_last_abrasive(surface: dict[str, Any], steps: Steps) -> None:
    """Invariants 6 and 12: and only a rotary leaves a trail."""
    found = conditions(surface, steps)
    for step, before, after in zip(read_plan(steps), found, found[1:], strict=False):
        assert after.tail_um >= after.own_tail_um - CLOSE
        assert after.rz_um <= max(before.rz_um, after.own_tail_um) + CLOSE
        if step.machine != "rotary":
            assert after.trail_um <= before.trail_um + CLOSE


counted = abrasive.filter(lambda step: step.get("sets") != "until_clear")


@given(surface=surfaces, steps=st.lists(counted, min_size=2, max_size=4))
@settings(max_examples=40)
def test_the_order_of_steps_changes_the_finish_and_not_the_film(surface: dict[str, Any], steps: Steps) -> None:
    """Invariant 7, as long as film is left and nobody looks between two sets."""
    there, back = conditions(surface, steps)[-1], conditions(surface, list(reversed(steps)))[-1]
    if there.film_um > 0:
        assert there.film_um == pytest.approx(back.film_um)


@pytest.mark.parametrize("op", QUIET)
def test_what_is_no_abrasion_takes_no_film(op: str) -> None:
    """Invariant 8."""
    assert worked(MILD_CHALK, (act(op),) * 3).outcome.removed_um == 0


def test_what_goes_through_the_film_or_lies_in_its_colour_is_never_polished_out() -> None:
    """Invariant 9."""
    surface = GEL | {
        "film_um": 2000.0,
        "soiled": False,
        "defects": [{"kind": "crack_ring"}, {"kind": "fading"}, {"kind": "blisters"}],
    }
    left = {one.kind: one.left for one in worked(surface, (HEAVY,) * 40).outcome.residual}
    assert left == {"crack_ring": 1.0, "fading": 1.0, "blisters": 1.0}


@given(surface=surfaces, steps=st.lists(abrasive, max_size=4))
@settings(max_examples=40)
def test_a_taped_edge_is_never_the_worse(surface: dict[str, Any], steps: Steps) -> None:
    """Invariant 10."""
    bare, taped = conditions(surface, steps)[-1], conditions(surface, [TAPE, *steps])[-1]
    assert burn_chance(taped, constants()) <= burn_chance(bare, constants()) + CLOSE


@pytest.mark.parametrize("step", [FINISH, DA_MEDIUM, sand(1500, 4)])
def test_a_step_repeated_on_its_own_finish_costs_film_for_nothing(step: dict[str, Any]) -> None:
    """Invariant 13."""
    once, twice = (conditions(CLEAR, (WASH, *(step,) * times))[-1] for times in (6, 7))
    assert (once.rz_um, once.tail_um, once.trail_um) == (twice.rz_um, twice.tail_um, twice.trail_um)
    assert twice.film_um < once.film_um


@given(surface=surfaces, steps=plans, extra=abrasive)
@settings(max_examples=60)
def test_a_harm_is_never_taken_away_by_a_later_step(surface: dict[str, Any], steps: Steps, extra: Any) -> None:
    """Invariant 14: no pad gains less depth than a finishing foam, so no later stage calls for more film."""
    run = worked(surface, steps, optics="none")
    done = {one.code for one in run.outcome.reasons if one.verdict == "harm"}
    later = worked(surface, [*steps, WASH, extra, TAPE, TEST, REFER, WIPE], optics="none").outcome
    assert done <= {one.code for one in later.reasons if one.verdict == "harm"}


@given(surface=surfaces, steps=plans)
@settings(max_examples=60)
def test_a_referral_never_makes_a_verdict_worse(surface: dict[str, Any], steps: Steps) -> None:
    without, referred = (worked(surface, plan, optics="none").outcome for plan in (steps, [REFER, *steps]))
    assert VERDICTS.index(referred.verdict) <= VERDICTS.index(without.verdict)


@given(surface=surfaces, steps=plans)
@settings(max_examples=30)
def test_the_same_plan_gives_the_same_run(surface: dict[str, Any], steps: Steps) -> None:
    """Invariant 15."""
    assert worked(surface, steps).as_json() == worked(surface, steps).as_json()


@pytest.mark.parametrize(
    ("kind", "right", "wrong"),
    [
        ("water_spots_mineral", "acid", "alkaline"),
        ("scum_line", "alkaline", "acid"),
        ("tannin_stain", "acid", "iron"),
        ("rust_stain", "iron", "alkaline"),
    ],
)
def test_each_deposit_goes_with_its_chemistry(kind: str, right: str, wrong: str) -> None:
    surface = CLEAR | {"defects": [{"kind": kind}]}
    assert worked(surface, (WASH, act(right))).outcome.residual == ()
    left = worked(surface, (WASH, act(wrong), act(wrong))).outcome
    assert [(one.kind, one.left) for one in left.residual] == [(kind, 1.0)]
    assert left.verdict == "redo"


def test_acid_does_nothing_for_an_etch() -> None:
    surface = CLEAR | {"defects": [{"kind": "water_spots_etched", "depth_um": 2.0}]}
    assert [one.left for one in worked(surface, (WASH, act("acid"), act("acid"))).outcome.residual] == [1.0]


def test_a_deposit_that_is_abraded_drags_its_grit_so_the_order_matters() -> None:
    surface = SWIRLED | {"defects": [SWIRLS, {"kind": "water_spots_mineral", "depth_um": 1.5}]}
    cut = (DA_MEDIUM, WIPE, FINISH, WIPE)
    first, last = (
        worked(surface, plan).outcome for plan in ((WASH, act("acid"), *cut), (WASH, *cut, act("acid"), act("dry")))
    )
    assert (first.verdict, last.verdict) == ("pass", "redo")
    (stray,) = [one for one in last.reasons if one.code == "strays"]
    assert "dragged deposits" in stray.sentence
    assert stray.would_save == "The chemistry that dissolves them before step 2: acid."


def test_polish_before_the_wash_soils_and_the_wash_afterwards_does_not_excuse_it() -> None:
    late = worked(SWIRLED, (TAPE, DA_MEDIUM, WASH, FINISH, WIPE)).outcome
    assert late.verdict == "redo"
    assert late.reasons[0].would_save == "Wash before step 2."


def test_a_referral_after_the_polish_excuses_nothing() -> None:
    assert worked(CRACKED, (WASH, TAPE, *POLISH, REFER)).outcome.verdict == "harm"
    assert worked(CRACKED, (WASH, TAPE, REFER, *POLISH)).outcome.verdict == "pass"


def test_tape_after_the_cut_excuses_nothing() -> None:
    thin = CLEAR | {"film_um": 33.0, "film_spread": 0.1, "budget_um": 9.0, "defects": [SWIRLS]}
    late = worked(thin, (WASH, HEAVY, HEAVY, TAPE, FINISH, WIPE)).outcome
    assert "burn_through" in [one.code for one in late.reasons]
    taped = worked(thin, (WASH, TAPE, HEAVY, HEAVY, FINISH, WIPE)).outcome
    assert "burn_through" not in [one.code for one in taped.reasons]


EDGED = CLEAR | {"edge_film_um": 38.0, "defects": [SWIRLS]}


def test_a_step_without_a_zone_works_every_zone_but_an_edge_under_tape() -> None:
    bare = {one.name: one.removed_um for one in worked(EDGED, (WASH, DA_MEDIUM)).outcome.zones}
    assert bare["edge"] == pytest.approx(2.5 * bare["main"])
    taped = {one.name: one.removed_um for one in worked(EDGED, (WASH, TAPE, DA_MEDIUM)).outcome.zones}
    assert (taped["edge"], taped["main"]) == (0.0, bare["main"])
    off = worked(EDGED, (WASH, TAPE, act("untape"), DA_MEDIUM)).outcome.zones
    assert [one.removed_um for one in off] == list(bare.values())


@pytest.mark.parametrize("name", FOURTEEN)
def test_the_fourteen_plans_come_out_alike_where_the_edge_has_a_film_of_its_own(name: str) -> None:
    surface, steps, wanted = FOURTEEN[name]
    ratio = 0.8 if surface["film_um"] == 48.0 else 0.75
    assert worked(surface | {"edge_film_um": ratio * surface["film_um"]}, steps).outcome.verdict == wanted


def test_a_hand_along_an_edge_presses_no_harder_there() -> None:
    along = sand(2000, 2, pad="block", zone="edge")
    zones = {one.name: one for one in worked(EDGED, (WASH, along)).outcome.zones}
    across = {one.name: one for one in worked(EDGED, (WASH, sand(2000, 2, pad="block"))).outcome.zones}
    assert zones["edge"].removed_um == pytest.approx(across["main"].removed_um)
    assert across["edge"].removed_um == pytest.approx(2.5 * across["main"].removed_um)
    assert zones["main"].removed_um == 0


def test_an_edge_gets_warmer_than_the_field() -> None:
    hot = act("cut", pad="foam_cut", speeds_rpm=[1650] * 4)
    bare, taped = (worked(EDGED, plan).outcome for plan in ((WASH, hot), (WASH, TAPE, hot)))
    assert bare.heat_degc > taped.heat_degc + 10


ZONED = GEL | {
    "oxidation_um": 3.0,
    "zones": [{"name": "bow", "film_um": 262.0, "agreed": {"may_stay": ["oxidation"]}}, {"name": "rest"}],
}


def test_a_step_in_a_zone_leaves_the_others_alone() -> None:
    steps = [{**step, "zone": "rest"} for step in (WASH, TAPE, *POLISH)]
    zones = {one.name: one for one in worked(ZONED, steps).outcome.zones}
    assert (zones["bow"].removed_um, zones["bow"].verdict) == (0.0, "pass")
    assert (zones["rest"].removed_um, zones["rest"].verdict) == (pytest.approx(7.6, abs=0.05), "pass")
    assert worked(ZONED, (WASH, TAPE, *POLISH, sand(1500))).outcome.verdict == "harm"


def test_a_zone_costs_its_share_of_the_minutes() -> None:
    whole = worked(ZONED, (WASH,)).outcome.minutes
    assert worked(ZONED, (act("wash", zone="bow"),)).outcome.minutes == pytest.approx(whole * 0.1)


def test_an_idle_zone_is_neither_worked_nor_judged() -> None:
    surface = GEL | {"oxidation_um": 9.0, "zones": [{"name": "vinyl", "idle": True, "film_um": 80.0}]}
    zones = {one.name: one for one in worked(surface, (WASH, HEAVY)).outcome.zones}
    assert (zones["vinyl"].removed_um, zones["vinyl"].verdict) == (0.0, "pass")
    assert zones["main"].removed_um > 3


def test_a_set_is_repeated_until_the_wipe_shows_it_clear() -> None:
    clear = act("cut", machine="da", sets="until_clear")
    swirled = worked(SWIRLED | {"budget_um": 20.0}, (WASH, TAPE, clear)).outcome
    assert swirled.removed_um == pytest.approx(2.72, abs=0.01)
    deeper = worked(
        SWIRLED | {"budget_um": 20.0, "defects": [{**SWIRLS, "depth_um": 1.4}]}, (WASH, TAPE, clear)
    ).outcome
    assert deeper.removed_um == pytest.approx(2 * swirled.removed_um)
    assert deeper.minutes == pytest.approx(3.0 + 2 * 34.2 + 2 * 2.8, abs=0.2)


def test_a_set_is_not_repeated_past_the_budget_and_at_most_eight_times() -> None:
    clear = act("cut", machine="da", sets="until_clear")
    assert worked(SCRATCHED, (WASH, TAPE, clear)).outcome.removed_um == pytest.approx(2 * 2.72, abs=0.02)
    deep = {"kind": "scratch", "depth_um": 28.0}
    most = worked(GEL | {"defects": [deep]}, (WASH, clear)).outcome.removed_um
    assert most == pytest.approx(8 * 2.72, abs=0.05)


def test_what_was_referred_or_may_stay_is_not_chased() -> None:
    clear = act("cut", machine="da", sets="until_clear")
    assert worked(SCRATCHED, (WASH, TAPE, REFER, clear)).outcome.removed_um == pytest.approx(2.72, abs=0.01)
    stays = SCRATCHED | {"agreed": {"may_stay": ["scratch"]}}
    assert worked(stays, (WASH, TAPE, clear)).outcome.removed_um == pytest.approx(2.72, abs=0.01)


def test_a_used_disc_cuts_less_and_leaves_patches() -> None:
    rough = GEL | {"oxidation_um": 10.0, "rz_um": 3.45, "tail_um": 5.9, "soiled": False}
    fresh, used = (worked(rough, (sand(1500, 4, disc=disc), *POLISH)).outcome for disc in ("fresh", "used"))
    assert used.removed_um < fresh.removed_um
    assert used.oxidised > fresh.oxidised + 0.02
    assert "oxidised" in [one.code for one in used.reasons]
    by_area = worked(rough, (sand(1500, 4, disc=1.0),)).outcome
    assert by_area.removed_um == worked(rough, (sand(1500, 4, disc="used"),)).outcome.removed_um
    assert (
        worked(rough, (sand(1500, 2, disc=0.5),)).outcome.tail_um
        < worked(rough, (sand(1500, 2, disc=2.0),)).outcome.tail_um
    )


def test_an_inspection_finds_what_a_later_step_has_to_answer() -> None:
    rough = GEL | {"rz_um": 4.3, "tail_um": 7.3, "soiled": False}
    worn = (sand(1500, 3, disc=1.3), act("dry"), act("inspect"))
    run = worked(rough, (*worn, *POLISH))
    assert run.states[2].found == ("Strays stand that the last abrasive didn't leave.",)
    (stray,) = [one for one in run.outcome.reasons if one.code == "strays"]
    assert "Step 3 showed it; no later step answered it." in stray.sentence
    answered = worked(rough, (*worn, sand(1500, 4), act("dry"), act("inspect"), *POLISH)).outcome
    assert answered.verdict == "pass"


def test_wet_hides_everything_and_oils_hide_shallow_marks_until_they_are_wiped() -> None:
    look = act("inspect")
    wet = worked(SWIRLED, (WASH, look)).states[-1].found
    assert wet == ("It is wet: nothing can be judged.",)
    marred = CLEAR | {"defects": [{"kind": "da_haze", "depth_um": 0.2}], "oils": True, "soiled": False}
    oily, wiped = worked(marred, (look,)).states[-1], worked(marred, (WIPE, look)).states[-1]
    assert (oily.found, wiped.found) == ((), ("Still there: dual-action haze.",))
    polished = worked(CLEAR, (WASH, MEDIUM, look, WIPE, look))
    assert polished.states[2].found == ()
    assert polished.states[4].found == ("Bands follow the path of the machine.",)


REPAIR = GEL | {"zones": [{"name": "repair", "cure": 0.6, "tail_um": 5.9, "rz_um": 3.4}], "soiled": False}
FLAT = tuple({**step, "zone": "repair"} for step in (sand(1000, 3), sand(1500, 4), sand(2000, 3)))


def test_a_repair_that_is_soft_is_not_abraded() -> None:
    now = worked(REPAIR, (*FLAT, *POLISH)).outcome
    assert [(one.code, one.step) for one in now.reasons if one.verdict == "harm"] == [("uncured", 1)]
    warm = (act("wait", hours=16, warm_degc=28), act("cure_test", zone="repair"))
    assert worked(REPAIR, (*warm, *FLAT, *POLISH)).outcome.verdict == "pass"
    cold = (act("wait", hours=24, warm_degc=8), act("cure_test", zone="repair"))
    assert "uncured" in [one.code for one in worked(REPAIR, (*cold, *FLAT, *POLISH)).outcome.reasons]


def test_resin_with_too_little_catalyst_stays_soft_however_long_it_is_warmed() -> None:
    poor = REPAIR | {"zones": [{"name": "repair", "cure": 0.3, "cure_most": 0.8}]}
    run = worked(poor, (act("wait", hours=200, warm_degc=30), act("cure_test", zone="repair"), *FLAT))
    assert run.states[1].found == ("The nail leaves a mark: it is soft.",)
    assert "uncured" in [one.code for one in run.outcome.reasons]


def test_a_nail_tells_soft_from_hard_and_time_goes_by_to_the_hour_that_is_named() -> None:
    run = worked(REPAIR | {"panel_degc": 28.0}, (act("cure_test", zone="repair"), act("cure_test", at_h=16)))
    assert [state.found[0] for state in run.states] == [
        "The nail leaves a mark: it is soft.",
        "The nail leaves no mark: it is hard.",
    ]


@pytest.mark.parametrize(
    ("before", "code"),
    [
        ((FINISH, WASH, WIPE), "coat_over_water"),
        ((FINISH, WASH, act("dry")), ""),
        ((FINISH,), "coat_over_residue"),
        ((FINISH, WIPE), ""),
        ((act("soil"),), "coat_over_residue"),
        ((WASH, act("wait", hours=3)), ""),
    ],
)
def test_a_coat_seals_in_water_in_the_seams_and_residue(before: Steps, code: str) -> None:
    soiled = before[0]["op"] == "soil"
    steps = (*(step for step in before if step["op"] != "soil"), act("coat", product="K"))
    found = worked(CLEAR | {"soiled": soiled}, steps).outcome
    assert [one.code for one in found.reasons if one.verdict == "harm"] == ([code] if code else [])


@pytest.mark.parametrize(
    ("kind", "takes_it_off"), [("residue", "wipe"), ("water_spots_mineral", "acid"), ("scum_line", "alkaline")]
)
def test_what_is_sealed_in_stays_sealed_in_and_what_came_off_before_does_not(kind: str, takes_it_off: str) -> None:
    dirty = GEL | {"soiled": False, "defects": [{"kind": kind}]}
    after = (act("coat"), act(takes_it_off), act("dry"))
    before = (act(takes_it_off), act("dry"), act("coat"))
    kept = dirty | {"agreed": {"may_stay": [kind]}}
    assert [one.code for one in worked(dirty, after).outcome.reasons] == ["coat_over_residue"]
    assert worked(dirty, before).outcome.verdict == worked(kept, after).outcome.verdict == "pass"


def test_a_coat_on_a_soft_repair_can_only_be_stripped() -> None:
    assert worked(REPAIR, (act("coat"),)).outcome.reasons[0].code == "coat_over_uncured"


def test_clay_lifts_the_thinnest_deposits_and_drags_soil() -> None:
    thin = CLEAR | {"defects": [{"kind": "water_spots_mineral", "depth_um": 0.4}]}
    assert worked(thin, (WASH, act("clay"))).outcome.residual == ()
    assert [one.kind for one in worked(CLEAR, (act("clay"),)).outcome.residual] == ["scratch"]


@pytest.mark.parametrize("op", ["wipe", "wash", "alkaline"])
def test_residue_comes_off_with_a_wipe_or_a_wash(op: str) -> None:
    surface = CLEAR | {"defects": [{"kind": "residue"}], "soiled": False}
    assert worked(surface, (act(op),)).outcome.residual == ()
    assert worked(surface, (FINISH,)).outcome.verdict == "redo"


def test_water_cools_a_hot_panel_and_a_wait_lets_it_come_to_the_air() -> None:
    hot = CLEAR | {"panel_degc": 38.0}
    run = worked(hot, (act("prerinse"), act("acid")))
    assert [state.panel_degc for state in run.states] == [38.0, 20.0]
    waited = worked(hot, (act("wait", hours=2), HEAVY))
    assert waited.states[-1].panel_degc == 22.0
    assert worked(hot, (HEAVY,)).states[-1].heat_degc == pytest.approx(waited.states[-1].heat_degc + 16)


def test_tape_on_a_zone_covers_the_edges_of_that_zone() -> None:
    surface = GEL | {"zones": [{"name": "bow", "edge_film_um": 200.0}]}
    zones = worked(surface, (act("tape", zone="bow"), HEAVY)).outcome.zones
    assert [(one.name, one.removed_um > 0) for one in zones] == [("main", True), ("bow", True), ("bow_edge", False)]


def test_a_plan_is_worked_on_any_substrate_with_every_pad() -> None:
    for substrate, film in (("gel_coat", 500.0), ("clear_coat", 50.0), ("topcoat_2k", 80.0)):
        on = panel({"substrate": substrate, "film_um": film})
        for pad in ("wool", "microfibre", "foam_cut", "foam_finish"):
            for compound in ("heavy", "medium", "fine", "ultrafine"):
                steps = read_plan([act("cut", machine="da", pad=pad, compound=compound)], on)
                assert simulate(on, steps, constants(), optics="none").outcome.removed_um > 0
