"""An answer as a page sends it: which task, its value, and what the page had seen."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from uuid import UUID

from django import forms
from django.http import QueryDict

from assessments.answers import order
from assessments.answers.sheet import NONE_OF_THESE, parse_form
from assessments.journey import Given
from assessments.scenarios.spec import Scenario
from assessments.scenarios.tasks import Task
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
    if task.kind == "order" and data.get("do"):
        picked = {name.removeprefix("pick-"): data.get(name, "") for name in data if name.startswith("pick-")}
        values = tuple(composed(task, values, data.get("do", ""), picked)) or (NONE_OF_THESE,)
    return Envelope(task, form.cleaned_data["client_key"], form.cleaned_data["seen"], values, unheard)


def _keys(texts: list[str]) -> frozenset[UUID] | None:
    try:
        return frozenset(UUID(text) for text in texts[:50])
    except ValueError:
        return None


def composed(task: Task, steps: Sequence[str], do: str, picked: Mapping[str, str]) -> list[str]:
    """Return acts as a button of the page leaves them: `add`, `up:2`, `down:2`, `out:2`; anything else changes nothing.

    `picked` holds the act that is to be added, under ``op``, and what it is to carry.
    """
    verb, _colon, place = do.partition(":")
    kept = list(steps)
    at = int(place) - 1 if place.isdigit() else -1
    if verb == "add":
        return [*kept, _added(task, picked)] if picked.get("op") else kept
    if not 0 <= at < len(kept):
        return kept
    step = kept.pop(at)
    if verb in ("up", "down"):
        kept.insert(max(0, at + (-1 if verb == "up" else 1)), step)
    return kept


def _added(task: Task, picked: Mapping[str, str]) -> str:
    op = picked["op"]
    act = next((one for one in task.acts if one.id == op), None)
    carried = act.carries if act else ()
    return order.written([{"op": op, **{name: picked[name] for name in carried if picked.get(name)}}])[0]
