"""Rules as pages show them."""

import pytest

from assessments.rules import Fault, Rule, Step, choice, integer, many, num, record, text, truth
from assessments.rules.rule import Part
from assessments.views.rule_lines import (
    Mark,
    Reads,
    differences,
    kind_words,
    names_of,
    outcomes_said,
    points_words,
    show_values,
)
from courses.trade.units import Preferences

pytestmark = pytest.mark.django_db


@pytest.fixture
def reads(draft):
    return Reads.of(draft.scenario, Preferences.us())


def test_a_fault_cuts_the_text_where_it_stands():
    assert Mark.of("a < b", Fault("Wrong.", 4, 5)) == Mark("Wrong.", "a < ", "b", "")
    assert Mark.of("a <", Fault("Breaks off.", 3, 3)) == Mark("Breaks off.", "a <", "\u2423", "")
    assert Mark.of("a < b", Fault("Too dear."), warns=True) == Mark("Too dear.", "", "", "", True)


def test_a_value_reads_in_the_units_of_whoever_reads():
    show = show_values(Preferences.us())
    assert (show(20.0, "degc"), show(0.5, "K"), show(3, None), show(True, None), show("wait", None)) == (
        "68.0\u00a0°F",
        "0.9\u00a0°F",
        "3",
        "yes",
        "wait",
    )
    assert show(2.5, "furlong") == "2.5\u00a0furlong"


def test_a_part_is_read_back_and_what_is_risky_is_marked(reads):
    part = reads.part(Part("test", "answer.margin == 2.5", "bool"))
    (mark,) = part.marks
    assert (part.ok, mark.warns, mark.wrong) == (True, True, "2.5")
    assert part.reading == "The trainee’s margin is 4.5\u00a0°F."


def test_names_stand_with_their_label_kind_and_unit(draft):
    groups = {group["root"]: {one.path: one for one in group["names"]} for group in names_of(draft.scenario)}
    facts = groups["Facts, as drawn"]
    assert (facts["facts.air_degc"].label, facts["facts.air_degc"].kind) == ("Air in the shed", "a number, °C")
    assert facts["facts.probe_degc"].kind == "a number, °C, may be missing"
    assert facts["facts.forecast … .h".replace(" .", ".")].kind.startswith("a number, h")
    answers = groups["The trainee’s answers"]
    assert answers["answer.decision"].kind.startswith("one of coat_now, wait")


@pytest.mark.parametrize(
    ("kind", "words"),
    [
        (integer(), "a whole number"),
        (truth(opt=True), "yes or no, may be missing"),
        (text(), "a text"),
        (many(choice(["a", "b"])), "a list of a, b"),
        (many(num("um")), "a list"),
        (record({}), "a record"),
    ],
)
def test_a_kind_is_said_in_words(kind, words):
    assert kind_words(kind) == words


def test_points_have_their_word():
    assert [points_words(one) for one in (1, 2, 0.5)] == ["1 point", "2 points", "0.5 points"]


def test_what_differs_is_said_key_by_key():
    was = Rule("A", "s", "points", 2, "b", "practice", test="x > 1")
    now = Rule("A", "s", "points", 3, "b", "practice", lesson="L24", steps=(Step("x > 1", 1), Step("x > 2", 2)))
    assert differences(was, now) == [
        ("Met when", "x > 1", "–"),
        ("Steps", "–", "x > 1 (1); x > 2 (2)"),
        ("Points", "2", "3"),
        ("Lesson", "–", "L24"),
    ]
    assert (differences(None, now), differences(was, was)) == ([], [])


def test_outcomes_are_said_in_words():
    assert outcomes_said("satisfactory or not_yet_satisfactory") == "satisfactory or not yet satisfactory"
    assert outcomes_said("not met exactly: R41") == "not met exactly: R41"
