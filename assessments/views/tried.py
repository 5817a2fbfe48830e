"""Try it: one rule on one draw and one answer, with its verdict and how it came about, at once."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any
from uuid import UUID

from django.db.models import QuerySet
from django.http import QueryDict
from django.urls import reverse
from django.utils.translation import gettext as _

from assessments.access import cohorts_for
from assessments.answers.errors import AnswerRefused
from assessments.answers.sheet import NONE_OF_THESE, parse_form, read_answers, written
from assessments.journey import answers_of, facts_of
from assessments.marking.case import case_of, rests_of, schema_of
from assessments.marking.exemplars import Expressions, drawn_case, trials
from assessments.marking.said import Said, said
from assessments.marking.trade import FUNCTIONS
from assessments.models import Attempt, Draft
from assessments.rules import BookRefused, Rule, RuleBook, explain_finding, judge, prepare, unlooked_finding
from assessments.rules.findings import Judged
from assessments.scenarios.draw import answer_key, draw, key_of
from assessments.scenarios.fields import Record
from assessments.scenarios.read_exemplars import read_exemplars
from assessments.scenarios.spec import Scenario
from assessments.scenarios.story import facts_shown, with_units, worded
from assessments.scenarios.tasks import Task
from assessments.views.paper import Sheet
from assessments.views.rule_lines import show_values
from courses.models import Person
from courses.templatetags.look import moment

KEY, OWN = "key", "own"
MOST_ATTEMPTS = 20
"""How many handed-in attempts are offered, the newest first."""
LARGEST_SEED = 10**9
TICKED = ("many", "ask")
"""Kinds of task whose own answer is ticked."""
WRITTEN = ("order", "plan", "rows", "zones")
"""Kinds of task whose own answer is written, one act, step, column or cell a line."""
SHOWN_AS = {**dict.fromkeys(TICKED, "many"), **dict.fromkeys(WRITTEN, "lines")}


@dataclass(slots=True)
class Trial:
    """What a rule is tried on: a draw, answers to it, and what was wrong with how they were asked for."""

    seed: int
    chosen: str
    facts: Record
    key: Record
    answers: Mapping[str, Any]
    attempt: Attempt | None = None
    errors: dict[str, str] = field(default_factory=dict)


def spec_of(draft: Draft, text: str) -> Scenario:
    """Return the scenario of a draft with the exemplars the draft has for it."""
    spec = draft.scenario.spec
    return spec.with_exemplars(read_exemplars(text, str(draft.scenario), spec.tasks))


def trial_of(spec: Scenario, data: QueryDict, reader: Person, draft: Draft) -> Trial:
    """Return what was chosen to try a rule on; what can't be had falls back to the model answer, and says so."""
    errors: dict[str, str] = {}
    seed = _seed(data.get("seed", "1"), errors)
    chosen = data.get("answers", KEY)
    attempt = _attempt(chosen, reader, draft)
    facts = facts_of(attempt) if attempt else draw(spec, seed).facts
    key = key_of(spec, facts)
    trial = Trial(seed, chosen, facts, key, {}, attempt, errors)
    if attempt:
        trial.answers = {task: value for task, value in answers_of(attempt).items() if value is not None}
    elif chosen == OWN:
        trial.answers = _own(spec, data, key, reader, errors)
    else:
        trial.answers = _known(spec, trial)
    return trial


def _seed(typed: str, errors: dict[str, str]) -> int:
    plain = typed.strip()
    if plain.isascii() and plain.isdigit() and int(plain[:20]) <= LARGEST_SEED:
        return int(plain)
    errors["seed"] = _("A draw has a whole number from 0 to 1000000000. Draw 1 is shown.")
    return 1


def _attempt(chosen: str, reader: Person, draft: Draft) -> Attempt | None:
    try:
        wanted = UUID(chosen)
    except ValueError:
        return None
    return attempts_for(reader, draft).filter(pk=wanted).first()


def attempts_for(reader: Person, draft: Draft) -> QuerySet[Attempt]:
    """Return the judged attempts at the scenario of a draft by people whose record `reader` may see."""
    mine = Attempt.objects.judged().filter(scenario=draft.scenario)
    seen = mine.filter(person__memberships__cohort__in=cohorts_for(reader)).distinct()
    return seen.select_related("person", "scenario", "rule_book").order_by("-closed_at")


def _own(spec: Scenario, data: QueryDict, key: Record, reader: Person, errors: dict[str, str]) -> dict[str, Any]:
    """Return one's own answers; where none were sent yet, the model answer to begin with."""
    if not any(name.startswith("own-") for name in data):
        return dict(read_answers(spec.tasks, answer_key(spec, key).as_json()))
    given: dict[str, Any] = {}
    for task in spec.tasks:
        try:
            value = parse_form(task, _sent(task, data), reader.preferences)
        except AnswerRefused as refused:
            errors[task.id] = refused.sentence
            continue
        if value is not None:
            given[task.id] = value
    return given


def _sent(task: Task, data: QueryDict) -> list[str]:
    """Return what was sent of one's own answer; a list that is written line by line in its lines."""
    sent = data.getlist(f"own-{task.id}")
    return "\n".join(sent).splitlines() if task.kind in WRITTEN else sent


def _known(spec: Scenario, trial: Trial) -> Mapping[str, Any]:
    drawn = drawn_case(spec, trial.facts, trial.key)
    known = {one.name: one.answers for one in trials(Expressions.of(spec), trial.key, drawn)}
    if trial.chosen not in known:
        trial.errors["answers"] = _("That answer doesn’t apply to this draw. The model answer is tried.")
        trial.chosen = KEY
    return known[trial.chosen]


def answer_put(spec: Scenario, data: QueryDict, reader: Person, draft: Draft) -> dict[str, Any]:
    """Return what an answer puts in the place of the key, None where it leaves a task out."""
    trial = trial_of(spec, data, reader, draft)
    model = read_answers(spec.tasks, answer_key(spec, trial.key).as_json())
    given = {task.id: trial.answers.get(task.id) for task in spec.tasks}
    return {name: value for name, value in given.items() if value != model.get(name)}


def answers_offered(spec: Scenario, reader: Person, draft: Draft, chosen: str) -> list[dict[str, Any]]:
    """Return the answers there are to choose from, in groups."""
    names = {KEY: _("The model answer"), "nothing answered": _("Nothing answered"), OWN: _("My own")}
    handed_in = [
        (str(one.pk), f"{one.person.name}, {moment(one.closed_at or one.opened_at)}")
        for one in attempts_for(reader, draft)[:MOST_ATTEMPTS]
    ]
    groups: list[tuple[str, Iterable[tuple[str, str]]]] = [
        (_("Begin with"), names.items()),
        (_("Known answers"), [(one.name, one.name) for one in spec.exemplars]),
        (_("Handed in"), handed_in),
    ]
    return [
        {
            "words": words,
            "options": [{"value": value, "words": said, "chosen": value == chosen} for value, said in some],
        }
        for words, some in groups
        if some
    ]


def own_fields(spec: Scenario, trial: Trial, reader: Person, data: QueryDict) -> list[dict[str, Any]]:
    """Return a field for each task, as it was typed or as the answer has it."""
    sheet = Sheet(reader.preferences)
    fields = []
    for task in spec.tasks:
        value, name = trial.answers.get(task.id), f"own-{task.id}"
        typed = data.get(name, "") if task.id in trial.errors else sheet.typed(task, value)
        ticked = value if isinstance(value, list | tuple) else [value]
        offered = () if task.kind in WRITTEN else task.choices
        options: list[tuple[str, str]] = [(one.id, with_units(one.words, sheet.show)) for one in offered]
        if task.kind in WRITTEN and task.id not in trial.errors and isinstance(value, list):
            typed = "\n".join(written(task, value))
        if task.kind in TICKED:
            options.append((NONE_OF_THESE, _("None of these")))
            ticked = ticked or [NONE_OF_THESE]
        if task.kind == "yes_no":
            options, ticked = [("true", _("Yes")), ("false", _("No"))], [typed]
        fields.append(
            {
                "name": name,
                "kind": SHOWN_AS.get(task.kind, task.kind),
                "title": task.title,
                "value": "" if task.kind in TICKED else typed,
                "options": [{"value": one, "words": words, "chosen": one in ticked} for one, words in options],
                "ticked": sum(one.id in ticked for one in offered),
                "error": trial.errors.get(task.id, ""),
            }
        )
    return fields


def judged(rule: Rule, spec: Scenario, trial: Trial, reader: Person) -> dict[str, Any] | None:
    """Return how a rule comes out on a trial, in the reader's units; None while the rule is faulty."""
    show = show_values(reader.preferences)
    try:
        prepared = prepare(RuleBook(spec.code, spec.version, (rule,)), schema_of(spec), FUNCTIONS, rests_of(spec))
    except BookRefused:
        return None
    case = case_of(spec, trial.facts, trial.key, trial.answers)
    marked = judge(prepared, case)
    (found,) = marked.findings
    in_words = Sheet(reader.preferences).show
    return {
        "verdict": found.verdict,
        "points": f"{found.points:g}",
        "of": f"{found.of:g}" if found.of else "",
        "because": with_units(_because(found), in_words),
        "told": _sentences(explain_finding(prepared, rule.code, marked.trace, show, case)),
        "unlooked": _sentences(unlooked_finding(prepared, rule.code, marked.trace, show, case)),
        "values": [_named(said(spec, each, in_words)) for each in found.values],
    }


def _because(found: Judged) -> str:
    return found.failed or (found.because if found.verdict in ("not_met", "partly") else "")


def _sentences(told: Iterable[tuple[str, list[str]]]) -> list[str]:
    """Return what was told of every part, each sentence once."""
    return list(dict.fromkeys(sentence for _part, sentences in told for sentence in sentences))


def _named(one: Said) -> tuple[str, str]:
    """Return a value that was compared with whose it is."""
    whose = {"answer": _("answer: %(label)s"), "key": _("key: %(label)s"), "limit": _("limit"), "within": _("within")}
    label = whose.get(one.root, "%(label)s") % {"label": one.label[:1].lower() + one.label[1:]}
    return label, one.text or _("not answered")


def draw_shown(spec: Scenario, trial: Trial, reader: Person) -> dict[str, Any]:
    """Return the facts of the draw that is tried, its key, and the address of the attempt where one is tried."""
    show = Sheet(reader.preferences).show
    key = [
        (one.label or one.name, worded(one, trial.key[one.name], show))
        for one in spec.key_fields
        if one.name in trial.key
    ]
    return {
        "facts": facts_shown(spec, trial.facts, show),
        "key": key,
        "attempt_url": reverse("attempt-verdict", args=[trial.attempt.pk]) if trial.attempt else "",
    }
