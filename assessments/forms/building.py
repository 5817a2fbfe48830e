"""How an answer that is a list of steps is built: what its task offers, as the page's list takes it."""

from typing import Final

from django.utils.translation import gettext as _

from assessments.scenarios.planned import ALL
from assessments.scenarios.story import Show, metric, with_units
from assessments.scenarios.tasks import Task
from courses.forms.plan import plan_act
from courses.forms.steps import Act, Builder, Setting

BUILT: Final = ("order", "plan")
"""Kinds of task whose answer is a list of steps."""


def builder_of(task: Task, show: Show = metric) -> Builder:
    """Return the list that a task is answered with, its words in the reader's units."""
    acts = _of_plan(task) if task.kind == "plan" else _of_order(task, show)
    return Builder(acts, task.most)


def _of_order(task: Task, show: Show) -> tuple[Act, ...]:
    carries = {
        one.name: Setting(
            one.name,
            one.label,
            tuple((option.id, with_units(option.words, show)) for option in one.options),
            one.default,
            understood=True,
        )
        for one in task.carries
    }
    return tuple(
        Act(act.id, with_units(act.words, show), tuple(carries[name] for name in carries if name in act.carries))
        for act in task.acts
    )


def _of_plan(task: Task) -> tuple[Act, ...]:
    zones = tuple((one.id, one.words) for one in task.options)
    where = (Setting("zone", _("Where"), (*zones, (ALL, _("everywhere"))), ALL),) if zones else ()
    return tuple(plan_act(op, where) for op in task.ops)
