"""Cleaned text whose quantities are still numbers, so that each reader sees them in their own units."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from html import escape

from courses.trade.units import Preferences, shown, to_shown

Show = Callable[[float, str, int], str]

FEW_MILS = 10.0


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number in a base unit of `courses.trade.units`, and the ``decimals`` with which it was written."""

    value: float
    unit: str
    decimals: int


@dataclass(frozen=True, slots=True)
class Prose:
    """Safe HTML in pieces: markup that has passed the cleaner, and quantities between."""

    pieces: tuple[str | Quantity, ...]

    @property
    def quantities(self) -> tuple[Quantity, ...]:
        """The quantities in the order of the text."""
        return tuple(piece for piece in self.pieces if isinstance(piece, Quantity))


def render_text(prose: Prose, show: Show) -> str:
    """The HTML of ``prose``, each quantity written by ``show(value, unit, decimals)`` and then escaped.

    >>> render_text(Prose(("<p>At least ", Quantity(3.0, "K", 1), ".</p>")), lambda v, u, d: f"{v:.{d}f} {u}")
    '<p>At least 3.0 K.</p>'
    """
    return "".join(
        piece if isinstance(piece, str) else escape(show(piece.value, piece.unit, piece.decimals))
        for piece in prose.pieces
    )


def shown_for(preferences: Preferences) -> Show:
    """How a reader with these ``preferences`` sees a quantity of a lesson: never more than one decimal.

    A whole number stays whole where its unit is the base unit; converted, it keeps one decimal unless that is 0.
    Mils under 10 keep two: a tenth of a mil is more than some films lose in a whole job.

    >>> show = shown_for(Preferences.us())
    >>> [show(20.0, "degc", 0), show(3.0, "K", 1), show(16.0, "degc", 0)]
    ['68\\xa0°F', '5.4\\xa0°F', '60.8\\xa0°F']
    >>> shown_for(Preferences.metric())(11.32, "degc", 2)
    '11.3\\xa0°C'
    """

    def show(value: float, unit: str, decimals: int) -> str:
        number, symbol = to_shown(value, unit, preferences)
        if symbol == "mil" and abs(number) < FEW_MILS:
            return shown(value, unit, preferences, decimals=2)
        tenth = shown(value, unit, preferences, decimals=1)
        if decimals == 0 and ".0" in tenth:
            return shown(value, unit, preferences, decimals=0)
        return tenth

    return show
