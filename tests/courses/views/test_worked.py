"""A worked plan in words and numbers, and two of them compared."""

import pytest

from courses.shipped import catalogue, constants, panels
from courses.trade.plan_text import read_plan_text, read_token
from courses.trade.surface import PanelSurface, read_plan, simulate
from courses.trade.units import Preferences
from courses.views.worked import Line, Reader, differences, table, worked

GOOD = "wash;tape;test_spot;cut;wipe;refine;wipe;finish;wipe;inspect"


def done(text, prefs=None, code="mild_chalk", number=3):
    surface = PanelSurface.of(panels()[code].drawn(number), catalogue(), constants())
    steps = read_plan([read_token(one) for one in read_plan_text(text)], surface)
    reader = Reader(prefs or Preferences.metric(), constants(), True)
    return worked("this", "This plan", steps, simulate(surface, steps, constants()), reader)


def test_a_pass_says_what_it_took_and_what_is_left():
    plan = done(GOOD)
    assert (plan.look.words, plan.reasons) == ("Pass", ())
    facts = dict(plan.facts)
    assert plan.headline.startswith(f"It takes {facts['Film taken']}, leaves {facts['Film left']}, ")


def test_what_went_wrong_is_said_with_what_would_have_saved_it():
    plan = done("wash;finish", code="heavy_chalk")
    assert plan.look.words == "To be done again"
    assert plan.headline == plan.reasons[0].sentence
    assert all(one.saved.endswith(".") for one in plan.reasons)


def test_what_holds_in_several_zones_is_said_once_with_their_names():
    steps = read_plan([{"op": "sand", "grade": "P1500"}])
    raw = {"substrate": "gel_coat", "film_um": 500, "zones": [{"name": "bow", "share": 0.2, "film_um": 500}]}
    run = simulate(PanelSurface.of(raw, catalogue(), constants()), steps, constants())
    said = [
        one.sentence for one in worked("a", "A", steps, run, Reader(Preferences.metric(), constants(), False)).reasons
    ]
    assert len({one.sentence.partition(": ")[2] for one in run.outcome.reasons}) == len(said) < len(run.outcome.reasons)
    assert any(one.startswith("The rest and the bow: ") for one in said)


def test_what_a_look_showed_stands_with_its_step():
    looks = done("wash;finish;wipe;inspect", code="clear_swirls").looks
    assert [step for step, _ in looks] == ["4. Inspect in two lights"]
    assert all(said.endswith(".") for _, said in looks)


def test_harm_is_its_own_word_and_names_the_step():
    plan = done(GOOD, code="crack")
    assert plan.look.words == "Harm done"
    assert plan.headline.startswith("Step 4, cut with heavy compound, works over a sign")


@pytest.mark.parametrize(("number", "said"), [(0.0, "0 µm"), (0.04, "under 0.1 µm"), (7.6, "7.6 µm"), (97.0, "97 µm")])
def test_numbers_have_one_decimal_at_most(number, said):
    assert Line("", number, "µm").text == said


def test_the_heat_is_told_in_the_readers_unit():
    assert dict(done(GOOD).facts)["Hottest"].endswith("°C")
    assert dict(done(GOOD, Preferences.us()).facts)["Hottest"].endswith("°F")


def test_differences_are_those_of_the_numbers_shown():
    long, short = done(GOOD), done("wash;finish")
    said = differences(long, short)
    assert said[0] == "Verdict: Pass; beside it: To be done again."
    taken = [float(dict(one.facts)["Film taken"].split()[0]) for one in (long, short)]
    assert f"Film taken: {taken[0] - taken[1]:g} model µm more (" in " ".join(said)
    assert said[-1].startswith("Only in this plan: 2. Tape the edges; 3. Lay a test spot; ")


def test_the_same_plan_differs_in_nothing():
    assert differences(done(GOOD), done(GOOD)) == ["Nothing: both come to the same."]


def test_two_plans_stand_in_one_table():
    shown = table(done(GOOD), done("wash;finish"))
    assert shown["rows"][0][0] == "Film left, model µm"
    assert all(len(row) == 3 for row in shown["rows"])
