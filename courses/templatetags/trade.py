"""Numbers of the trade on a page: in the reader's units, and never torn from their unit."""

from __future__ import annotations

import re

from django import template
from django.template.defaultfilters import stringfilter
from django.utils.functional import Promise

from courses.templatetags.words import SOURCE_MARKS
from courses.trade.units import Preferences, shown

register = template.Library()

_UNITS = (
    "°F|°C|°|%|K|model µm|µm|mil|mm|cm|m²|m³|m/s|m|ft²|ft|fl oz|mL|L|gal|g/kg|g/m²|g|kg|"
    "min|h|s|rpm|GU|ppm|hPa|mph|dB|points?|lessons?"
)
_BEFORE_UNIT = re.compile(rf"(?<=\d) (?=(?:{_UNITS})(?![\w°]))")
_MODEL = re.compile(r"(?<=\dXmodel) (?=µm)".replace("X", "\u00a0"))
_AFTER_NAME = re.compile(r"\b(step|panel|lesson|row|section|bay|attempt) (?=\d)", re.IGNORECASE)


@register.filter(is_safe=True)
@stringfilter
def glue(words: str) -> str:
    """Join every number to its unit, and names like “step 3” to their number, with a no-break space.

    Works on text and on finished HTML alike, since a no-break space never stands inside a tag's own syntax here:
    attributes such as a picture's alternative text may be glued too, which is wanted.
    """
    glued = _BEFORE_UNIT.sub("\u00a0", words)
    glued = _MODEL.sub("\u00a0", glued)
    return _AFTER_NAME.sub("\\1\u00a0", glued)


@register.simple_tag(takes_context=True)
def quantity(context: template.Context, value: float, unit: str, decimals: int | None = None) -> str:
    """A value of the engine's base unit as this reader reads it: “61.0 °F”."""
    return shown(value, unit, reader_units(context), decimals)


def reader_units(context: template.Context) -> Preferences:
    """The units of the person who reads, or metric where nobody is signed in."""
    prefs = context.get("prefs")
    return prefs if isinstance(prefs, Preferences) else Preferences.metric()


@register.filter
def mark_words(mark: str) -> str | Promise:
    """How a source is known, in words; words that are given already stay."""
    return SOURCE_MARKS.get(mark, mark)
