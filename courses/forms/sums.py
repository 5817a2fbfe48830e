"""One form per sum, built from its declaration; numbers are read in the reader's units."""

from collections.abc import Mapping
from typing import Any

from django import forms
from django.core.exceptions import ValidationError
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy as lazy

from courses.trade.errors import TradeError
from courses.trade.sums import Input, Result, Sum, Value, work_out
from courses.trade.units import Preferences, shown_plain, symbol

LONGEST_LIST = 400
LONG_WORDS = 16
"""Choices longer than so many letters get the whole width of a phone."""
NEEDED = {"required": lazy("Enter a value.")}


class QuantityField(forms.CharField):
    """A number as it was typed, with or without a unit, read into the base unit."""

    def __init__(self, wanted: Input, prefs: Preferences) -> None:
        super().__init__(
            label=_(wanted.title),
            required=wanted.needed,
            max_length=LONGEST_LIST if wanted.count else 60,
            error_messages=NEEDED,
        )
        self.wanted, self.prefs, self.wide = wanted, prefs, bool(wanted.count)
        self.unit_symbol = symbol(wanted.unit, wanted.prefs_for(prefs))
        self.widget.attrs.update({"inputmode": "text" if wanted.count else "decimal", "autocomplete": "off"})

    def clean(self, value: Any) -> Any:
        """Return the value in its base unit, or refuse it in the reader's."""
        try:
            return self.wanted.read(super().clean(value), self.prefs)
        except TradeError as refusal:
            raise ValidationError(refusal.sentence) from refusal


class OptionField(forms.ChoiceField):
    """One of the choices of an input, in the words of the trade."""

    unit_symbol = ""

    def __init__(self, wanted: Input) -> None:
        blank = [("", _("Choose"))] if wanted.default is None else []
        options = [(option, _(words)) for option, words in wanted.options.items()]
        super().__init__(label=_(wanted.title), required=wanted.needed, choices=blank + options, error_messages=NEEDED)
        self.wanted, self.wide = wanted, max(len(words) for _id, words in options) > LONG_WORDS


class SumForm(forms.Form):
    """The inputs of one sum."""

    def __init__(self, asked: Sum, prefs: Preferences, data: Mapping[str, str] | None = None, prefix: str = "") -> None:
        super().__init__(data=data, auto_id=f"{prefix or asked.name}-%s")
        self.sum = asked
        for wanted in asked.inputs:
            self.fields[wanted.name] = OptionField(wanted) if wanted.choices else QuantityField(wanted, prefs)
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


def typed(wanted: Input, value: Value, prefs: Preferences) -> str | None:
    """Return a value, or several, as the reader would type or choose it; None where nobody could."""
    if isinstance(value, str):
        return value
    numbers = value if isinstance(value, tuple) else (value,)
    read_in = wanted.prefs_for(prefs)
    found = [shown_plain(each, wanted.unit, read_in) for each in numbers if isinstance(each, float)]
    return " ".join(each.split("\u00a0")[0].rstrip("°").replace("\u2212", "-") for each in found) or None
