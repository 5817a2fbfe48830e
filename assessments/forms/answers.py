"""An answer as a page sends it: which task, its value, and what the page had seen."""

from dataclasses import dataclass
from uuid import UUID

from django import forms
from django.http import QueryDict

from assessments.answers.sheet import NONE_OF_THESE, parse_form
from assessments.forms.building import BUILT, builder_of
from assessments.journey import Given
from assessments.scenarios.spec import Scenario
from assessments.scenarios.tasks import Task
from courses.forms.steps import picked_from
from courses.trade.units import Preferences


class EnvelopeForm(forms.Form):
    """What an answer travels in."""

    task = forms.CharField(max_length=60)
    client_key = forms.UUIDField()
    seen = forms.IntegerField(min_value=0, max_value=1_000_000)


@dataclass(frozen=True, slots=True)
class Envelope:
    """A read envelope and the words that were typed into it."""

    task: Task
    client_key: UUID
    seen: int
    values: tuple[str, ...]
    unheard: frozenset[UUID]

    def opened(self, prefs: Preferences) -> Given:
        """Return the answer in it; raises AnswerRefused with a sentence where it can't be read."""
        value = parse_form(self.task, self.values, prefs)
        return Given(self.task.id, value, self.client_key, self.seen, self.unheard)


def read_envelope(data: QueryDict, spec: Scenario) -> Envelope | None:
    """Return what was sent, or None where no page of ours would have sent it."""
    form = EnvelopeForm(data)
    task = spec.task(data.get("task", ""))
    unheard = _keys(data.getlist("unheard"))
    if not form.is_valid() or task is None or unheard is None:
        return None
    values = tuple(data.getlist("value"))
    if data.get("none") and not values:
        values = (NONE_OF_THESE,)
    if task.kind in BUILT and data.get("do"):
        steps = builder_of(task).composed(values, data.get("do", ""), picked_from(data.dict()))
        values = tuple(steps) or (NONE_OF_THESE,)
    return Envelope(task, form.cleaned_data["client_key"], form.cleaned_data["seen"], values, unheard)


def opened_by(data: QueryDict, spec: Scenario) -> str:
    """Return `task:what` where a button opens something instead of answering: an act's settings, a step; "" if not."""
    task = spec.task(data.get("task", ""))
    if task is None or task.kind not in BUILT:
        return ""
    opened = builder_of(task).opens(data.get("do", ""), picked_from(data.dict()))
    return f"{task.id}:{opened}" if opened else ""


def _keys(texts: list[str]) -> frozenset[UUID] | None:
    try:
        return frozenset(UUID(text) for text in texts[:50])
    except ValueError:
        return None
