"""The form of a sum is built from its declaration."""

import pytest

from courses.forms.sums import SumForm, typed
from courses.trade.sums import SUMS
from courses.trade.units import Preferences

US, SI = Preferences.us(), Preferences.metric()


@pytest.mark.parametrize("name", SUMS)
def test_every_input_has_a_field_with_the_readers_unit(name):
    form = SumForm(SUMS[name], US)
    assert list(form.fields) == [wanted.name for wanted in SUMS[name].inputs]
    for wanted in SUMS[name].inputs:
        assert form.fields[wanted.name].required == wanted.needed


def test_bare_numbers_are_in_the_readers_unit():
    form = SumForm(SUMS["dew_point"], US, {"air_degc": "68", "air_rh": "50"})
    assert form.result().value == 9.26


def test_a_default_stands_in_the_field():
    form = SumForm(SUMS["infrared_reading"], SI)
    assert form.fields["set_emissivity"].initial == "0.95"


def test_a_refusal_of_the_sum_itself_is_said_of_the_whole():
    data = {"surface_degc": "-30", "around_degc": "60", "emissivity": "1", "set_emissivity": "0.1"}
    form = SumForm(SUMS["infrared_reading"], SI, data)
    assert form.result() is None
    assert form.errors


def test_readings_stand_in_one_field_and_lead_back():
    form = SumForm(SUMS["gauge_statistics"], SI, {"before_um": "92 95 90 94 96", "after_um": "88; 91; 87; 90; 91"})
    assert form.result().value == 4.0
    before = SUMS["gauge_statistics"].inputs[1]
    assert typed(before, (92.0, 95.5), SI) == "92 95.5"
    assert form.fields["before_um"].widget.attrs["inputmode"] == "text"


def test_what_nobody_gave_is_typed_by_nobody():
    assert typed(SUMS["dew_point"].inputs[0], None, SI) is None


def test_a_value_is_typed_as_people_type():
    (air, _humidity) = SUMS["dew_point"].inputs
    assert [typed(air, 18.0, US), typed(air, -2.5, SI)] == ["64.4", "-2.5"]


def test_a_choice_is_picked_in_the_words_of_the_trade():
    form = SumForm(SUMS["removal"], SI)
    machine = form.fields["machine"]
    assert machine.choices[:2] == [("rotary", "Rotary"), ("da", "Dual action, 15 mm orbit")]
    assert (machine.initial, machine.required) == ("rotary", False)
    assert SumForm(SUMS["nearest_grade"], SI).fields["american"].choices[0] == ("", "Choose")


def test_a_choice_left_alone_is_the_default_and_another_is_refused():
    assert SumForm(SUMS["removal"], SI, {"passes": "3"}).result().value == 4.0
    wrong = SumForm(SUMS["removal"], SI, {"machine": "belt"})
    assert wrong.result() is None
    assert list(wrong.errors) == ["machine"]


def test_a_choice_leads_back_as_it_was_chosen():
    machine = next(one for one in SUMS["removal"].inputs if one.name == "machine")
    assert typed(machine, "da", SI) == "da"


def test_long_choices_and_lists_take_the_whole_width():
    wide = {
        name
        for asked in ("removal", "gauge_statistics", "scratch_depth")
        for name, field in SumForm(SUMS[asked], SI).fields.items()
        if field.wide
    }
    assert wide == {"cuts", "machine", "before_um", "after_um", "backing"}
