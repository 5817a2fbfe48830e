"""The plan of a judged attempt as it was worked: how it came out, the film step by step, the panel before and after."""

from dataclasses import dataclass

from django.utils.translation import gettext as _

from assessments.journey import BEFORE_AND_AFTER, answers_of, facts_of
from assessments.models import Attempt
from assessments.scenarios.draw import shop_of
from assessments.scenarios.worked import worked as run_of
from courses.gallery import Frame, frame, together
from courses.models import HungPicture
from courses.trade.units import Preferences
from courses.views.worked import Reader, Worked, worked


@dataclass(frozen=True, slots=True)
class Planned:
    """A plan that was worked, and the panel before and after it under one lamp, where that hangs."""

    worked: Worked
    frame: Frame | None


def planned_of(attempt: Attempt, prefs: Preferences) -> Planned | None:
    """Return the plan of a closed attempt; None where none was asked for or given."""
    spec, facts = attempt.scenario.spec, facts_of(attempt)
    task = spec.the("plan")
    plan = answers_of(attempt).get(task.id) if task else None
    if plan is None:
        return None
    run = run_of(spec, facts, plan)
    reader = Reader(prefs, shop_of(spec).constants, several=False)
    return Planned(worked("plan", _("What the plan did"), run.steps, run, reader), _frame(attempt))


def _frame(attempt: Attempt) -> Frame | None:
    codes = [attempt.pictures[name] for name in BEFORE_AND_AFTER if name in attempt.pictures]
    rows = {row.code: row for row in HungPicture.objects.filter(code__in=codes)}
    if len(codes) < len(BEFORE_AND_AFTER) or not all(code in rows for code in codes):
        return None
    before, after = (rows[code] for code in codes)
    return together(
        [
            frame(before, _("The panel before the plan."), _("Before")),
            frame(after, _("The same panel after the plan."), _("After the plan")),
        ]
    )
