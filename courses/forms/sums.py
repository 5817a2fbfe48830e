"""One form per sum, built from its declaration; numbers are read in the reader's units."""

from collections.abc import Mapping
from typing import Any

from django import forms
from django.core.exceptions import ValidationError
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy as lazy

from courses.trade.errors import TradeError
from courses.trade.sums import Input, Result, Sum, work_out
from courses.trade.units import Preferences, shown_plain, symbol

NEEDED = {"required": lazy("Enter a value.")}


class QuantityField(forms.CharField):
    """A number as it was typed, with or without a unit, read into the base unit."""

    def __init__(self, wanted: Input, prefs: Preferences) -> None:
        super().__init__(label=_(wanted.title), required=wanted.needed, max_length=60, error_messages=NEEDED)
        self.wanted, self.prefs = wanted, prefs
        self.unit_symbol = symbol(wanted.unit, prefs)
        self.widget.attrs.update({"inputmode": "decimal", "autocomplete": "off"})

    def clean(self, value: Any) -> Any:
        """Return the value in its base unit, or refuse it in the reader's."""
        try:
            return self.wanted.read(super().clean(value), self.prefs)
        except TradeError as refusal:
            raise ValidationError(refusal.sentence) from refusal


class SumForm(forms.Form):
    """The inputs of one sum."""

    def __init__(self, asked: Sum, prefs: Preferences, data: Mapping[str, str] | None = None, prefix: str = "") -> None:
        super().__init__(data=data, auto_id=f"{prefix or asked.name}-%s")
        self.sum = asked
        for wanted in asked.inputs:
            self.fields[wanted.name] = QuantityField(wanted, prefs)
            if isinstance(wanted.default, float):
                self.fields[wanted.name].initial = typed(wanted, wanted.default, prefs)

    def result(self) -> Result | None:
        """Return what the sum gives, or None with what it refuses as an error of the form."""
        if not self.is_valid():
            return None
        try:
            return work_out(self.sum.name, self.cleaned_data)
        except TradeError as refusal:
            self.add_error(None, refusal.sentence)
            return None


def typed(wanted: Input, value: float, prefs: Preferences) -> str:
    """Return a value as the reader would type it into the field."""
    return shown_plain(value, wanted.unit, prefs).split("\u00a0")[0].replace("\u2212", "-")
