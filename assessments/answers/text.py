"""Text for the instructor, kept as it was written."""

from typing import Final

from assessments.answers.errors import AnswerRefused
from assessments.scenarios.tasks import Task
from courses.trade.units import Preferences

LONGEST: Final = 2000
"""Characters that a text answer may have: about a page."""


def parse(task: Task, raw: object, _prefs: Preferences) -> str | None:
    """Return the text without blanks at its ends and with plain line ends, blank text as None.

    Raises AnswerRefused for what is no text, or is longer than ``LONGEST``.

    >>> parse(Task("why", "text", "Why", "Why?"), " the panel is short ", Preferences.metric())
    'the panel is short'
    """
    if not isinstance(raw, str):
        raise AnswerRefused(task.id, f"{raw!r:.60} is no text.")
    text = raw.replace("\r\n", "\n").replace("\x00", "").strip()
    if len(text) > LONGEST:
        raise AnswerRefused(task.id, f"this has {len(text)} characters; {LONGEST} fit.")
    return text or None
