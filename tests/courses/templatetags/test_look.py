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
    [("home", "today"), ("lesson-detail", "lessons"), ("attempt-verdict", "scenarios"), ("scenario-list", "scenarios")],
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
