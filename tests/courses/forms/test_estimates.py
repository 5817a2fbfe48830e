"""The form of an estimate: read in the reader's units, refused at the field that is wrong."""

import pytest

from courses.forms.estimates import EstimateForm, UsedForm, figure_said
from courses.trade.minutes import minutes_of
from courses.trade.quote import PLACES
from courses.trade.units import Preferences
from tests.courses.trade.model import constants
from tests.factories import ASKED

METRIC, US = Preferences.metric(), Preferences.us()
TABLE = minutes_of(constants())


def quote(prefs=METRIC, **changed):
    form = EstimateForm(prefs, {**ASKED, **changed})
    return form.worked(TABLE), form


def test_the_worked_job_of_the_exercise():
    worked, form = quote()
    assert worked is not None, form.errors
    assert (worked.area_m2, worked.packs.need_ml, worked.packs.count) == (14.16, 38.4, 2)
    assert worked.hours == pytest.approx(21.8, abs=0.11)
    kept = form.kept(worked)
    assert (kept["name"], kept["currency"], kept["tried"]) == ("Blue runabout", "USD", False)
    assert kept["left_out"] == ["nonskid", "seats", "glazing", "anodes"]
    assert (kept["asked"]["loa_m"], kept["asked"]["rate_hour"], kept["asked"]["rate_disc"]) == (6.4, 62.0, None)
    assert [line.name for line in worked.charges] == ["hour", "pack"]


def test_feet_and_ounces_are_read_as_such():
    given = {"loa_m": "21", "beam_m": "8", "freeboard_m": "2.625", "lwl_m": "", "draft_m": "", "pack_ml": "1"}
    worked, form = quote(US, **given)
    assert worked is not None, form.errors
    assert worked.area_m2 == pytest.approx(14.14, abs=0.005)  # 152.25 ft²
    assert worked.packs.pack_ml == pytest.approx(29.57, abs=0.005)


@pytest.mark.parametrize(
    ("changed", "field", "says"),
    [
        ({"name": ""}, "name", "Give the job a name"),
        ({"loa_m": "long"}, "loa_m", "is no number"),
        ({"loa_m": "640"}, "loa_m", "lies outside"),
        ({"freeboard_m": ""}, "freeboard_m", "give F"),
        ({"lwl_m": "9"}, "lwl_m", "longer than the boat"),
        ({"left_out_m2": "20"}, "left_out_m2", "leaves nothing"),
        ({"passes_1": "400"}, "passes_1", "whole number"),
        ({"rotary": "-1"}, "rotary", "whole number"),
        ({"coats": "1.5"}, "coats", "whole number"),
        ({"grade_1": "P1700"}, "grade_1", "P1700"),
        ({"method": "C2"}, "dry_um", "0.8 µm"),
        ({"formula": "T9"}, "formula", "T9"),
        ({"rate_hour": "-5"}, "rate_hour", "lies outside"),
        ({"currency": "dollars"}, "currency", "three letters"),
        ({"left_out": ["deck"]}, "left_out", "deck"),
    ],
)
def test_what_is_wrong_is_said_at_its_field(changed, field, says):
    worked, form = quote(**changed)
    assert worked is None
    assert list(form.errors) == [field]
    assert says in str(form.errors[field])


def test_every_place_is_ticked_until_somebody_unticks_it():
    form = EstimateForm(METRIC)
    assert form.initial["left_out"] == list(PLACES)
    assert [form.initial[name] for name in ("formula", "margin_percent", "solids_percent")] == ["T1", "10", "35"]


def test_rates_of_an_earlier_estimate_stand_in_the_fields():
    form = EstimateForm(METRIC, None, {"rate_hour": 62.0, "currency": "USD"})
    assert (form["rate_hour"].value(), form["currency"].value()) == ("62", "USD")


def test_the_groups_hold_every_field_once():
    form = EstimateForm(METRIC)
    grouped = [field.name for group in (form.boat, form.stages, form.sets, form.coat, form.price) for field in group]
    assert sorted([*grouped, "name", "tried", "left_out"]) == sorted(form.fields)


def test_what_was_used_is_read_beside_what_was_estimated():
    worked, _form = quote()
    form = UsedForm(worked, {"coat": 2.5}, METRIC, {"rotary": "4.5", "discs": "46", "coating": "41"})
    assert form.is_valid(), form.errors
    assert form.cleaned_data == {"rotary": 4.5, "discs": 46.0, "coating": 41.0}
    assert form["coat"].initial == "2.5"
    assert form.fields["discs"].help_text == "Estimated 40"
    assert form.fields["coating"].help_text == "Estimated 38.4\xa0mL"


@pytest.mark.parametrize(
    ("given", "field", "says"),
    [
        ({}, "__all__", "Nothing was written"),
        ({"discs": "many"}, "discs", "is no number"),
        ({"wash": "-1"}, "wash", "outside"),
    ],
)
def test_bad_use_is_refused(given, field, says):
    worked, _form = quote()
    form = UsedForm(worked, {}, METRIC, given)
    assert not form.is_valid()
    assert list(form.errors) == [field]
    assert says in str(form.errors[field])


def test_counts_have_no_unit():
    assert (figure_said(40.0, "", US), figure_said(2.0, "h", US)) == ("40", "2.0\xa0h")
