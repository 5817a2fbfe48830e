"""What goes wrong with a scenario, said in whole sentences with the value and the near miss."""

from collections.abc import Iterable
from difflib import get_close_matches


class ScenarioError(ValueError):
    """Base of everything this chapter refuses."""


class SpecRefused(ScenarioError):
    """A scenario file says something that can't stand; the message names file, line and key."""


class ValueRefused(ScenarioError):
    """A drawn or computed value doesn't fit its declared field."""


class UnknownScenario(ScenarioError):
    """No scenario of that code or version exists."""


class DrawNeverSettled(ScenarioError):
    """Every try was thrown away; the message names the conditions that threw them."""


def near_miss(word: str, known: Iterable[str]) -> str:
    """Return " Did you mean 'x'?" for the closest known word, else a list of what is known.

    >>> near_miss("dew_piont", ["dew_point", "margin"])
    " Did you mean 'dew_point'?"
    >>> near_miss("zzz", ["margin", "dew_point"])
    ' Known: dew_point, margin.'
    """
    names = sorted(known)
    close = get_close_matches(word, names, n=1)
    if close:
        return f" Did you mean '{close[0]}'?"
    return f" Known: {', '.join(names)}." if names else ""
