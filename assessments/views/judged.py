"""The page of a judged attempt: how it came out, the sentence that decides, and what was found."""

import re
from dataclasses import replace
from typing import Any

from django.urls import reverse
from django.utils.translation import gettext as _
from django.utils.translation import ngettext

from assessments.journey import answers_of, facts_of, key_for
from assessments.marking.case import case_of
from assessments.marking.said import Said, in_words, option_in_words, said
from assessments.models import Attempt, Finding
from assessments.rules import Compared, explain_finding, unlooked_finding
from assessments.scenarios.spec import GaugeLine, Scenario
from assessments.scenarios.story import Show, model_text, with_units
from assessments.views.judgements import Judgement, judgement_asked, judgements_of
from assessments.views.paper import Sheet, job_of, show_for
from assessments.views.pictured import seen_in, truth_of
from assessments.views.planned import planned_of
from assessments.views.rule_lines import Show as ShowValue
from assessments.views.rule_lines import show_values
from assessments.views.scenarios import lesson_line
from courses.models import Lesson
from courses.shipped import sources
from courses.trade.units import Preferences, to_shown

FOLDED = ("met", "not_applicable")
WEIGHT = {"critical": 0, "needed": 1, "points": 2}
_OF_THE_MODEL = re.compile(r"^model\.|^key\.needed_cut$|\bneeded cut\b")
ORDER = {"not_met": 0, "not_answered": 1, "partly": 2}


def verdict_of(attempt: Attempt, prefs: Preferences, number: str = "") -> dict[str, Any]:
    """Return what the page of a judged attempt shows, in the reader's units: the newest judgement, or one by number."""
    show = show_for(prefs)
    judgements = judgements_of(attempt)
    came = judgement_asked(judgements, number)
    found = came.findings()
    lessons = {one.code: one for one in Lesson.objects.filter(code__in={one.lesson for one in found}).defer("text")}
    models = models_of(attempt, show)
    told = told_by_rule(came, prefs)
    in_um = show_for(replace(prefs, film="um"))
    lines = [
        {
            **_line(one, attempt.scenario.spec, lessons, in_um if _has_model_um(one) else show),
            "told": told.get(one.code, []),
        }
        for one in found
    ]
    wanting = [line for line in lines if line["verdict"] not in FOLDED]
    wanting.sort(key=lambda line: (WEIGHT[line["severity"]], ORDER[line["verdict"]]))
    return {
        "attempt": attempt,
        **job_of(attempt, show),
        "given": given_of(attempt, prefs),
        "scenario_url": reverse("scenario-detail", args=[attempt.scenario_code]),
        "judgements": judgements if len(judgements) > 1 else [],
        "came": came,
        "outcome": came.outcome,
        "headline": headline(came, wanting),
        "explain": explanation(came, wanting),
        "decides": models[0]["model"] if models else "",
        "gauges": gauges(attempt, prefs),
        "findings": wanting,
        "met": [line for line in lines if line["verdict"] == "met"],
        "not_applicable": [line for line in lines if line["verdict"] == "not_applicable"],
        "open_url": reverse("attempt-open", args=[attempt.scenario_code]),
        "lesson": wanting[0]["lesson"] if wanting else None,
        "model": models,
        "late": late_words(attempt),
        "planned": planned_of(attempt, prefs),
        **_seen(attempt),
    }


def _seen(attempt: Attempt) -> dict[str, Any]:
    """Return the picture that was marked with its truth, and the other pictures."""
    truth = truth_of(attempt)
    others = [one for one in seen_in(attempt) if truth is None or one.name != truth.pinned.name]
    return {"truth": truth, "pictures": others}


def _has_model_um(found: Finding) -> bool:
    """Whether something is compared with what the film model says: then every film stands in its micrometres."""
    return any(unit == "um" and _OF_THE_MODEL.search(name) for name, _value, unit in found.values)


def _line(found: Finding, spec: Scenario, lessons: dict[str, Lesson], show: Show) -> dict[str, Any]:
    return {
        "verdict": found.verdict,
        "severity": found.severity,
        "title": with_units(found.sentence, show),
        "values": [_compared(said(spec, Compared(*one), show)) for one in found.values],
        "because": with_units(found.failed or found.because, show),
        "lesson": lesson_line(lessons[found.lesson]) if found.lesson in lessons else None,
        "source": sources().get(found.source),
        "points": f"{found.points:g}",
        "of": f"{found.of:g}" if found.of else "",
    }


def _compared(one: Said) -> tuple[str, str]:
    """Return what a compared value is called, and how it reads."""
    whose = {
        "answer": _("you: %(label)s"),
        "key": _("by the facts: %(label)s"),
        "limit": _("limit"),
        "named": _("the rule names"),
        "within": _("within"),
    }
    root = one.root if one.root != "limit" or any(sign.isdigit() for sign in one.text[:2]) else "named"
    label = whose.get(root, "%(label)s") % {"label": one.label[:1].lower() + one.label[1:]}
    return label, one.text or _("not answered")


def told_by_rule(came: Judgement, prefs: Preferences) -> dict[str, list[str]]:
    """Return of each rule, step by step, what was compared with what and what was never looked at."""
    attempt, spec = came.attempt, came.attempt.scenario.spec
    show = _in_words(spec, show_values(prefs))
    prepared = attempt.scenario.marker(came.rule_book).book
    given = {task: value for task, value in answers_of(attempt).items() if value is not None}
    case = case_of(spec, facts_of(attempt), key_for(attempt), given)
    told = {}
    for code in came.trace["rules"]:
        parts = explain_finding(prepared, code, came.trace, show, case)
        parts += unlooked_finding(prepared, code, came.trace, show, case)
        told[code] = [in_words(spec, sentence) for _name, said in parts for sentence in said]
    return told


def _in_words(spec: Scenario, show: ShowValue) -> ShowValue:
    """Return values as they are shown, and options by their words."""

    def shown(value: Any, unit: str | None) -> str:
        words = option_in_words(spec, value) if isinstance(value, str) else value
        return show(value, unit) if words == value else f"“{words}”"

    return shown


def headline(came: Judgement, wanting: list[dict[str, Any]]) -> str:
    """Return the sentence that decides."""
    if not wanting:
        return _("Every rule that applies is met.")
    if came.outcome == "satisfactory":
        return _("It holds, with %(points)s of %(of)s points.") % _points(came)
    first = wanting[0]
    if first["verdict"] == "not_answered":
        return _("%(rule)s: not answered.") % {"rule": first["title"]}
    return _("%(rule)s: not met.") % {"rule": first["title"]}


def explanation(came: Judgement, wanting: list[dict[str, Any]]) -> str:
    """Return what the outcome rests on."""
    critical = [one for one in wanting if one["severity"] == "critical"]
    if came.outcome == "critical_fail":
        return _("%(because)s So points don't count.") % {"because": critical[0]["because"]}
    if came.outcome == "cannot_certify":
        return _("Nothing here shows that you know. No answer is not a wrong answer, but it can't be certified either.")
    needed = sum(1 for one in wanting if one["severity"] == "needed")
    points = _("%(points)s of %(of)s points; 80 % of them are asked.").replace("80 %", "80\u00a0%%") % _points(came)
    if came.outcome == "not_yet_satisfactory" and needed:
        short = ngettext("One needed rule falls short.", "%(n)d needed rules fall short.", needed)
        return f"{short % {'n': needed}} {points}"
    return points


def _points(came: Judgement) -> dict[str, str]:
    return {"points": f"{came.points:g}", "of": f"{came.of:g}"}


def gauges(attempt: Attempt, prefs: Preferences) -> list[dict[str, Any]]:
    """Return the values of the key that stand against a limit, in the reader's units."""
    spec, show = attempt.scenario.spec, show_for(prefs)
    key = key_for(attempt)
    units = {field.name: field.unit for field in spec.key_fields}
    drawn: list[dict[str, Any]] = []
    for one in (line for line in spec.gauges if not line.given or attempt.facts.get(line.given) is not None):
        unit, value = units[one.value], float(str(key[one.value]))
        seen = {name: round(to_shown(number, unit, prefs)[0], 1) for name, number in _ends(one, value).items()}
        words = {"value_words": show(value, unit, 1), "limit_words": show(one.limit, unit, 1), "sense": one.sense}
        drawn.append({**words, **seen, "caption": with_units(one.caption, show)})
    return drawn


def _ends(line: GaugeLine, value: float) -> dict[str, float]:
    """Return the numbers of a gauge; a value past its end stretches it."""
    return {"value": value, "limit": line.limit, "low": min(line.low, value), "high": max(line.high, value)}


def given_of(attempt: Attempt, prefs: Preferences) -> list[tuple[str, str]]:
    """Return what was asked and what was answered, in words."""
    sheet, given = Sheet(prefs), answers_of(attempt)
    return [(task.title, sheet.words(task, given.get(task.id))) for task in attempt.scenario.spec.tasks]


def models_of(attempt: Attempt, show: Show) -> list[dict[str, str]]:
    """Return the model answers of the tasks an instructor reads, beside what was written."""
    spec, facts, given = attempt.scenario.spec, facts_of(attempt), answers_of(attempt)
    key = key_for(attempt)
    return [
        {"title": task.title, "given": str(given.get(task.id) or ""), "model": model_text(spec, task, facts, key, show)}
        for task in spec.tasks
        if task.model
    ]


def late_words(attempt: Attempt) -> str:
    """Return what is said of answers that came after time."""
    late = attempt.answers.filter(late=True).count()
    if not late:
        return ""
    sentence = ngettext(
        "One answer came after time. It is kept and your instructor sees it. It is not marked.",
        "%(n)d answers came after time. They are kept and your instructor sees them. They are not marked.",
        late,
    )
    return sentence % {"n": late}
