"""What a link holds: read into a panel and plans, written again, refused at its field, never a fault."""

import pytest
from django.http import QueryDict
from hypothesis import given
from hypothesis import strategies as st

from courses.forms.tried import OWN, TrialForm, own_fields
from courses.shipped import panels
from courses.trade.units import Preferences

METRIC = Preferences.metric()
OWN_PANEL = {
    "panel": OWN, "substrate": "gel_coat", "colour": "navy", "film": "450 um", "edge": "360",
    "mark1": "oxidation", "depth1": "4", "mark2": "crack_star", "mark3": "swirl", "depth3": "0,8",
}  # fmt: skip
KNOWN = [
    "panel",
    "number",
    "substrate",
    "colour",
    "film",
    "reserve",
    "edge",
    "mark1",
    "depth1",
    "plan",
    "beside",
    "light",
]
TEXTS = st.text(max_size=30) | st.sampled_from(
    [OWN, *panels(), "gel_coat", "navy", "450 um", "oxidation", "wash;cut", "3"]
)


def read(**data):
    form = TrialForm(data, METRIC)
    form.is_valid()
    return form


def test_a_drawn_panel_and_its_plans_are_read_and_written():
    form = read(panel="crack", number="4", plan="wash;sand grade=P1500", beside="")
    assert form.is_valid()
    assert (form.trial.number, form.trial.plan) == (4, ("wash", "sand grade=P1500"))
    assert (form.trial.beside, form.trial.light) == ((), "diffuse")
    assert form.trial.query() == "?panel=crack&number=4&plan=wash;sand+grade=P1500&beside=&light=diffuse"
    assert [step.op for step in form.trial.steps(form.trial.plan)] == ["wash", "sand"]


def test_a_panel_of_ones_own_is_read_in_the_readers_units_and_written_in_base_units():
    form = TrialForm({**OWN_PANEL, "film": "18", "edge": ""}, Preferences.us())
    assert form.is_valid(), form.errors
    assert form.trial.surface.as_json()["film_um"] == pytest.approx(457.2)
    assert "&film=457.2+um&" in form.trial.query()


def test_what_lies_on_a_panel_of_ones_own_reaches_the_model():
    trial = read(**OWN_PANEL).trial
    assert (trial.known()["oxidation_um"], trial.surface.zone("edge").film_um) == (4.0, 360.0)
    assert [one["kind"] for one in trial.known()["defects"]] == ["crack_star", "swirl"]


@pytest.mark.parametrize("code", panels())
def test_figures_of_ones_own_begin_with_those_of_the_panel(code):
    first = read(panel=code, number="5").trial
    own = TrialForm(own_fields(first, METRIC), METRIC)
    assert own.is_valid(), own.errors
    assert own.trial.surface.as_json()["film_um"] == first.surface.as_json()["film_um"]
    kinds = [[one["kind"] for one in trial.known()["defects"]] for trial in (first, own.trial)]
    assert kinds[0] == kinds[1]


@given(st.dictionaries(st.sampled_from(KNOWN), TEXTS))
def test_any_link_is_read_or_refused_and_written_as_it_is_read(data):
    form = read(**data)
    assert form.is_valid() or all(errors[0] for errors in form.errors.values())
    if form.is_valid():
        query = QueryDict(form.trial.query()[1:])
        again = TrialForm(query, METRIC)
        assert again.is_valid(), again.errors
        assert QueryDict(again.trial.query()[1:]) == query
