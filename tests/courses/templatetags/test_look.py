"""The tags of the look: words and outlines of every code, marked tabs, glued dates."""

from datetime import UTC, date, datetime
from types import SimpleNamespace

import pytest
from django.template import Context, Template


def written(source: str, **context: object) -> str:
    return Template("{% load look %}" + source).render(Context(context))


def test_a_verdict_is_symbol_outline_and_word():
    shown = written('{% verdict "not_met" %}')
    assert shown.startswith('<span class="st st-miss"><svg class="i" aria-hidden="true"><use href="')
    assert shown.endswith('icons.svg#miss"/></svg>Not met</span>')


def test_an_unknown_code_is_refused_with_the_nearest():
    with pytest.raises(ValueError, match="There is no outcome 'satisfactary'; did you mean 'satisfactory'"):
        written('{% outcome "satisfactary" %}')


def test_notches_are_counted_in_words_too():
    shown = written("{% notches 1 4 1 True %}")
    assert '<i class="on"></i><i class="now"></i><i></i><i class="old"></i>' in shown
    assert '<span class="visually-hidden">1 of 4, next, 1 not to be had</span>' in shown


def test_a_gauge_says_what_it_shows():
    shown = written('{% gauge 1.7 3.0 8.0 0 "at_least" "1.7 K" "3.0 K" %}')
    assert "<title>1.7 K against the limit of 3.0 K: short of it.</title>" in shown
    assert 'class="short"' in shown
    assert "style=" not in shown


@pytest.mark.parametrize(
    ("name", "tab"),
    [
        ("home", "today"),
        ("lesson-detail", "lessons"),
        ("attempt-verdict", "scenarios"),
        ("scenario-list", "scenarios"),
        ("record-detail", "record"),
        ("decision-withdraw", "record"),
        ("cohort-board", "cohorts"),
        ("sign-off", "cohorts"),
        ("element-ask", "cohorts"),
        ("role-give", "school"),
        ("invitation-make", "school"),
        ("cohort-make", "school"),
    ],
)
def test_the_tab_of_an_open_page_is_marked(name, tab):
    request = SimpleNamespace(resolver_match=SimpleNamespace(url_name=name))
    assert written('{% here "' + tab + '" %}', request=request) == ' aria-current="page"'


def test_no_tab_is_marked_where_the_address_is_unknown():
    assert written('{% here "today" %}', request=SimpleNamespace(resolver_match=None)) == ""


def test_days_are_glued_and_clocks_run_to_twenty_four():
    at = datetime(2026, 4, 14, 16, 5, 7, tzinfo=UTC)
    assert written("{{ at|day }} {{ at|clock }} {{ at|to_the_second }}", at=at) == "April\u00a014 16:05 16:05:07"
    assert written("{{ at|moment }}", at=at) == "April\u00a014, 16:05"
    assert written("{{ at|day }}", at=date(2026, 4, 14)) == "April\u00a014"


def test_things_are_counted_by_what_they_have():
    lessons = [SimpleNamespace(url="/a"), SimpleNamespace(url="")]
    assert written('{{ lessons|having:"url" }} {{ lessons|lacking:"url" }}', lessons=lessons) == "1 1"


def test_an_option_is_marked_when_it_stands_chosen():
    assert written('{% chosen picked "sky" "clear" %}', picked={"sky": "clear"}) == " selected"
    assert written('{% chosen picked "sky" "cloud" %}', picked={"sky": "clear"}) == ""


def test_a_look_is_found_for_the_head_of_a_page():
    shown = written('{% with look="critical_fail"|outcome_look %}{{ look.symbol }} {{ look.style }}{% endwith %}')
    assert shown == "miss fail"


@pytest.mark.parametrize(
    ("tag", "written_out"),
    [
        ('{% decision "withdrawn" %}', ("st st-miss", "#lapsed", "Signature withdrawn")),
        ('{% decision "more_asked" %}', ("st st-open", "#open", "More asked for")),
        ('{% ask_state "not_gathered" %}', ("st st-none", "#na", "Not gathered here yet")),
        ('{% ask_state "old" %}', ("st st-due", "#due", "Too old")),
        ('{% standing "ready" %}', ("st st-ready", "#ready", "Ready to sign")),
    ],
)
def test_a_decision_and_the_state_of_an_ask_are_symbol_outline_and_word(tag, written_out):
    shown = written(tag)
    assert all(part in shown for part in written_out)


@pytest.mark.parametrize(
    ("have", "count", "state", "marks"),
    [
        (7, 5, "met", '<i class="on"></i>' * 5),
        (2, 3, "open", '<i class="on"></i><i class="on"></i><i></i>'),
        (0, 2, "not_gathered", '<i class="old"></i><i class="old"></i>'),
        (1, 2, "old", '<i class="on"></i><i class="old"></i>'),
    ],
)
def test_what_is_asked_and_cannot_be_had_is_dashed_and_more_than_asked_is_no_more(have, count, state, marks):
    shown = written("{% asked have count state %}", have=have, count=count, state=state)
    assert f'aria-hidden="true">{marks}</span>' in shown
    assert f"{min(have, count)} of {count}" in shown


def test_a_cell_of_the_board_draws_five_notches_and_counts_them_all():
    shown = written("{% few_notches 3 18 4 %}")
    assert shown.count("<i") == 5
    assert "3 of 18, 4 not to be had" in shown


def test_a_standing_and_a_decision_are_found_for_a_cell_and_a_head():
    shown = written(
        '{% with a="due"|standing_look b="signed"|decision_look %}{{ a.symbol }} {{ b.style }}{% endwith %}'
    )
    assert shown == "due st-met"


def test_what_outlasts_the_year_is_dated_with_it():
    at = datetime(2027, 10, 14, 3, 0, tzinfo=UTC)
    assert written("{{ at|full_day }}", at=at) == "Oct.\u00a014, 2027"


def test_a_long_name_is_cut_over_a_narrow_column():
    names = ["Inspect", "Wash and decontaminate", "Protect people and water", "Hand over"]
    assert [written("{{ name|short }}", name=name) for name in names] == ["Insp.", "Wash", "Prot.", "Hand"]
