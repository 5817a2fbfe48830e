"""Exemplars: answers with a known outcome, made from the key of a draw.

Besides those written in the file there are always the key itself, nothing answered, and the key with one task left
out: silence takes points, it never breaks a rule.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

from assessments.answers.sheet import Value, read_answers
from assessments.marking.case import Plain, drawn_schema_of, judged_key
from assessments.marking.changed import changed_list
from assessments.marking.trade import FUNCTIONS
from assessments.rules import Checked, bind, check, evaluate
from assessments.scenarios.draw import answer_key
from assessments.scenarios.fields import Record
from assessments.scenarios.spec import Exemplar, Scenario
from courses.trade.units import rounded

NOT_FAILED: Final = ("satisfactory", "not_yet_satisfactory", "cannot_certify")
NOTHING: Final = "nothing answered"


class ExpressionRefused(ValueError):
    """An expression of the scenario file that the rule language refuses."""


@dataclass(frozen=True, slots=True)
class Trial:
    """One exemplar on one draw: the answers, and what marking must say of them.

    ``not_met`` are the rules that come out not met, all of them where ``exactly``; ``full`` asks for every point,
    ``empty`` for none.
    """

    name: str
    answers: Mapping[str, Value]
    outcomes: tuple[str, ...]
    not_met: frozenset[str] = frozenset()
    exactly: bool = True
    full: bool = False
    empty: bool = False


@dataclass(frozen=True, slots=True)
class Expressions:
    """Every expression of a scenario's file, checked once."""

    scenario: Scenario
    checked: Mapping[str, Checked]

    @classmethod
    def of(cls, scenario: Scenario) -> "Expressions":
        """Check each ``when``, ``work`` and ``holds``; raise ExpressionRefused with place and reason.

        The values that exemplars put are read as answers, and refused as such.
        """
        schema = drawn_schema_of(scenario)
        checked = {}
        for exemplar in scenario.exemplars:
            read_answers(scenario.tasks, exemplar.put)
        for where, text, wants in _texts(scenario):
            checked[text] = one = check(text, schema, FUNCTIONS, wants=wants)
            if not one.ok:
                fault = one.errors[0]
                raise ExpressionRefused(f"{scenario.ref}, {where}, '{text}': {fault.message}")
        return cls(scenario, checked)

    def worked(self, text: str, drawn: Mapping[str, object]) -> object:
        """Return the value of an expression over facts and key, None where it is unknown."""
        value, _ = evaluate(self.checked[text], drawn)
        return value


def drawn_case(scenario: Scenario, facts: Record, key: Record) -> Mapping[str, object]:
    """Return facts and key bound for expressions."""
    return bind(drawn_schema_of(scenario), {"facts": facts.as_json(), "key": judged_key(scenario, key)})


def trials(expressions: Expressions, key: Record, drawn: Mapping[str, object]) -> Iterator[Trial]:
    """Walk every exemplar that applies to a draw, those of the file and those that are always there."""
    scenario = expressions.scenario
    own = answer_key(scenario, key).as_json()
    answered = read_answers(scenario.tasks, own)
    yield Trial("key", answered, ("satisfactory",), full=True)
    yield Trial(NOTHING, {}, NOT_FAILED, empty=True)
    for task in scenario.tasks:
        rest = {task_id: value for task_id, value in answered.items() if task_id != task.id}
        yield Trial(f"key without {task.id}", rest, NOT_FAILED)
    for exemplar in scenario.exemplars:
        if not exemplar.when or expressions.worked(exemplar.when, drawn) is True:
            answers = read_answers(scenario.tasks, _changed(exemplar, own, expressions, drawn))
            yield Trial(exemplar.name, answers, exemplar.outcomes, frozenset(exemplar.not_met), exemplar.exactly)


def _texts(scenario: Scenario) -> Iterator[tuple[str, str, str]]:
    for limit in scenario.clear_of:
        yield f"clear_of '{limit.limit}'", limit.holds, "bool"
    for exemplar in scenario.exemplars:
        where = f"exemplar '{exemplar.name}'"
        if exemplar.when:
            yield where, exemplar.when, "bool"
        for text in (*exemplar.work.values(), *_numbers_worked(exemplar)):
            yield where, text, "any"


def _numbers_worked(exemplar: Exemplar) -> Iterator[str]:
    """Walk the expressions that say which rows an exemplar changes, such as ``key.plastics``."""
    numbers = (over.get("n") for over in exemplar.rows.values())
    return (text for text in numbers if isinstance(text, str))


def _changed(exemplar: Exemplar, own: Plain, expressions: Expressions, drawn: Mapping[str, object]) -> Plain:
    answers = {**own, **exemplar.put}
    numbers = {text: expressions.worked(text, drawn) for text in _numbers_worked(exemplar)}
    for task in expressions.scenario.tasks:
        if task.id in exemplar.work:
            value = expressions.worked(exemplar.work[task.id], drawn)
            answers[task.id] = rounded(value, task.decimals) if isinstance(value, float) else value
        if task.id in exemplar.tick_all:
            answers[task.id] = list(task.option_ids)
        if task.id in exemplar.drop or task.id in exemplar.add:
            answers[task.id] = _reticked(answers[task.id], exemplar, task.id)
        if task.id in answers:
            answers[task.id] = changed_list(exemplar, task, answers[task.id], numbers)
        if task.id in exemplar.unanswered:
            del answers[task.id]
    return answers


def _reticked(ticked: object, exemplar: Exemplar, task_id: str) -> list[str]:
    kept = [str(item) for item in ticked] if isinstance(ticked, list | tuple) else []
    dropped = exemplar.drop.get(task_id, ())
    return [item for item in kept if item not in dropped] + list(exemplar.add.get(task_id, ()))
