"""Proving finds what is planted: a wrong outcome, an idle rule, a draw too close to a limit."""

from dataclasses import replace
from itertools import count

import pytest

from assessments import shipped
from assessments.marking import Marker, prove
from assessments.marking.prove import STEADY_SEEDS, Deviation
from assessments.rules import RuleBook, read_book, read_shared
from assessments.scenarios.spec import ClearOf, Exemplar, Scenario

PROOF_SEEDS = 60


def test_the_shipped_scenario_is_clean(coa_01_marker: Marker) -> None:
    ticks = count(1)
    proof = prove(coa_01_marker, PROOF_SEEDS, lambda: next(ticks))
    assert proof.deviations == ()
    assert proof.idle_rules == ()
    assert proof.clean
    assert next(ticks) == PROOF_SEEDS + 1
    assert proof.marks > 20 * PROOF_SEEDS
    assert proof.in_words() == [f"COA-01@1: {PROOF_SEEDS} draws, {proof.marks} marks, clean."]
    assert proof.as_json() == {
        "code": "COA-01",
        "version": 1,
        "draws": PROOF_SEEDS,
        "marks": proof.marks,
        "deviations": [],
        "idle_rules": [],
    }


def planted(coa_01: Scenario, book: RuleBook, *exemplars: Exemplar) -> Marker:
    return Marker.of(replace(coa_01, exemplars=(*coa_01.exemplars, *exemplars)), book)


@pytest.mark.parametrize(
    ("exemplar", "wanted", "got"),
    [
        (Exemplar("as the key", ("critical_fail",)), "critical_fail", "satisfactory"),
        (Exemplar("as the key", ("satisfactory",), not_met=("R41",)), "not met among others: R41", "satisfactory"),
        (
            Exemplar("silent", ("satisfactory", "cannot_certify"), unanswered=("decision",), not_met=("R21",)),
            "not met among others: R21",
            "cannot_certify",
        ),
        (
            Exemplar("lights it", ("critical_fail",), exactly=True, add={"next_steps": ("fuel_heater",)}),
            "not met exactly: nothing",
            "critical_fail",
        ),
    ],
)
def test_an_exemplar_that_comes_out_otherwise_is_told(
    coa_01: Scenario, coa_01_book: RuleBook, exemplar: Exemplar, wanted: str, got: str
) -> None:
    proof = prove(planted(coa_01, coa_01_book, exemplar), 2)
    assert not proof.clean
    assert [(one.seed, one.exemplar, one.wanted, one.got) for one in proof.deviations] == [
        (seed, exemplar.name, wanted, got) for seed in (1, 2)
    ]
    assert f"  {exemplar.name}: 2 times, first at seed 1: {got}, wanted {wanted}." in proof.in_words()


def test_the_rules_that_werent_met_stand_in_the_deviation(coa_01: Scenario, coa_01_book: RuleBook) -> None:
    lights = Exemplar("lights it", ("satisfactory",), add={"next_steps": ("fuel_heater",)})
    (found,) = prove(planted(coa_01, coa_01_book, lights), 1).deviations
    assert found == Deviation(1, "lights it", "satisfactory", "critical_fail", ("COA-01.4",))
    assert found.as_json() == {
        "seed": 1,
        "exemplar": "lights it",
        "wanted": "satisfactory",
        "got": "critical_fail",
        "rules": ["COA-01.4"],
    }


def test_a_draw_too_close_to_a_limit_is_told(coa_01: Scenario, coa_01_book: RuleBook) -> None:
    close = ClearOf("Nobody ever probes", "not answered(facts.probe_degc)")
    unknown = ClearOf("The probe is cold", "facts.probe_degc < 50")
    marker = Marker.of(replace(coa_01, clear_of=(close, unknown)), coa_01_book)
    found = {(one.exemplar, one.wanted, one.got) for one in prove(marker, 30).deviations}
    assert found == {
        ("clear_of", "Nobody ever probes", "too close"),
        ("clear_of", "The probe is cold", "unknown"),
    }


PLANTED = """
[[rule]]
code = "COA-01.90"
sentence = "Planted"
severity = "points"
because = "It is planted."
source = "practice"
"""


@pytest.mark.parametrize(
    ("rule", "found"),
    [
        (
            'test = "answer.margin <= facts.probe_degc - key.dew_point"\npoints = 1',
            ("key", "every rule judged, but COA-01.90 failed to"),
        ),
        ('steps = [["answered(answer.margin)", 1], ["answer.margin > 99", 1]]', ("key", "points, not")),
        ('test = "facts.air_degc > 0"\npoints = 1', ("nothing answered", "no points, not 1")),
    ],
)
def test_a_planted_rule_shows_in_the_exemplars_that_are_always_there(
    coa_01: Scenario, coa_01_book_text: tuple[str, str], rule: str, found: tuple[str, str]
) -> None:
    text, shared = coa_01_book_text
    marker = Marker.of(coa_01, read_book(text + PLANTED + rule, "planted.toml", read_shared(shared)))
    assert any(one.exemplar == found[0] and found[1] in one.wanted for one in prove(marker, 30).deviations)


def test_a_rule_that_nothing_tells_apart_is_idle(coa_01: Scenario, coa_01_book: RuleBook) -> None:
    few = replace(coa_01, exemplars=tuple(one for one in coa_01.exemplars if "fuel" not in one.name)[:1])
    idle = prove(Marker.of(few, coa_01_book), 30)
    assert "COA-01.4" in idle.idle_rules
    assert "R41" not in idle.idle_rules
    assert "  COA-01.4 is idle: it never tells two exemplars apart." in idle.in_words()
    assert not idle.clean


def test_an_exemplar_that_applies_to_no_draw_is_told_but_deviates_from_nothing(
    coa_01: Scenario, coa_01_book: RuleBook
) -> None:
    never = Exemplar("never", ("satisfactory",), when="facts.air_degc > 99")
    proof = prove(planted(coa_01, coa_01_book, never), 40)
    assert (proof.clean, proof.untried) == (True, ("never",))
    assert "  The exemplar 'never' applied to no draw." in proof.in_words()


def test_a_plan_whose_verdict_hangs_on_a_figure_of_the_model_is_told() -> None:
    marker = shipped.marker("PLN-03@1")
    polish = [{"op": op} for op in ("wash", "tape", "test_spot", "cut", "cut", "cut", "finish", "wipe")]
    shaky = Exemplar("three heavy sets", ("satisfactory", "not_yet_satisfactory"), put={"steps": polish})
    planted = Marker.of(replace(marker.scenario, exemplars=(shaky,)), marker.book.book)
    found = [one for one in prove(planted, STEADY_SEEDS + 1).deviations if one.wanted.startswith("a steady verdict")]
    assert {one.exemplar for one in found} == {"three heavy sets"}
    assert {one.seed for one in found} <= set(range(1, STEADY_SEEDS + 1))
    assert all("preston_k" in one.got for one in found)
