"""Forms about a person: coming in, and how they like to read."""

from typing import Any
from zoneinfo import available_timezones

from django import forms
from django.conf import settings
from django.contrib.auth.password_validation import validate_password
from django.core.exceptions import ValidationError
from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

from courses.models import Invitation, Person

NAMELESS = _("Enter your name.")
UNIT_FIELDS = ("temperature", "film", "volume", "length")


def towns() -> list[tuple[str, str | Promise]]:
    """Return the time zones that a person may live in, with their names as read."""
    zones = sorted(zone for zone in available_timezones() if "/" in zone and not zone.startswith(("Etc/", "SystemV/")))
    return [(zone, zone.replace("_", " ")) for zone in zones]


def _zones() -> list[tuple[str, str | Promise]]:
    return [("", _("As the school")), *towns()]


class ComeInForm(forms.Form):
    """What an invited person says of themself."""

    email = forms.EmailField(
        label=_("Email"),
        error_messages={
            "required": _("Enter your address."),
            "invalid": _("This is no address. Write it like name@example.org."),
        },
        widget=forms.EmailInput(attrs={"autocomplete": "username"}),
    )
    name = forms.CharField(
        label=_("Your name, as a certificate should print it"),
        max_length=120,
        error_messages={"required": NAMELESS},
        widget=forms.TextInput(attrs={"autocomplete": "name"}),
    )
    password = forms.CharField(
        label=_("Password"),
        help_text=_("12 characters or more."),
        error_messages={"required": _("Choose a password.")},
        max_length=128,
        strip=False,
        widget=forms.PasswordInput(attrs={"autocomplete": "new-password"}),
    )
    units = forms.ChoiceField(
        label=_("Units to begin with"),
        choices=[("us", _("US")), ("metric", _("Metric"))],
        widget=forms.RadioSelect,
    )

    def __init__(self, invitation: Invitation, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.invitation = invitation
        if invitation.email:
            email = self.fields["email"]
            email.initial, email.disabled = invitation.email, True
            email.help_text = _("The invitation belongs to this address.")

    def clean_password(self) -> str:
        """Return the password if it is hard enough to guess."""
        password: str = self.cleaned_data["password"]
        person = Person(email=self.cleaned_data.get("email", ""), name=self.cleaned_data.get("name", ""))
        validate_password(password, person)
        return password

    def clean_email(self) -> str:
        """Return the address in small letters, refusing one that is taken."""
        email: str = self.cleaned_data["email"].lower()
        if Person.objects.with_email(email).exists():
            raise ValidationError(_("This address already belongs here. Sign in instead."))
        return email


class SettingsForm(forms.ModelForm):  # type: ignore[type-arg]
    """How a person likes to read."""

    zone = forms.ChoiceField(label=_("Time zone"), choices=_zones, required=False)
    language = forms.ChoiceField(label=_("Language"), choices=settings.LANGUAGES)

    class Meta:
        model = Person
        fields = ("name", *UNIT_FIELDS, "language", "zone")
        error_messages = {"name": {"required": NAMELESS}}
        widgets = dict.fromkeys(UNIT_FIELDS, forms.RadioSelect)
        labels = {
            "name": _("Name on certificates"),
            "temperature": _("Temperature"),
            "film": _("Film and marks"),
            "volume": _("Volume"),
            "length": _("Length and area"),
        }

    def chosen(self) -> dict[str, str]:
        """Return field to value of what was chosen."""
        return {name: self.cleaned_data[name] for name in self.Meta.fields}
