"""Many options: a list of ids, the empty list for "none of these"."""

from assessments.answers.choice import offered
from assessments.answers.errors import AnswerRefused
from assessments.scenarios.tasks import Task
from courses.trade.units import Preferences


def parse(task: Task, raw: object, _prefs: Preferences) -> list[str]:
    """Return the ticked ids in the order offered, each once; raise UnknownOption for an id that isn't offered.

    An empty list is an answer.

    >>> from assessments.scenarios.fields import Option
    >>> steps = Task("steps", "many", "Steps", "Which?", options=(Option("log", "Log"), Option("tell", "Tell")))
    >>> parse(steps, ["tell", "log", "tell"], Preferences.metric()), parse(steps, [], Preferences.metric())
    (['log', 'tell'], [])
    """
    if not isinstance(raw, list | tuple) or not all(isinstance(item, str) for item in raw):
        raise AnswerRefused(task.id, f"{raw!r:.60} is no list of option ids; give a list, empty for none of these.")
    ticked = {offered(task, item) for item in raw}
    return [option_id for option_id in task.option_ids if option_id in ticked]
