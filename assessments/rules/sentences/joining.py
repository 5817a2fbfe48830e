"""Clauses joined so that nobody can read them two ways: commas, "either … or", "both … and", semicolons, brackets."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

TOP, BODY, INSIDE = range(3)
"""Where a group is spoken: as the whole sentence, as what is said of each item, inside another group."""


@dataclass(frozen=True, slots=True)
class Said:
    """One clause, or a group of them joined by `word`; an open clause runs on to the end of what is said."""

    text: str = ""
    word: str = ""
    parts: tuple[Said, ...] = ()
    open: bool = False

    @property
    def is_group(self) -> bool:
        """Whether something said behind it could be taken for a part of it."""
        return self.open or bool(self.parts)


def group(word: str, parts: Iterable[Said]) -> Said:
    """Return clauses joined by `and` or `or`; groups of the same word become one.

    >>> spoken(group("or", [Said("it rains"), Said("it snows")]))
    'either it rains or it snows'
    """
    return Said(word=word, parts=tuple(_flat(word, parts)))


def _flat(word: str, parts: Iterable[Said]) -> Iterator[Said]:
    for part in parts:
        if part.word == word:
            yield from part.parts
        else:
            yield part


def spoken(said: Said, place: int = TOP) -> str:
    """Return the words of a clause or group.

    >>> rain, snow, wind = Said("it rains"), Said("it snows"), Said("it blows")
    >>> spoken(group("and", [wind, group("or", [rain, snow])]))
    'it blows; and either it rains or it snows'
    >>> spoken(group("or", [wind, group("and", [rain, group("or", [snow, wind])])]))
    'either it blows; or both it rains and (either it snows or it blows)'
    """
    if not said.parts:
        return said.text
    grouped = any(part.is_group for part in said.parts)
    if place == TOP and grouped:
        return _by_semicolons(said)
    if said.word == "and" and place != INSIDE and not grouped:
        return _listed([part.text for part in said.parts], ", and ")
    words = [f"({spoken(part, INSIDE)})" if part.is_group else part.text for part in said.parts]
    if said.word == "or":
        return f"either {_listed(words, ' or ')}"
    return f"both {words[0]} and {words[1]}" if len(words) == 2 else f"all of this: {_listed(words, ' and ')}"


def _by_semicolons(said: Said) -> str:
    words = [spoken(part, INSIDE) for part in said.parts]
    return ("either " if said.word == "or" else "") + "; ".join(words[:-1]) + f"; {said.word} {words[-1]}"


def _listed(words: list[str], last: str) -> str:
    return ", ".join(words[:-1]) + last + words[-1]
