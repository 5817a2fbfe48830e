"""A test built from words, as the desk does it."""

import pytest
from django.http import QueryDict

from assessments.rules import PhraseRefused
from assessments.views.phrased import panel_of, put_into
from assessments.views.rule_lines import Reads
from courses.trade.units import Preferences

pytestmark = pytest.mark.django_db


@pytest.fixture
def reads(draft):
    return Reads.of(draft.scenario, Preferences.metric())


def test_without_a_phrase_there_are_no_gaps(reads):
    panel = panel_of(reads, QueryDict())
    assert (panel["slots"], panel["how"], panel["joins"]) == ([], "and", True)
    assert [one["name"] for one in panel["places"]] == ["test", "when"]
    assert ("within", "… is within … of …") in [(one["code"], one["words"]) for one in panel["phrases"]]


def test_a_gap_offers_what_fits_by_the_words_of_the_page(reads):
    slots = {
        one["name"]: one for one in panel_of(reads, QueryDict("phrase=at_most&gap-value=answer.dew_point"))["slots"]
    }
    target = {one["value"]: one["words"] for one in slots["gap-target"]["options"]}
    assert target["facts.air_degc"] == "“Air in the shed”"
    assert target["key.dew_point"] == "the key’s dew point"
    assert "facts.air_rh" not in target
    assert slots["gap-target"]["typed"]


def test_a_typed_value_wins_over_a_chosen_one(reads):
    data = QueryDict("phrase=at_most&gap-value=answer.margin&gap-target=key.margin&gap-target-typed=3")
    assert put_into(reads, data) == ("test", "answer.margin <= 3")


def test_several_words_are_put_as_a_list(reads):
    data = QueryDict("phrase=one_of&gap-value=answer.decision&gap-options='wait'&gap-options='measure_again'")
    assert put_into(reads, data) == ("test", "answer.decision in ['wait', 'measure_again']")


def test_it_joins_what_stands_there_or_takes_its_place(reads):
    gaps = "phrase=is&gap-value=answer.decision&gap-target='wait'&test=key.short"
    assert put_into(reads, QueryDict(f"{gaps}&how=or"))[1] == "key.short or answer.decision == 'wait'"
    assert put_into(reads, QueryDict(f"{gaps}&how=instead"))[1] == "answer.decision == 'wait'"
    assert put_into(reads, QueryDict(f"{gaps}&into=nowhere"))[0] == "test"


def test_what_is_missing_is_refused_in_a_sentence(reads):
    for typed in ("", "phrase=no_such"):
        with pytest.raises(PhraseRefused) as refused:
            put_into(reads, QueryDict(typed))
        assert panel_of(reads, QueryDict(typed), refused.value)["error"]
    data = QueryDict("phrase=at_most&gap-value=answer.margin")
    with pytest.raises(PhraseRefused) as refused:
        put_into(reads, data)
    panel = panel_of(reads, data, refused.value)
    assert [one["name"] for one in panel["slots"] if one["error"]] == ["gap-target"]


def test_a_choice_is_offered_by_the_words_of_the_page(reads):
    slots = {one["name"]: one for one in panel_of(reads, QueryDict("phrase=is&gap-value=answer.decision"))["slots"]}
    words = {one["value"]: one["words"] for one in slots["gap-target"]["options"]}
    assert words["'coat_now'"].startswith("“")
    assert words["'coat_now'"] != "“coat now”"


def test_a_typed_number_stands_beside_its_unit(reads):
    slots = {one["name"]: one for one in panel_of(reads, QueryDict("phrase=at_most&gap-value=answer.margin"))["slots"]}
    assert slots["gap-target"]["unit"] == "K"


def test_a_share_is_put_in_the_place_of_what_stands_there(reads):
    panel = panel_of(reads, QueryDict("way=share"))
    assert ([one["code"] for one in panel["phrases"]], panel["joins"]) == (["part_of", "part_less_extra"], False)
    data = QueryDict("way=share&phrase=part_of&gap-wanted=key.next_steps&gap-given=answer.next_steps&share=0.5")
    into, text = put_into(reads, data)
    assert (into, "overlap(" in text, "0.5" in text) == ("share", True, False)


def test_points_by_steps_have_a_place_for_each_step(reads):
    places = [one["name"] for one in panel_of(reads, QueryDict("way=steps"))["places"]]
    assert places == ["step_0", "step_1", "step_2", "step_3", "step_4", "when"]
    data = QueryDict("way=steps&into=step_2&phrase=is&gap-value=answer.decision&gap-target='wait'")
    assert put_into(reads, data) == ("step_2", "answer.decision == 'wait'")
