"""Which two kinds stand side by side, on which colour, in which light."""

from typing import Any

from django import forms
from django.utils.text import capfirst
from django.utils.translation import gettext_lazy as _

from courses.gallery import lookalike_kinds
from courses.pictures.lookalikes import CLEAN, SHADES
from courses.shipped import catalogue

SHADE_WORDS = {"dark": _("Dark: navy"), "mid": _("Mid: grey"), "white": _("White")}
LIGHT_WORDS = {
    "point": _("One lamp, square on"),
    "raking": _("One lamp, low from the side"),
    "diffuse": _("Even light"),
}
NOT_LISTED = {"invalid_choice": _("There is no such choice. Take one of the list.")}


def kind_words() -> list[tuple[str, str]]:
    """Return every kind with the trade's name for it, in the order of the alphabet; the clean panel comes first."""
    known = catalogue().kinds
    named = sorted((capfirst(known[code].called), code) for code in lookalike_kinds() if code != CLEAN)
    return [(CLEAN, str(_("Clean panel"))), *((code, called) for called, code in named)]


class LookAlikesForm(forms.Form):
    """Two kinds that differ, a colour and a light."""

    a = forms.ChoiceField(label=_("One panel"), choices=kind_words, error_messages=NOT_LISTED)
    b = forms.ChoiceField(label=_("The other panel"), choices=kind_words, error_messages=NOT_LISTED)
    colour = forms.ChoiceField(
        label=_("Colour"), choices=[(code, SHADE_WORDS[code]) for code in SHADES], error_messages=NOT_LISTED
    )
    light = forms.ChoiceField(
        label=_("Light"), choices=[(code, LIGHT_WORDS[code]) for code in LIGHT_WORDS], error_messages=NOT_LISTED
    )

    def clean(self) -> dict[str, Any]:
        """Refuse one kind beside itself."""
        cleaned = super().clean() or {}
        if cleaned.get("a") and cleaned.get("a") == cleaned.get("b"):
            self.add_error("b", _("Both panels are the same. Choose another kind for one of them."))
        return cleaned
