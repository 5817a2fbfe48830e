"""What the trade's arithmetic says when it refuses: whole sentences, with the value and what would be right.

TradeError                  a ValueError; ``input`` names what was wrong, ``sentence`` says why
├── UnitError               text that is no number with a unit of the right kind
├── OutOfRange              a quantity outside the range its formula holds for
├── ImpossibleChoice        a word that is none of the choices, a table row that has the wrong shape
├── MissingInput            an input that has no default was left out
├── UnknownInput            a name that this sum doesn't take
├── UnknownSum              a name in no register
├── PlanRefused             a surface or a plan that can't be worked
└── TableRefused            an entry of a shipped table of the trade that can't be read
    └── SourceRefused       an entry of the list of sources that can't be read
"""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches


class TradeError(ValueError):
    """A refusal: ``sentence`` for a page that shows it beside the field, the whole text with ``input`` before it.

    >>> str(TradeError("140 % lies outside 1 % to 100 %.", "air_rh"))
    'air_rh: 140 % lies outside 1 % to 100 %.'
    """

    def __init__(self, sentence: str, input: str = "") -> None:  # noqa: A002  the word of the doors
        """Keep the ``sentence`` and the name of the ``input`` it speaks of, empty where it speaks of none."""
        super().__init__(f"{input}: {sentence}" if input else sentence)
        self.sentence = sentence
        self.input = input


class UnitError(TradeError):
    """Text that is no number, or a number with a unit of another kind."""


class OutOfRange(TradeError):
    """A quantity outside the range its formula holds for."""


class ImpossibleChoice(TradeError):
    """A word that is none of the choices, or a table that has the wrong shape."""


class MissingInput(TradeError):
    """An input without a default was left out."""


class UnknownInput(TradeError):
    """A name that the sum doesn't take."""


class UnknownSum(TradeError):
    """A name in no register of sums."""


class PlanRefused(TradeError):
    """A surface or a plan that can't be worked; ``field`` names the place, such as ``plan 3 grade``."""

    @property
    def field(self) -> str:
        """Where in the surface or the plan."""
        return self.input


class TableRefused(TradeError):
    """An entry of a shipped table of the trade, such as defects or surfaces, that can't be read."""


class SourceRefused(TableRefused):
    """An entry of the list of sources that can't be read."""


def offer(word: str, known: Iterable[str]) -> str:
    """The end of a sentence: the known words nearest to ``word`` or holding it, or all where none does.

    >>> offer("dew_pont", ["dew_point", "water_content"])
    'did you mean dew_point?'
    >>> offer("rh", ["air_degc", "air_rh"])
    'did you mean air_rh?'
    >>> offer("gloss", ["dew_point", "water_content"])
    'there are dew_point, water_content.'
    """
    names = list(known)
    near = get_close_matches(word, names, n=2) or [name for name in names if word and word in name][:2]
    return f"did you mean {' or '.join(near)}?" if near else f"there are {', '.join(names)}."
