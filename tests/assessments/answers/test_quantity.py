"""A quantity as a trainee types it, or refused with an example."""

import pytest

from assessments.answers.errors import AnswerRefused
from assessments.answers.quantity import parse
from assessments.scenarios.tasks import Task
from courses.trade.units import Preferences

METRIC, US = Preferences.metric(), Preferences.us()
DEW = Task("dew_point", "quantity", "Dew point", "What?", unit="degc", decimals=1, low=-60, high=60)
MARGIN = Task("margin", "quantity", "Margin", "How far?", unit="K", decimals=1, low=-60, high=60)
RH = Task("rh", "quantity", "Humidity", "What?", unit="rh", low=0, high=100)


@pytest.mark.parametrize(
    ("task", "raw", "prefs", "value"),
    [
        (DEW, "12,5", METRIC, 12.5),
        (DEW, "54 °F", METRIC, 12.2222),
        (DEW, "54", US, 12.2222),
        (DEW, "12.2 °C", US, 12.2),
        (DEW, 12, US, 12.0),
        (DEW, "−2", METRIC, -2.0),
        (MARGIN, "5.4 °F", METRIC, 3.0),
        (MARGIN, "3 K", US, 3.0),
        (MARGIN, "-1", METRIC, -1.0),
        (RH, "65 %", METRIC, 65.0),
    ],
)
def test_a_quantity_is_understood(task: Task, raw: object, prefs: Preferences, value: float) -> None:
    assert parse(task, raw, prefs) == pytest.approx(value, abs=1e-4)


@pytest.mark.parametrize(
    ("task", "raw", "prefs", "says"),
    [
        (RH, "140", METRIC, "140\u00a0% lies outside 0\u00a0% to 100\u00a0%"),
        (DEW, "200", US, "200\u00a0°F lies outside −76\u00a0°F to 140\u00a0°F"),
        (DEW, "about ten", METRIC, "'about ten' is no number; write it as 18 °C or 64 °F"),
        (DEW, "12 %", METRIC, "12 %"),
        (DEW, "1,234", METRIC, "can be read in two ways"),
        (DEW, "nan", METRIC, "no number"),
        (DEW, True, METRIC, "True is no number and no text with a unit"),
        (DEW, [12], METRIC, "is no number and no text"),
        (DEW, float("inf"), METRIC, "no number that can be worked with"),
    ],
)
def test_what_is_no_quantity_is_refused_with_what_would_be_right(
    task: Task, raw: object, prefs: Preferences, says: str
) -> None:
    with pytest.raises(AnswerRefused) as refused:
        parse(task, raw, prefs)
    assert says in refused.value.sentence
    assert refused.value.task == task.id


def test_a_task_without_limits_takes_any_number() -> None:
    free = Task("ml", "quantity", "Coating", "How much?", unit="ml")
    assert parse(free, 10**9, METRIC) == 1e9
