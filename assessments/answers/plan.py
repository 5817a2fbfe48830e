"""A work plan: steps in order, each as the simulator takes it."""

from collections.abc import Mapping, Sequence
from typing import Any, Final

from assessments.answers.errors import AnswerRefused, UnknownOption
from assessments.scenarios.planned import ALL
from assessments.scenarios.tasks import Task
from courses.trade.errors import TradeError, offer
from courses.trade.plan_text import PlanTextRefused, read_token, token
from courses.trade.surface import read_plan
from courses.trade.units import Preferences

PlannedStep = dict[str, Any]

_SHOWN: Final = 60


def parse(task: Task, raw: object, _prefs: Preferences) -> list[PlannedStep]:
    """Return the steps in order as they were given; an empty list is an answer: nothing is done.

    Raises UnknownOption for a step or a zone that isn't offered, AnswerRefused with a sentence for what no such step
    takes, or takes otherwise.

    >>> steps = Task("steps", "plan", "Plan", "What do you do?", ops=("wash", "sand"), most=3)
    >>> parse(steps, [{"op": "wash"}, {"op": "sand", "grade": "P1500", "passes": 4}], Preferences.metric())
    [{'op': 'wash'}, {'op': 'sand', 'grade': 'P1500', 'passes': 4}]
    """
    if not isinstance(raw, list | tuple) or not all(isinstance(step, Mapping) for step in raw):
        raise AnswerRefused(task.id, f"{raw!r:.60} is no list of steps; give each as {{'op': …}} in the order done.")
    if len(raw) > task.most:
        raise AnswerRefused(task.id, f"these are {len(raw)} steps; {task.most} fit.")
    steps = [_step(task, step) for step in raw]
    try:
        read_plan([{name: value for name, value in step.items() if name != "zone"} for step in steps])
    except TradeError as refused:
        raise AnswerRefused(task.id, refused.sentence) from refused
    return steps


def read(task: Task, values: Sequence[str]) -> list[PlannedStep]:
    """Return steps from the texts a page sends, one for each; raise AnswerRefused for a text that is none."""
    try:
        return [dict(read_token(value)) for value in values]
    except PlanTextRefused as refused:
        raise AnswerRefused(task.id, refused.sentence) from refused


def written(steps: Sequence[Mapping[str, Any]]) -> list[str]:
    """Return steps as the texts a page sends.

    >>> written([{"op": "sand", "grade": "P1500", "passes": 4}])
    ['sand grade=P1500 passes=4']
    """
    return [token(step) for step in steps]


def _step(task: Task, raw: Mapping[Any, Any]) -> PlannedStep:
    op, zone = str(raw.get("op") or ""), str(raw.get("zone") or ALL)
    if not op:
        raise AnswerRefused(task.id, f"a step names its op; {offer(op, task.ops)}")
    if op not in task.ops:
        raise UnknownOption(task.id, f"{op[:_SHOWN]!r} is no step here; {offer(op, task.ops)}")
    zones = [*(one.id for one in task.options), ALL]
    if zone not in zones:
        raise UnknownOption(task.id, f"{zone[:_SHOWN]!r} is no zone here; {offer(zone, zones)}")
    return {str(name): value for name, value in raw.items() if value not in (None, "")}
