"""Forms of those who manage the school: the school, its people and their roles, cohorts, invitations."""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from django import forms
from django.core.exceptions import ValidationError
from django.utils.translation import gettext_lazy as _

from courses.actions import CHANGED_MEANWHILE
from courses.content.pack import UnitPack
from courses.forms.people import towns
from courses.models import Cohort, Invitation, Membership, Person, School
from courses.models.enrolment import Role
from courses.shipped import units
from courses.tokens import digest_of

ADDRESS = _("This is no address. Write it like name@example.org.")
NO_COHORT = _("There is no such cohort. Choose one of the list.")
NO_ROLE = _("There is no such role. Choose one of the list.")
PERCENT = _("Enter a whole number from 0 to 300, 0 for none.")


def _unit_codes() -> list[tuple[str, str]]:
    return [
        (code, code) for unit in units().values() for code in (unit.code, *(code for code, _title in unit.elements))
    ]


class SchoolForm(forms.ModelForm):  # type: ignore[type-arg]
    """What the school says of itself."""

    zone = forms.ChoiceField(
        label=_("Clock of the school"),
        choices=lambda: [("UTC", "UTC"), *towns()],
        error_messages={"invalid_choice": _("There is no such time zone. Choose one of the list.")},
    )

    class Meta:
        model = School
        fields = ("name", "place", "about", "zone", "jurisdiction", "metric", "independence")
        labels = {
            "name": _("Name"),
            "place": _("Place (optional)"),
            "about": _("In a sentence (optional)"),
            "jurisdiction": _("Law it works under"),
            "metric": _("New people begin with metric units"),
            "independence": _("Whoever teaches a unit doesn’t sign it"),
        }
        error_messages = {"name": {"required": _("Enter the name of the school.")}}


class PersonFindForm(forms.Form):
    """Which people are looked for."""

    q = forms.CharField(label=_("Name or email"), max_length=120, required=False)
    cohort = forms.ModelChoiceField(
        label=_("Cohort"),
        queryset=Cohort.objects.all(),
        required=False,
        empty_label=_("Any"),
        error_messages={"invalid_choice": NO_COHORT},
    )
    role = forms.ChoiceField(
        label=_("Role"),
        choices=[("", _("Any")), *Role.choices],
        required=False,
        error_messages={"invalid_choice": NO_ROLE},
    )


class PersonForm(forms.ModelForm):  # type: ignore[type-arg]
    """What the school keeps of a person."""

    extra_time_percent = forms.IntegerField(
        label=_("Extra time, %"),
        help_text=_("Added to the clock of every paper opened from now on."),
        min_value=0,
        max_value=300,
        error_messages=dict.fromkeys(("required", "invalid", "min_value", "max_value"), PERCENT),
    )

    class Meta:
        model = Person
        fields = ("name", "email", "extra_time_percent")
        labels = {"name": _("Name on certificates"), "email": _("Email")}
        error_messages = {
            "name": {"required": _("Enter a name.")},
            "email": {"required": _("Enter an address."), "invalid": ADDRESS},
        }

    def clean_email(self) -> str:
        """Return the address in small letters; whose it is, the verb says."""
        return str(self.cleaned_data["email"]).strip().lower()

    def validate_unique(self) -> None:
        """Leave it to the verb, which looks while nobody else can write."""


@dataclass(frozen=True, slots=True)
class CodeLine:
    """A unit or an element, and whether it is taught and may be signed."""

    code: str
    title: str
    teaches: bool
    may_sign: bool


@dataclass(frozen=True, slots=True)
class UnitLines:
    """A unit with its elements; what is ticked in it, in codes."""

    lines: tuple[CodeLine, ...]

    @property
    def unit(self) -> CodeLine:
        """Return the line of the whole unit."""
        return self.lines[0]

    @property
    def taught(self) -> str:
        """Return the codes taught."""
        return ", ".join(one.code for one in self.lines if one.teaches)

    @property
    def signed(self) -> str:
        """Return the codes that may be signed."""
        return ", ".join(one.code for one in self.lines if one.may_sign)


class CodesForm(forms.Form):
    """A role's cohort, and the codes of units and elements it teaches and may sign."""

    cohort = forms.ModelChoiceField(
        label=_("Cohort"),
        queryset=Cohort.objects.all(),
        required=False,
        empty_label=_("The whole school"),
        error_messages={"invalid_choice": NO_COHORT},
    )
    teaches = forms.MultipleChoiceField(label=_("Teaches"), choices=_unit_codes, required=False)
    may_sign = forms.MultipleChoiceField(label=_("May sign"), choices=_unit_codes, required=False)

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        for name in ("teaches", "may_sign"):
            said = _("There is no unit or element %(value)s. Take it out.")
            self.fields[name].error_messages["invalid_choice"] = said

    def chosen(self) -> dict[str, Any]:
        """Return what a role is given or changed to."""
        return {name: value for name, value in self.cleaned_data.items() if name != "seen"}

    @property
    def units(self) -> Iterator[UnitLines]:
        """Yield each unit with its lines, ticked as given or as typed."""
        ticked = [set(self[name].value() or ()) for name in ("teaches", "may_sign")]
        for unit in units().values():
            yield UnitLines(
                tuple(CodeLine(code, title, *(code in codes for codes in ticked)) for code, title in _lines(unit))
            )


def _lines(unit: UnitPack) -> list[tuple[str, str]]:
    return [(unit.code, unit.title), *unit.elements]


class RoleChangeForm(CodesForm):
    """What a role is changed to; it carries what it was when it was shown."""

    seen = forms.CharField(widget=forms.HiddenInput, required=False)

    def __init__(self, membership: Membership, *args: Any, **kwargs: Any) -> None:
        self.membership = membership
        held = {"cohort": membership.cohort_id, "teaches": membership.teaches, "may_sign": membership.may_sign}
        self.was = digest_of(json.dumps(held))
        super().__init__(*args, initial={**held, "seen": self.was}, **kwargs)

    def clean(self) -> dict[str, Any]:
        """Refuse to write over what another manager changed after this was shown."""
        given = super().clean() or {}
        if given.get("seen") != self.was:
            raise ValidationError(CHANGED_MEANWHILE)
        _needs_cohort(self, self.membership.role, given)
        return given


class RoleForm(CodesForm):
    """A role to give."""

    role = forms.ChoiceField(
        label=_("Role"),
        choices=[("", _("Choose one")), *Role.choices],
        error_messages={"required": _("Choose a role."), "invalid_choice": NO_ROLE},
    )
    field_order = ("role", "cohort")

    def __init__(self, person: Person, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.person = person

    def clean(self) -> dict[str, Any]:
        """Refuse a role that is held already: it is changed, not given again."""
        given = super().clean() or {}
        _needs_cohort(self, given.get("role", ""), given)
        held = self.person.memberships.filter(role=given.get("role"), cohort=given.get("cohort"))
        if not self.errors and held.exists():
            self.add_error("role", _("They hold this role there already. Change that one."))
        return given


class CohortForm(forms.ModelForm):  # type: ignore[type-arg]
    """A cohort: its name, where it meets, the course it follows."""

    class Meta:
        model = Cohort
        fields = ("name", "mode", "course")
        labels = {"name": _("Name"), "mode": _("Meets"), "course": _("Course")}
        error_messages = {
            "name": {"required": _("Enter a name.")},
            "mode": {"required": _("Choose where it meets."), "invalid_choice": _("Choose one of the list.")},
            "course": {"required": _("Choose a course."), "invalid_choice": _("Choose one of the list.")},
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        _ask(self, mode=_("Choose one"), course=_("Choose one"))

    def validate_unique(self) -> None:
        """Leave it to the verb, which looks while nobody else can write."""


class InvitationForm(forms.ModelForm):  # type: ignore[type-arg]
    """Whom an invitation brings in, and as what."""

    class Meta:
        model = Invitation
        fields = ("email", "role", "cohort")
        labels = {"email": _("Email (optional)"), "role": _("Role"), "cohort": _("Cohort")}
        help_texts = {"email": _("With an address, only that address may use the link.")}
        error_messages = {
            "email": {"invalid": ADDRESS},
            "role": {"required": _("Choose a role."), "invalid_choice": NO_ROLE},
            "cohort": {"invalid_choice": NO_COHORT},
        }

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        _ask(self, role=_("Choose one"), cohort=_("The whole school"))

    def clean(self) -> dict[str, Any]:
        """Refuse a trainee without a cohort at the field that is missing."""
        given = super().clean() or {}
        _needs_cohort(self, given.get("role", ""), given)
        return given


def _ask(form: forms.BaseForm, **words: Any) -> None:
    for name, empty in words.items():
        choices = list(form.fields[name].choices)  # type: ignore[attr-defined]
        form.fields[name].choices = [("", empty), *choices[1:]]  # type: ignore[attr-defined]


def _needs_cohort(form: forms.BaseForm, role: str, given: dict[str, Any]) -> None:
    if role == Role.TRAINEE and given.get("cohort") is None and "cohort" not in form.errors:
        form.add_error("cohort", _("A trainee learns in a cohort. Choose one."))
