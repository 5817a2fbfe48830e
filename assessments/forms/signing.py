"""What is filled in to sign, to turn down and to withdraw."""

from typing import Any

from django import forms
from django.core import signing
from django.utils.translation import gettext_lazy as _

from assessments.competence import Deed

SALT = "what was shown"


def seal(deed: Deed) -> str:
    """Return a deed as a page carries it: sealed, so that nobody changes what they were shown."""
    return signing.dumps(deed.as_json(), salt=SALT, compress=True)


def unseal(text: str) -> Deed | None:
    """Return the deed a page carried, or None where the seal is not ours."""
    try:
        return Deed.of(signing.loads(text, salt=SALT))
    except (signing.BadSignature, ValueError):
        return None


def _code_field() -> forms.CharField:
    return forms.CharField(
        label=_("Six-digit code from your device"),
        max_length=12,
        required=False,
        widget=forms.TextInput(attrs={"inputmode": "numeric", "autocomplete": "one-time-code", "class": "code"}),
    )


def _reason_field() -> forms.CharField:
    return forms.CharField(
        label=_("Why"),
        help_text=_("The trainee reads it. It stays on the record."),
        max_length=1000,
        error_messages={"required": _("Say why. The reason stays on the record.")},
        widget=forms.Textarea(attrs={"rows": 4}),
    )


class SignForm(forms.Form):
    """That the evidence was read, and the code that proves who signs."""

    shown = forms.CharField(widget=forms.HiddenInput)
    read = forms.BooleanField(
        label=_("I have read the evidence, not only the summary"),
        error_messages={"required": _("Read the evidence first, then tick this.")},
    )
    code = _code_field()


class TurnDownForm(forms.Form):
    """Why it is declined, or what more is asked."""

    shown = forms.CharField(widget=forms.HiddenInput)
    reason = _reason_field()


class WithdrawForm(forms.Form):
    """Why a signature is withdrawn, and the code that proves who does it."""

    reason = _reason_field()
    code = _code_field()

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.fields["reason"].help_text = _("It stays on the record, beside the signature.")
