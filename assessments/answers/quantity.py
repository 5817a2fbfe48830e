"""A quantity: a number in the task's unit, or text with a unit of its own."""

from assessments.answers.errors import AnswerRefused
from assessments.scenarios.tasks import Task
from courses.trade.errors import TradeError
from courses.trade.ranges import Range
from courses.trade.units import Preferences, parse_quantity


def parse(task: Task, raw: object, prefs: Preferences) -> float | None:
    """Return the quantity in the task's unit, blank text as None; raise AnswerRefused with an example.

    A bare number in text is in the unit this person reads; a number that is no text is in the task's own. What lies
    outside the task's ``low`` and ``high`` is refused.

    >>> margin = Task("margin", "quantity", "Margin", "How far?", unit="K", decimals=1)
    >>> parse(margin, "5,4 °F", Preferences.metric()), parse(margin, " ", Preferences.metric())
    (3.0, None)
    """
    if isinstance(raw, str) and not raw.strip():
        return None
    if isinstance(raw, bool) or not isinstance(raw, str | int | float):
        raise AnswerRefused(task.id, f"{raw!r:.60} is no number and no text with a unit.")
    try:
        value = parse_quantity(raw, task.unit, prefs.unit_for(task.unit).code)
        if task.low is None or task.high is None:
            return value
        return Range(task.low, task.high, task.unit).checked(task.id, value, prefs)
    except TradeError as wrong:
        raise AnswerRefused(task.id, wrong.sentence) from wrong
