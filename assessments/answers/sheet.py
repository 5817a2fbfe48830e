"""A sheet of answers: one value for each task, read kind by kind, what isn't answered left out.

Values are plain JSON: a float, a text, true or false, a list of ids or of rows. They are stored as they stand.
"""

from collections.abc import Callable, Mapping, Sequence
from types import MappingProxyType
from typing import Any, Final

from assessments.answers import ask, choice, many, order, plan, quantity, rows, text, yes_no, zones
from assessments.answers.errors import AnswerRefused, UnknownTask
from assessments.scenarios.tasks import Task
from courses.trade.errors import offer
from courses.trade.units import Preferences

Value = float | bool | str | list[str] | list[order.Step] | list[plan.PlannedStep] | list[rows.Row] | list[zones.Group]
Parser = Callable[[Task, object, Preferences], Value | None]

KINDS: Final[Mapping[str, Parser]] = MappingProxyType(
    {
        "quantity": quantity.parse,
        "choice": choice.parse,
        "many": many.parse,
        "yes_no": yes_no.parse,
        "text": text.parse,
        "ask": ask.parse,
        "order": order.parse,
        "plan": plan.parse,
        "rows": rows.parse,
        "zones": zones.parse,
    }
)
"""One parser for each kind of task that a scenario may set."""

_LISTS: Final[Mapping[str, Callable[[Task, Sequence[str]], object]]] = MappingProxyType(
    {
        "many": lambda _task, values: values,
        "ask": lambda _task, values: values,
        "order": lambda _task, values: order.read(values),
        "plan": plan.read,
        "rows": rows.read,
        "zones": zones.read,
    }
)
_WRITTEN: Final[Mapping[str, Callable[[Any], list[str]]]] = MappingProxyType(
    {"order": order.written, "plan": plan.written, "rows": rows.written, "zones": zones.written}
)

NONE_OF_THESE: Final = "none_of_these"
"""What a page sends where somebody ticks that none of the options is right."""

METRIC: Final = Preferences.metric()


def parse(task: Task, raw: object, prefs: Preferences = METRIC) -> Value | None:
    """Return the answer to one task, or None where it isn't answered; raise AnswerRefused with a sentence.

    >>> parse(Task("released", "yes_no", "Released", "Is it?"), None) is None
    True
    """
    return None if raw is None else KINDS[task.kind](task, raw, prefs)


def parse_form(task: Task, values: Sequence[str], prefs: Preferences = METRIC) -> Value | None:
    """Return the answer that a form's fields of one name hold; nothing sent or nothing ticked is not answered.

    For a list the value ``none_of_these`` alone is the empty list; beside anything else it is refused.

    >>> from assessments.scenarios.fields import Option
    >>> steps = Task("steps", "many", "Steps", "Which?", options=(Option("log", "Log"),))
    >>> parse_form(steps, []), parse_form(steps, ["none_of_these"]), parse_form(steps, ["log"])
    (None, [], ['log'])
    """
    sent = [value for value in values if value]
    if task.kind not in _LISTS:
        return parse(task, sent[-1] if sent else None, prefs)
    if NONE_OF_THESE in sent and len(sent) > 1:
        raise AnswerRefused(task.id, "tick what you would do, or none of these, not both.")
    said = [value for value in sent if value != NONE_OF_THESE]
    return parse(task, _LISTS[task.kind](task, said) if sent else None, prefs)


def written(task: Task, value: Any) -> list[str]:
    """Return a list as the fields of one name that send it again, ``none_of_these`` for an empty one."""
    return (_WRITTEN[task.kind](value) if task.kind in _WRITTEN else list(value)) or [NONE_OF_THESE]


def joined(task: Task, before: Any, now: Any) -> list[Any]:
    """Return readings or test spots with all that were asked for or laid before."""
    return [*(order.joined(before, now) if task.spots else ask.joined(before, now))]


def read_answers(tasks: Sequence[Task], raw: Mapping[str, object], prefs: Preferences = METRIC) -> dict[str, Value]:
    """Return the answers by task, in the order of the tasks, unanswered ones left out.

    Raises UnknownTask for an id that no task has, and whatever ``parse`` raises.
    """
    by_id = {task.id: task for task in tasks}
    for task_id in raw:
        if task_id not in by_id:
            raise UnknownTask(task_id, f"no task is called so; {offer(task_id, by_id)}")
    parsed = {task_id: parse(task, raw.get(task_id), prefs) for task_id, task in by_id.items()}
    return {task_id: value for task_id, value in parsed.items() if value is not None}
