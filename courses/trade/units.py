"""Quantities as people type them, and as each person wants them shown.

`parse_quantity` turns what was typed into the base unit; `Preferences` says which unit a person reads, `shown` writes
it: glued to its unit by a no-break space, with a true minus, rounded half away from zero, never "−0.0".
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from types import MappingProxyType

from courses.trade.conversions import SPELLINGS, UNITS, Unit, folded
from courses.trade.errors import UnitError, offer

__all__ = [
    "CHOICES",
    "UNITS",
    "Preferences",
    "Unit",
    "example",
    "from_shown",
    "parse_quantity",
    "rounded",
    "shown",
    "shown_plain",
    "symbol",
    "to_shown",
]

GLUE = "\u00a0"
MINUS = "\u2212"

_TYPED = re.compile(r"([+-]?)\s*([0-9.,]+(?:[eE][+-]?[0-9]{1,2}(?![0-9a-zA-Z]))?)\s*(.*)")
_TOO_LARGE = 1e15
_GROUPED = re.compile(r"[1-9][0-9]{0,2},[0-9]{3}")
_EXAMPLES: Mapping[str, str] = MappingProxyType(
    {
        "degc": "18 °C or 64 °F",
        "K": "3 K or 5.4 °F",
        "rh": "65 %",
        "um": "120 µm or 5 mil",
        "mm": "80 mm or 3 in",
        "m": "6.4 m or 21 ft",
        "m2": "14.2 m² or 153 ft²",
        "ml": "50 mL or 1.7 fl oz",
        "l": "3.8 L or 1 gal",
        "deg": "60°",
        "gkg": "6 g/kg or 42 gr/lb",
        "mps": "0.3 m/s or 60 ft/min",
        "ratio": "0.95",
    }
)


def parse_quantity(text: str | float, unit: str, default_unit: str | None = None) -> float:
    """What was typed, in the base ``unit``: a number (already in it), or text: ``"54 °F"``, ``"12,5"``, ``"5 mil"``.

    A bare number in text is in ``default_unit`` where one is given (the unit of the field it was typed into), else in
    ``unit``. Raises `UnitError`, with an example, for words, NaN, infinity, grouped thousands and units of other kinds.

    >>> parse_quantity("12,5", "degc"), parse_quantity("5 mil", "um"), parse_quantity("5.4 °F", "K")
    (12.5, 127.0, 3.0)
    >>> parse_quantity("50", "degc", default_unit="degf")
    10.0
    """
    target = UNITS[unit]
    if isinstance(text, str):
        number, source = _read(text, target, UNITS[default_unit or unit])
        value = source.converted(number, target)
        if abs(value) >= _TOO_LARGE:
            raise UnitError(f"{text.strip()!r} is too large to be worked with; write it as {example(unit)}.")
        return float(value)
    if isinstance(text, bool) or not isinstance(text, int | float):
        raise UnitError(f"{text!r} is no number; write it as {example(target.code)}.")
    if not abs(text) < _TOO_LARGE:
        raise UnitError(f"{str(text)[:20]} is no number that can be worked with; write it as {example(target.code)}.")
    return float(text)


def _read(text: str, target: Unit, default: Unit) -> tuple[Fraction, Unit]:
    typed = _TYPED.fullmatch(text.strip().replace(MINUS, "-").replace("\u2013", "-"))
    if typed is None or len(text) > 60:
        raise UnitError(f"{text.strip()[:60]!r} is no number; write it as {example(target.code)}.")
    sign, digits, rest = typed.groups()
    number = _number(digits, text.strip(), target)
    return (-number if sign == "-" else number), (_unit_of(rest, text.strip(), target) if rest else default)


def _number(digits: str, typed: str, target: Unit) -> Fraction:
    if _GROUPED.fullmatch(digits):
        whole, decimal = digits.replace(",", ""), digits.replace(",", ".")
        raise UnitError(f"{typed!r} can be read in two ways; write {whole} or {decimal}.")
    try:
        return Fraction(digits.replace(",", ".") if digits.count(",") == 1 else digits)
    except ValueError:
        raise UnitError(f"{typed!r} is no number; write one decimal mark, as in 12.5 or 12,5.") from None


def _unit_of(rest: str, typed: str, target: Unit) -> Unit:
    meant = SPELLINGS.get(folded(rest), ())
    for unit in meant:
        if unit.quantity == target.quantity:
            return unit
    if meant:
        raise UnitError(
            f"{typed!r} is a {meant[0].quantity}, not a {target.quantity}; write it as {example(target.code)}."
        )
    fitting = [unit.symbol for unit in UNITS.values() if unit.quantity == target.quantity and unit.symbol]
    near = offer(rest, dict.fromkeys(fitting)) if fitting else f"write it as {example(target.code)}."
    raise UnitError(f"{rest!r} in {typed!r} is no unit of {target.quantity} known here; {near}")


def example(unit: str) -> str:
    """How a quantity in the base ``unit`` may be written, for the end of a sentence.

    >>> example("rh"), example("kg")
    ('65 %', '12 kg')
    """
    return _EXAMPLES.get(unit, f"12 {UNITS[unit].symbol}".strip())


@dataclass(frozen=True, slots=True)
class Preferences:
    """The units one person reads, chosen quantity by quantity.

    ``temperature`` is ``degc`` or ``degf``, ``film`` ``um`` or ``mil``, ``volume`` ``ml`` or ``fl_oz`` (litres or
    gallons follow), ``length`` ``m`` or ``ft`` (mm or inches, areas and rooms follow). A `ValueError` names another
    choice.

    >>> Preferences(temperature="degf").unit_for("K").symbol
    '°F'
    """

    temperature: str = "degc"
    film: str = "um"
    volume: str = "ml"
    length: str = "m"

    def __post_init__(self) -> None:
        """Refuse a choice that no quantity offers."""
        for quantity, choices in CHOICES.items():
            chosen = getattr(self, quantity)
            if chosen not in choices:
                raise ValueError(f"{quantity} can't be shown in {chosen!r}; {offer(str(chosen), choices)}")

    @classmethod
    def metric(cls) -> Preferences:
        """°C, µm, mL and m throughout.

        >>> shown(3.0, "K", Preferences.metric())
        '3.0\\xa0K'
        """
        return cls()

    @classmethod
    def us(cls) -> Preferences:
        """°F, mil, fl oz and ft throughout.

        >>> shown(3.0, "K", Preferences.us())
        '5.4\\xa0°F'
        """
        return cls("degf", "mil", "fl_oz", "ft")

    def unit_for(self, unit: str) -> Unit:
        """The unit in which this person reads quantities that stand in the base ``unit``."""
        chosen = (self.temperature, self.film, self.volume, self.length)
        return UNITS[next((to for choice, base, to in _CUSTOMARY if choice in chosen and base == unit), unit)]


CHOICES: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {"temperature": ("degc", "degf"), "film": ("um", "mil"), "volume": ("ml", "fl_oz"), "length": ("m", "ft")}
)
"""What a person may choose, the metric unit first."""

_CUSTOMARY = (
    ("degf", "degc", "degf"),
    ("degf", "K", "degf_step"),
    ("mil", "um", "mil"),
    ("fl_oz", "ml", "fl_oz"),
    ("fl_oz", "l", "gal"),
    ("ft", "mm", "inch"),
    ("ft", "m", "ft"),
    ("ft", "m2", "ft2"),
    ("ft", "m3", "ft3"),
)


def rounded(value: float, decimals: int) -> float:
    """``value`` to so many ``decimals``, half away from zero as people round, and never minus zero.

    >>> rounded(2.675, 2), rounded(-0.5, 0), rounded(-0.04, 1)
    (2.68, -1.0, 0.0)
    """
    if not math.isfinite(value):
        raise ValueError(f"{value} can't be rounded; it is no finite number.")
    return float(Decimal(repr(float(value))).quantize(Decimal(1).scaleb(-decimals), ROUND_HALF_UP)) + 0.0


def to_shown(value: float, unit: str, prefs: Preferences) -> tuple[float, str]:
    """``value`` in the base ``unit`` as this person reads it: the number, not rounded, and its symbol.

    >>> to_shown(18.0, "degc", Preferences.us())
    (64.4, '°F')
    """
    to = prefs.unit_for(unit)
    return float(UNITS[unit].converted(_exact(value), to)) if to.code != unit else float(value), to.symbol


def from_shown(number: float, unit: str, prefs: Preferences) -> float:
    """A ``number`` in the unit this person reads, back in the base ``unit``.

    >>> from_shown(64.4, "degc", Preferences.us())
    18.0
    """
    return float(prefs.unit_for(unit).converted(_exact(number), UNITS[unit]))


def symbol(unit: str, prefs: Preferences) -> str:
    """The symbol of the unit in which this person reads the base ``unit``.

    >>> symbol("m2", Preferences.us())
    'ft²'
    """
    return prefs.unit_for(unit).symbol


def shown(value: float, unit: str, prefs: Preferences, decimals: int | None = None) -> str:
    """``value`` in the base ``unit``, written as this person reads it, to the ``decimals`` usual for that unit.

    >>> shown(-0.04, "degc", Preferences.metric()), shown(-2.13, "degc", Preferences.metric())
    ('0.0\\xa0°C', '−2.1\\xa0°C')
    """
    number, sign = to_shown(value, unit, prefs)
    places = prefs.unit_for(unit).decimals if decimals is None else decimals
    return _glued(f"{rounded(number, places):.{places}f}", sign)


def shown_plain(value: float, unit: str, prefs: Preferences) -> str:
    """``value`` written with no more decimals than it has (four at most): for limits and for what somebody typed.

    >>> shown_plain(140.0, "rh", Preferences.metric()), shown_plain(-20.0, "degc", Preferences.us())
    ('140\\xa0%', '−4\\xa0°F')
    """
    number, sign = to_shown(value, unit, prefs)
    return _glued(f"{rounded(number, 4):.4f}".rstrip("0").rstrip("."), sign)


def _exact(value: float) -> Fraction:
    return Fraction(repr(float(value)))


def _glued(digits: str, sign: str) -> str:
    gap = "" if sign == "°" else " "
    return f"{digits.replace('-', MINUS)}{gap}{sign}".rstrip().replace(" ", GLUE)
