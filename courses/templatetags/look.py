"""The parts of the look that a template asks for by name: symbols, words with their outline, figures, dates."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date, datetime

from django import template
from django.templatetags.static import static
from django.utils import timezone
from django.utils.formats import date_format
from django.utils.html import format_html, format_html_join
from django.utils.safestring import SafeString
from django.utils.translation import gettext, ngettext

from courses.figures import Gauge, Notches, Sense, in_few
from courses.figures import gauge as draw_gauge
from courses.figures import notches as draw_notches
from courses.templatetags.words import (
    ASKS,
    DECISIONS,
    OUTCOME_MARKS,
    OUTCOMES,
    STANDINGS,
    VERDICTS,
    Look,
    look_of,
)

register = template.Library()

_TABS = {
    "home": "today",
    **dict.fromkeys(("lesson", "course", "look"), "lessons"),
    **dict.fromkeys(("scenario", "attempt"), "scenarios"),
    **dict.fromkeys(("record", "decision"), "record"),
    **dict.fromkeys(("cohort", "sign", "element"), "cohorts"),
    **dict.fromkeys(("book", "draft", "rule"), "rules"),
    **dict.fromkeys(("school", "person", "role", "invitation", "cohort-make", "cohort-change"), "school"),
}
"""The tab of an address, by its whole name or by the thing it begins with."""
_FEW = 5
"""So many notches stand in a cell of the board."""
_SHORT = 5
"""So many letters of a name fit over a narrow column."""


@register.simple_tag
def icon(symbol: str) -> SafeString:
    """One of our own symbols, silent for a screen reader: the words beside it speak."""
    address = static("courses/icons.svg")
    return format_html('<svg class="i" aria-hidden="true"><use href="{}#{}"/></svg>', address, symbol)


def _mark(look: Look, style: str) -> SafeString:
    return format_html('<span class="{}">{}{}</span>', f"st {style}".strip(), icon(look.symbol), look.words)


@register.simple_tag
def standing(code: str) -> SafeString:
    """The standing of a unit or an element: symbol, outline and word."""
    look = look_of("standing", STANDINGS, code)
    return _mark(look, look.style)


@register.simple_tag
def verdict(code: str) -> SafeString:
    """How one rule came out: symbol, outline and word."""
    look = look_of("verdict", VERDICTS, code)
    return _mark(look, look.style)


@register.simple_tag
def outcome(code: str) -> SafeString:
    """How an attempt came out, as a small mark in a list."""
    look = look_of("outcome", OUTCOMES, code)
    return _mark(look, OUTCOME_MARKS[look.style])


@register.simple_tag
def decision(code: str) -> SafeString:
    """What was decided on an element, as a small mark in a list."""
    look = look_of("decision", DECISIONS, code)
    return _mark(look, look.style)


@register.simple_tag
def ask_state(code: str) -> SafeString:
    """How far one thing asked has come: symbol, outline and word."""
    look = look_of("state of an ask", ASKS, code)
    return _mark(look, look.style)


@register.filter
def standing_look(code: str) -> Look:
    """Symbol, class and words of a standing, for a cell of the board."""
    return look_of("standing", STANDINGS, code)


@register.filter
def decision_look(code: str) -> Look:
    """Symbol, class and words of a decision, for the head of its page."""
    return look_of("decision", DECISIONS, code)


@register.filter
def outcome_look(code: str) -> Look:
    """Symbol, rule and words of an outcome, for the head of a page that judges."""
    return look_of("outcome", OUTCOMES, code)


@register.filter
def verdict_look(code: str) -> Look:
    """Symbol, class and words of a rule's verdict, for a finding."""
    return look_of("verdict", VERDICTS, code)


@register.simple_tag
def notches(done: int, total: int, old: int = 0, next_is_here: bool = False) -> SafeString:
    """One notch for each thing asked, with the counts in words for those who don't see it."""
    row = draw_notches(done, total, old=old, next_is_here=next_is_here)
    return format_html('{}<span class="visually-hidden">{}</span>', _drawn(row), _counted(row))


@register.simple_tag
def asked(have: int, count: int, state: str) -> SafeString:
    """The notches of one thing asked; what is too old, or not gathered here, is dashed."""
    done = min(have, count)
    return notches(done, count, count - done if state in ("old", "not_gathered") else 0)


@register.simple_tag
def few_notches(done: int, total: int, old: int = 0) -> SafeString:
    """Five notches for a cell of the board, however much is asked; the words count all of it."""
    row = draw_notches(done, total, old=old)
    return format_html('{}<span class="visually-hidden">{}</span>', _drawn(in_few(row, _FEW)), _counted(row))


def _drawn(row: Notches) -> SafeString:
    marks = format_html_join("", "<i{}></i>", ((_class_of(mark),) for mark in row.marks))
    return format_html('<span class="nt" aria-hidden="true">{}</span>', marks)


def _counted(row: Notches) -> str:
    said = [gettext("%(done)s of %(total)s") % {"done": row.done, "total": row.total}]
    if row.has_next:
        said.append(gettext("next"))
    if row.old:
        said.append(ngettext("%(old)s not to be had", "%(old)s not to be had", row.old) % {"old": row.old})
    return ", ".join(said)


def _class_of(mark: str) -> SafeString:
    return SafeString("") if mark == "open" else format_html(' class="{}"', mark)


@register.filter
def having(things: Iterable[object], name: str) -> int:
    """How many of the things have something under `name`."""
    return sum(1 for thing in things if getattr(thing, name, None))


@register.filter
def lacking(things: Iterable[object], name: str) -> int:
    """How many of the things have nothing under `name`."""
    return sum(1 for thing in things if not getattr(thing, name, None))


@register.inclusion_tag("courses/_gauge.html")
def gauge(
    value: float,
    limit: float,
    high: float,
    low: float = 0.0,
    sense: Sense = "at_least",
    value_words: str = "",
    limit_words: str = "",
) -> dict[str, object]:
    """A value against its limit. Give it the numbers that the page shows, already rounded."""
    drawn = draw_gauge(
        value, limit, high=high, low=low, sense=sense, value_words=str(value_words), limit_words=str(limit_words)
    )
    return {"figure": drawn, "title": _gauge_title(drawn, value_words or value, limit_words or limit)}


def _gauge_title(drawn: Gauge, value: object, limit: object) -> str:
    sentences = {
        "kept": gettext("%(value)s against the limit of %(limit)s: kept."),
        "short": gettext("%(value)s against the limit of %(limit)s: short of it."),
        "over": gettext("%(value)s against the limit of %(limit)s: over it."),
    }
    return sentences[drawn.says] % {"value": value, "limit": limit}


@register.simple_tag(takes_context=True)
def here(context: template.Context, tab: str) -> SafeString:
    """Mark the tab of the page that is open: `tab` in the context wins, else the name of the address."""
    if _open_tab(context) != tab:
        return SafeString("")
    return SafeString(' aria-current="page"')


def _open_tab(context: template.Context) -> str:
    named = context.get("tab")
    match = getattr(context.get("request"), "resolver_match", None)
    if named or match is None or not match.url_name:
        return str(named or "")
    return _TABS.get(match.url_name) or _TABS.get(match.url_name.split("-")[0], "")


@register.filter
def day(moment: date | datetime) -> str:
    """Month and day, glued: “April 14”."""
    return date_format(_local(moment), "MONTH_DAY_FORMAT").replace(" ", "\u00a0")


@register.filter
def full_day(moment: date | datetime) -> str:
    """Day, month and year, for what outlasts the year: “April 14, 2027”."""
    return date_format(_local(moment), "DATE_FORMAT").replace(" ", "\u00a0", 1)


@register.filter
def clock(moment: datetime) -> str:
    """The time of the day on a 24-hour clock: “14:05”."""
    return date_format(_local(moment), "H:i")


@register.filter
def to_the_second(moment: datetime) -> str:
    """The time of the day with its seconds: “14:05:07”."""
    return date_format(_local(moment), "H:i:s")


@register.filter
def moment(when: datetime) -> str:
    """Day and time: “April 14, 14:05”."""
    return f"{day(when)}, {clock(when)}"


def _local(moment: date | datetime) -> date | datetime:
    if isinstance(moment, datetime) and timezone.is_aware(moment):
        return timezone.localtime(moment)
    return moment


@register.filter
def short(title: str) -> str:
    """A name over a narrow column: its first word, cut where that is long: “Insp.”."""
    word = title.split(" ")[0]
    return word if len(word) <= _SHORT else f"{word[: _SHORT - 1]}."


@register.simple_tag
def chosen(choices: Mapping[str, str], name: str, option: str) -> SafeString:
    """Mark the option of a select that stands chosen."""
    return SafeString(" selected") if choices.get(name) == option else SafeString("")
