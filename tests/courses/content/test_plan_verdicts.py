"""What the lessons on planning say of whole plans, worked on the model surface again."""

import re
from collections.abc import Mapping, Sequence
from html import unescape
from urllib.parse import parse_qs, urlsplit

import pytest

from courses.trade.plan_text import read_plan_text, read_token
from courses.trade.surface import PanelSurface, Run, read_plan, simulate, unsteady
from tests.courses.content.reading import plain, told, words
from tests.courses.pictures.trade import catalogue
from tests.courses.trade.model import constants

Steps = Sequence[Mapping[str, object]]


def acts(words: str) -> list[dict[str, object]]:
    """Steps by their ops; P grades as sanding on a hard disc, each with its passes: ``P1500*4 dry inspect cut``."""
    return [
        {"op": "sand", "grade": word.partition("*")[0], "passes": int(word[-1]), "pad": "disc"}
        if "*" in word
        else {"op": "cut", "machine": "da"}
        if word == "da_cut"
        else {"op": word}
        for word in words.split()
    ]


READY = "wash tape test_spot"
POLISH = "cut wipe refine wipe finish wipe"
LADDER = "P1000*4 dry inspect P1500*4 dry inspect P2000*3 dry inspect"
CORRECTION = "da_cut wipe finish wipe"
SWIRLS = {"substrate": "clear_coat", "defects": [{"kind": "swirl", "depth_um": 0.8}]}


def chalked(depth_um: float, film_um: float = 500.0) -> dict[str, object]:
    """Gel coat that chalks so deep on average."""
    return {"substrate": "gel_coat", "film_um": film_um, "oxidation_um": depth_um, "rz_um": 1.0, "tail_um": 2.0}


def ran(surface: Mapping[str, object], plan: str, optics: str = "last") -> Run:
    """The plan, worked."""
    panel = PanelSurface.of(surface, catalogue(), constants())
    return simulate(panel, read_plan(acts(plan), panel), constants(), optics=optics)


@pytest.mark.parametrize(
    ("depths", "plan", "row", "cut", "verdict"),
    [
        ((13.0, 14.0), f"{LADDER} {POLISH}", "P2000 × 3, then polish 31.6 pass", 31.6, "pass"),
        ((2.6, 2.7), f"{LADDER} {POLISH}", "the same 31.6 harm: over 8 times the need", 31.6, "harm"),
        ((2.6, 2.8), POLISH, "polish alone 7.6 pass", 7.6, "pass"),
        ((8.5, 8.5), f"P1500*4 dry inspect {POLISH}", "P1500 × 4, then polish 15.2 pass", 15.2, "pass"),
    ],
)
def test_the_plans_of_l13_end_as_it_says(
    depths: tuple[float, float], plan: str, row: str, cut: float, verdict: str
) -> None:
    for depth in depths:
        outcome = ran(chalked(depth), f"{READY} {plan}").outcome
        assert outcome.verdict == verdict
        assert outcome.removed_um == pytest.approx(cut, abs=0.06)
        if verdict == "harm":
            assert 8 < outcome.removed_um / outcome.needed_cut_um < 9
    assert row in plain("L13")


def test_the_worked_example_of_l13_comes_out_and_is_steady() -> None:
    run = ran(chalked(8.5), f"{READY} P1500*4 dry inspect {POLISH}")
    films = [round(run.states[n - 1].film_um, 1) for n in (4, 7, 9, 11)]
    assert films == [492.5, 488.5, 485.5, 484.8]
    text = plain("L13")
    assert all(f"Film left: {film}" in text for film in films)
    assert run.outcome.gloss60 == pytest.approx(97, abs=0.5)
    assert run.outcome.gloss20 == pytest.approx(94, abs=0.5)
    assert run.outcome.minutes == pytest.approx(75.5, abs=0.06)
    assert "1.5 + 1.5 + 2 + 9.1 + 4.8 + 2 × 16.4 + 23.8 = 75.5" in text
    panel = PanelSurface.of(chalked(8.5), catalogue(), constants())
    assert unsteady(panel, read_plan(acts(f"{READY} P1500*4 dry inspect {POLISH}"), panel), constants()) == ()


def test_the_link_of_l13_opens_its_worked_example_and_polish_alone_beside_it() -> None:
    link = next(one for one in re.findall(r'href="([^"]+)"', words("L13")) if one.startswith("/try-a-plan/?"))
    sent = {name: value for name, [value] in parse_qs(urlsplit(unescape(link)).query).items()}
    plans = [[read_token(token) for token in read_plan_text(sent[name])] for name in ("plan", "beside")]
    outcomes = []
    for plan in plans:
        panel = PanelSurface.of(chalked(8.5), catalogue(), constants())
        outcomes.append(simulate(panel, read_plan(plan, panel), constants(), optics="none").outcome)
    assert [(one.verdict, round(one.removed_um, 1)) for one in outcomes] == [("pass", 15.2), ("redo", 7.6)]
    assert (sent["film"], sent["mark1"], sent["depth1"]) == ("500 um", "oxidation", "8.5 um")


@pytest.mark.parametrize("step_um", [8.0, 9.0, 10.0])
def test_a_step_of_old_numbers_comes_down_under_a_flat_backing(step_um: float) -> None:
    numbers = {
        "substrate": "gel_coat",
        "film_um": 500,
        "defects": [{"kind": "decal_ghost", "depth_um": step_um, "spread": 1.15}],
    }
    flat = ran(numbers, f"{READY} P1500*4 dry inspect P2000*3 dry inspect {POLISH}").outcome
    assert flat.verdict == "pass"
    assert flat.removed_um == pytest.approx(19.5, abs=0.06)
    assert ran(numbers, f"{READY} finish wipe finish wipe finish wipe").outcome.verdict == "redo"
    assert "19.5 model µm in all" in plain("L13")


@pytest.mark.parametrize(("last", "verdict", "trail_um"), [("refine wipe", "redo", 0.25), (CORRECTION, "pass", 0.0)])
def test_wool_leaves_a_trail_and_a_dual_action_none(last: str, verdict: str, trail_um: float) -> None:
    outcome = ran({**SWIRLS, "film_um": 48}, f"{READY} {last}").outcome
    assert (outcome.verdict, outcome.trail_um) == (verdict, pytest.approx(trail_um, abs=0.005))


@pytest.mark.parametrize(
    ("film_um", "plan", "left", "verdict"),
    [
        (36, CORRECTION, 32.7, "pass"),
        (32, CORRECTION, 28.7, "harm"),
        (31, CORRECTION, 27.7, "harm"),
        (46, CORRECTION, 42.7, "pass"),
        (32, "finish wipe", 31.4, "redo"),
        (32, "da_cut wipe", 29.3, "harm"),
    ],
)
def test_what_a_correction_leaves_of_a_clear_coat_is_what_l11_says(
    film_um: float, plan: str, left: float, verdict: str
) -> None:
    outcome = ran({**SWIRLS, "film_um": film_um}, f"{READY} {plan}").outcome
    assert (outcome.verdict, round(outcome.film_um, 1)) == (verdict, left)
    assert (left, "um") in told("L11")


def test_a_thin_gel_coat_does_not_stand_the_ladder() -> None:
    outcome = ran(chalked(13.0, film_um=262), f"{READY} {LADDER} {POLISH}").outcome
    assert (outcome.verdict, round(outcome.film_um)) == ("harm", 230)
    assert "takes 31.6 model µm and leaves about 230 µm" in plain("L11")


def test_four_heavy_sets_spend_the_budget_and_leave_the_line() -> None:
    line = {"substrate": "clear_coat", "film_um": 48, "defects": [{"kind": "scratch", "depth_um": 12}]}
    outcome = ran(line, "wash tape cut cut cut cut wipe finish wipe").outcome
    assert outcome.verdict == "harm"
    assert outcome.removed_um == pytest.approx(16.6, abs=0.05)
    assert [round(100 * mark.left) for mark in outcome.residual] == [44]


def test_p1000_then_medium_and_finish_has_to_be_done_again() -> None:
    outcome = ran(chalked(6.0), f"{READY} P1000*4 dry inspect refine wipe finish wipe").outcome
    assert outcome.verdict == "redo"
    assert outcome.tail_um == pytest.approx(2.2, abs=0.05)


@pytest.mark.parametrize(
    ("plan", "minutes", "row"),
    [
        ("P1500*4", 9, "P1500, four passes 9"),
        ("cut", 15, "heavy or medium set, rotary 15"),
        ("finish", 23, "finishing set, dual action 23"),
        ("dry inspect", 5, "drying and looking, each time 5"),
    ],
)
def test_the_minutes_of_l13_are_those_of_the_table(plan: str, minutes: int, row: str) -> None:
    assert round(ran(chalked(8.5), plan, optics="none").outcome.minutes) == minutes
    assert row in plain("L13")
