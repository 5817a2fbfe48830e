"""Yes or no."""

from typing import Final

from assessments.answers.errors import AnswerRefused
from assessments.scenarios.tasks import Task
from courses.trade.units import Preferences

_WORDS: Final = {"true": True, "yes": True, "false": False, "no": False}


def parse(task: Task, raw: object, _prefs: Preferences) -> bool | None:
    """Return true or false, blank text as None; raise AnswerRefused for anything else.

    >>> parse(Task("released", "yes_no", "Released", "Is it?"), "yes", Preferences.metric())
    True
    """
    if isinstance(raw, bool):
        return raw
    if not isinstance(raw, str) or raw.strip().casefold() not in {*_WORDS, ""}:
        raise AnswerRefused(task.id, f"{raw!r:.60} is neither true nor false.")
    return _WORDS.get(raw.strip().casefold())
