"""A choice: the id of one option."""

from assessments.answers.errors import AnswerRefused, UnknownOption
from assessments.scenarios.tasks import Task
from courses.trade.errors import offer
from courses.trade.units import Preferences


def parse(task: Task, raw: object, _prefs: Preferences) -> str | None:
    """Return the option's id, blank text as None; raise UnknownOption for an id that isn't offered.

    >>> from assessments.scenarios.fields import Option
    >>> decision = Task("decision", "choice", "Decision", "What?", options=(Option("wait", "Wait"),))
    >>> parse(decision, "wait", Preferences.metric())
    'wait'
    """
    if not isinstance(raw, str):
        raise AnswerRefused(task.id, f"{raw!r:.60} is no option id; {offer(str(raw), task.option_ids)}")
    if not raw.strip():
        return None
    return offered(task, raw)


def offered(task: Task, option_id: str) -> str:
    """Return the id if the task offers it; raise UnknownOption with the near misses otherwise."""
    if option_id not in task.option_ids:
        raise UnknownOption(task.id, f"{option_id[:60]!r} is no option here; {offer(option_id, task.option_ids)}")
    return option_id
