"""The parts of the page *Try a plan*: the panel in words, what goes along, pictures only of what hangs."""

import pytest

from courses.forms.tried import TrialForm
from courses.gallery import hang_tried
from courses.trade.units import Preferences
from courses.views.plan_page import page_of, sheets
from courses.views.plans import tried

METRIC = Preferences.metric()


def page(**data):
    """Return what the page of a link shows."""
    form = TrialForm(data, METRIC)
    return page_of(form, tried(form, METRIC) if form.is_valid() else [], METRIC)


def test_the_panel_is_told_with_its_film_and_what_lies_on_it():
    panel = page(panel="deep_scratch", number="1")["panel"]
    assert panel["title"] == "A deep scratch among swirls, panel 1"
    facts = dict(panel["facts"])
    assert (facts["Substrate"], facts["Film"]) == ("Clear coat", "46.0\u00a0µm")
    assert facts["On it"] == "Swirl marks, 1 model µm; Single scratches, 14 model µm"


def test_after_the_last_panel_of_a_kind_comes_the_first():
    assert "number=1&" in page(panel="crack", number="9999")["panel"]["another"]


def test_what_goes_through_the_film_is_told_without_a_depth():
    assert dict(page(panel="crack", number="1")["panel"]["facts"])["On it"].endswith("Star cracks")


@pytest.mark.django_db
def test_the_plans_go_along_to_another_panel():
    assert page(panel="crack", plan="wash", beside="wipe")["kept"] == [("plan", "wash"), ("beside", "wipe")]


@pytest.mark.parametrize(("wrong", "fold"), [({"panel": "yacht"}, "kinds"), ({"panel": "own"}, "own"), ({}, "kinds")])
def test_the_fold_with_what_has_to_be_mended_stands_open(wrong, fold):
    assert page(**wrong)["open"] == fold


@pytest.mark.django_db
def test_pictures_are_shown_once_they_hang():
    link = {"panel": "clear_swirls", "number": "2", "plan": "wash;finish", "light": "point"}
    assert page(**link)["frame"] is None
    form = TrialForm(link, METRIC)
    hang_tried(sheets(form.trial, tried(form, METRIC)) if form.is_valid() else [])
    frame = page(**link)["frame"]
    assert [one.caption for one in frame.all] == ["Before", "After: this plan"]
    before, after = (one.alt for one in frame.all)
    assert before == "The panel before any step. On it: Swirl marks, 0.8 model µm."
    assert after.startswith("The same panel after this plan. Left on it: ")
