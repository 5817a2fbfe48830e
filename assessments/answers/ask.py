"""Readings asked for: their ids in the order asked. What was asked for stays asked for."""

from collections.abc import Sequence

from assessments.answers.choice import offered
from assessments.answers.errors import AnswerRefused
from assessments.scenarios.tasks import Task
from courses.trade.units import Preferences


def parse(task: Task, raw: object, _prefs: Preferences) -> list[str]:
    """Return the ids in the order asked, each once; raise UnknownOption for a reading that isn't offered.

    An empty list is an answer: nothing was asked for.

    >>> from assessments.scenarios.tasks import Reading
    >>> readings = (Reading("wet", "Wet", 2, ()), Reading("nail", "Nail", 1, ()))
    >>> looks = Task("asked", "ask", "Ask", "What?", readings=readings)
    >>> parse(looks, ["nail", "wet", "nail"], Preferences.metric())
    ['nail', 'wet']
    """
    if not isinstance(raw, list | tuple) or not all(isinstance(item, str) for item in raw):
        raise AnswerRefused(task.id, f"{raw!r:.60} is no list of readings; give their ids in the order asked.")
    return list(dict.fromkeys(offered(task, item) for item in raw))


def joined(before: object, asked: object) -> list[str]:
    """Return what was asked for before, and after it what is asked for now.

    >>> joined(["wet"], ["nail", "wet"])
    ['wet', 'nail']
    """
    kept = [*before] if isinstance(before, Sequence) else []
    return list(dict.fromkeys([*kept, *(asked if isinstance(asked, Sequence) else ())]))
