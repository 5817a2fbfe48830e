"""A rule as it is typed: what it says, how its points are earned, what it weighs, where it stands."""

from typing import Any

from django import forms
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy as lazy

from assessments.manuscript import Row
from assessments.rules import SharedRule
from courses.models import Lesson
from courses.shipped import sources

STEPS = 5
"""How many steps a rule that gives points by steps may have on the page."""
WAYS = [("whole", lazy("All or nothing")), ("steps", lazy("By steps")), ("share", lazy("By share"))]
SEVERITIES = [("critical", lazy("Critical")), ("needed", lazy("Needed")), ("points", lazy("Points"))]
POINTS = lazy("Enter a number above 0, at most 100.")


def _sources() -> list[tuple[str, str]]:
    return [("", str(_("Choose one"))), *((one.key, one.cited()) for one in sources().values())]


def _lessons() -> list[tuple[str, str]]:
    return [(one.code, f"{one.code} {one.title}") for one in Lesson.objects.order_by("code")]


class _Text(forms.CharField):
    """The text of a test: one line, however it was typed."""

    def __init__(self, label: Any, rows: int = 3) -> None:
        marks = {"rows": rows, "spellcheck": "false", "autocapitalize": "off", "class": "rule-text"}
        super().__init__(label=label, max_length=600, required=False, widget=forms.Textarea(attrs=marks))

    def to_python(self, value: Any) -> Any:
        """Return the text on one line."""
        return one_line(super().to_python(value) or "")


def one_line(typed: str) -> str:
    """Return what was typed on one line, every character else where it was."""
    return " ".join(typed.splitlines()).strip()


class _Points(forms.FloatField):
    """Points as a number above 0, at most 100; whole ones stay whole."""

    def __init__(self, **kwargs: Any) -> None:
        errors = dict.fromkeys(("required", "invalid", "min_value", "max_value"), POINTS)
        super().__init__(min_value=0.01, max_value=100, error_messages=errors, **kwargs)
        self.widget.attrs.update({"inputmode": "decimal", "step": "any"})

    def clean(self, value: Any) -> Any:
        """Return the points, whole ones as a whole number."""
        points = super().clean(value)
        return int(points) if points is not None and float(points).is_integer() else points


class WeighedForm(forms.Form):
    """What every rule has in a book: severity, points, the reason, the lesson, the source."""

    severity = forms.ChoiceField(
        label=lazy("If it isn’t met"),
        choices=SEVERITIES,
        initial="points",
        widget=forms.RadioSelect,
        error_messages={"required": lazy("Choose how much it weighs.")},
    )
    points = _Points(label=lazy("Points"), required=False)
    when = _Text(lazy("Applies when (optional)"), rows=2)
    because = forms.CharField(
        label=lazy("The reason, as the trainee reads it"),
        max_length=400,
        widget=forms.Textarea(attrs={"rows": 2}),
        error_messages={"required": lazy("Say why: the trainee reads it when the rule isn’t met.")},
    )
    lesson = forms.ChoiceField(label=lazy("Lesson"), choices=_lessons, required=False)
    source = forms.ChoiceField(
        label=lazy("What it stands on"),
        choices=_sources,
        error_messages={"required": lazy("Choose what it stands on; “practice” where there is no source.")},
    )
    seen = forms.CharField(required=False, widget=forms.HiddenInput)

    def kept(self, *keys: str) -> Row:
        """Return what was typed under these keys, what is empty left out."""
        return {key: self.cleaned_data[key] for key in keys if self.cleaned_data.get(key) not in ("", None)}

    def needs_points(self) -> None:
        """Ask for points where none were given."""
        if self.cleaned_data.get("points") is None and "points" not in self.errors:
            self.add_error("points", str(POINTS))


class RuleForm(WeighedForm):
    """A rule of the book's own."""

    sentence = forms.CharField(
        label=lazy("What is right, as the trainee reads it"),
        max_length=200,
        error_messages={"required": lazy("Say in a few words what is right.")},
    )
    way = forms.ChoiceField(
        label=lazy("How its points are earned"),
        choices=WAYS,
        initial="whole",
        required=False,
        widget=forms.RadioSelect,
    )
    test = _Text(lazy("Met when"))
    share = _Text(lazy("Share of the points, from 0 to 1"))

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        for place in range(STEPS):
            self.fields[f"step_{place}"] = _Text(lazy("Step"), rows=2)
            self.fields[f"step_points_{place}"] = _Points(label=lazy("Points of this step"), required=False)

    @classmethod
    def of(cls, row: Row, seen: str, lesson: str) -> "RuleForm":
        """Return the form of a rule as it stands."""
        way = next((name for name in ("steps", "share") if name in row), "whole")
        given: dict[str, Any] = {"lesson": lesson, **row, "way": way, "seen": seen}
        steps: Any = row.get("steps", [])
        for place, (test, points) in enumerate(steps):
            given[f"step_{place}"], given[f"step_points_{place}"] = test, points
        return cls(initial=given)

    @property
    def steps(self) -> list[tuple[forms.BoundField, forms.BoundField]]:
        """Return the fields of each step: its test and its points."""
        return [(self[f"step_{place}"], self[f"step_points_{place}"]) for place in range(STEPS)]

    def clean(self) -> dict[str, Any]:
        """Ask for what the way of earning points needs."""
        given = super().clean() or {}
        given["way"] = given.get("way") or "whole"
        if given["way"] == "steps":
            self._clean_steps(given)
        else:
            self.needs_points()
            name = "test" if given["way"] == "whole" else "share"
            if not given.get(name):
                self.add_error(name, _("Write it, or build it from words below."))
        if given["way"] != "whole" and given.get("severity") == "critical":
            said = _("A critical rule is met or not met; points in part belong to the other severities.")
            self.add_error("severity", said)
        return given

    def _clean_steps(self, given: dict[str, Any]) -> None:
        for place in range(STEPS):
            test, points = given.get(f"step_{place}"), given.get(f"step_points_{place}")
            if test and points is None and f"step_points_{place}" not in self.errors:
                self.add_error(f"step_points_{place}", str(POINTS))
        if not any(given.get(f"step_{place}") for place in range(STEPS)):
            self.add_error("step_0", _("Write at least one step."))

    def row(self, code: str) -> Row:
        """Return the rule as a row of the draft."""
        given = self.cleaned_data
        row: Row = {"code": code, **self.kept("sentence", "when")}
        if given["way"] == "steps":
            numbers = range(STEPS)
            row["steps"] = [[given[f"step_{n}"], given[f"step_points_{n}"]] for n in numbers if given[f"step_{n}"]]
        else:
            row |= self.kept("test" if given["way"] == "whole" else "share") | self.kept("points")
        return {**row, **self.kept("severity", "because", "lesson", "source")}


class SharedRuleForm(WeighedForm):
    """A shared rule in this book: points and severity of its own; guard, reason, lesson, source where they differ."""

    def __init__(self, shared: SharedRule, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.shared = shared

    @classmethod
    def of(cls, shared: SharedRule, row: Row, seen: str, lesson: str) -> "SharedRuleForm":
        """Return the form of a shared rule as it stands in this book."""
        own = {"when": shared.when, "because": shared.because, "source": shared.source}
        return cls(shared, initial={**own, "lesson": shared.lesson or lesson, **row, "seen": seen})

    def clean(self) -> dict[str, Any]:
        """Ask for points."""
        given = super().clean() or {}
        self.needs_points()
        return given

    def row(self, code: str) -> Row:
        """Return the rule as a row of the draft: what is as shared is left to the shared book."""
        own = self.kept("when", "because", "lesson", "source")
        differs = {key: value for key, value in own.items() if value != getattr(self.shared, key)}
        return {"shared": code, **self.kept("severity", "points"), **differs}


AnyRuleForm = RuleForm | SharedRuleForm
