"""What can be wrong with a rule, and how it is said: a whole sentence, a place in the text, a near miss."""

from __future__ import annotations

import difflib
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import islice

_LONGEST_NAME = 60
_MOST_NAMES = 300


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing wrong with a rule: what, from which character to which (end exclusive), and what would be right.

    >>> Fault("There is no field 'stpes'.", 7, 12, "steps").as_json()["suggestion"]
    'steps'
    """

    message: str
    start: int | None = None
    end: int | None = None
    suggestion: str | None = None

    def as_json(self) -> dict[str, str | int | None]:
        """Return the fault in the shape of the `try_rule` door."""
        return {"message": self.message, "start": self.start, "end": self.end, "suggestion": self.suggestion}


class Refused(ValueError):
    """Base of every refusal of this package; `str()` is one whole sentence."""


class SchemaRefused(Refused):
    """A schema that cannot be read."""


class CaseRefused(Refused):
    """A case that does not fit its schema."""


class TrialRefused(Refused):
    """A request to try a rule that is no request: exit 2 at the door."""


class FunctionFailed(Exception):
    """A registered function raised while a rule was judged. Its name and what it raised are kept."""

    def __init__(self, name: str, error: Exception) -> None:
        self.name = name
        said = str(error) or "no word of why"
        super().__init__(f"{name}() failed: {type(error).__name__}, {said[:120]}.")


def nearest(name: str, names: Iterable[str]) -> str | None:
    """Return the name most like the one written, or None when none is near.

    >>> nearest("stpes", ["steps", "asked"])
    'steps'
    >>> nearest("qqq", ["steps"]) is None
    True
    """
    known = list(islice(names, _MOST_NAMES)) if len(name) <= _LONGEST_NAME else []
    by_case = {each.casefold(): each for each in reversed(known)}
    close = difflib.get_close_matches(name.casefold(), list(by_case), n=1, cutoff=0.6)
    return by_case[close[0]] if close else None


def offered(sentence: str, near: str | None) -> str:
    """Return the sentence with the near miss offered behind it, if there is one.

    >>> offered("There is no field 'stpes'", "steps")
    "There is no field 'stpes'; did you mean 'steps'?"
    """
    return f"{sentence}; did you mean '{near}'?" if near else f"{sentence}."


def listed(names: Iterable[str], most: int = 8) -> str:
    """Return names as a short list for a sentence, cut after `most`, a long name cut short.

    >>> listed(["a", "b"])
    'a, b'
    """
    known = [name if len(name) <= _LONGEST_NAME else f"{name[: _LONGEST_NAME - 1]}…" for name in names]
    return ", ".join(known[:most]) + (" …" if len(known) > most else "")
