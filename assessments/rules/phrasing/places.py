"""The fields of a schema as places a phrase can point at, and how words and loop variables are written."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import chain, count

from assessments.rules.kinds import Kind, Schema
from assessments.rules.nodes import Path
from assessments.rules.units import Unit

OWN = "answer"
_VARIABLES = ("s", "t")
_FIRST = (OWN, "model")


@dataclass(frozen=True, slots=True)
class Choice:
    """What may be chosen: the piece of rule it stands for, its words on the page, and its path if it is a field."""

    text: str
    words: str
    path: Path | None = None


@dataclass(frozen=True, slots=True)
class Place:
    """A field a rule can read: where it stands and what kind of value it holds."""

    path: Path
    kind: Kind

    @property
    def text(self) -> str:
        """The field as a rule reads it."""
        return ".".join(self.path)

    @property
    def of(self) -> Kind:
        """The kind of one value: of a list, that of its items."""
        return self.kind.item or self.kind

    @property
    def of_path(self) -> Path:
        """Where one value stands: of a list, that of its items."""
        return (*self.path, "[]") if self.kind.item else self.path

    @property
    def unit(self) -> Unit | None:
        """The unit of its values."""
        return Unit.of(self.of.unit) if self.of.unit else None

    def fits(self, other: Place) -> bool:
        """Whether values of the two may be compared."""
        mine, others = self.of, other.of
        if mine.is_number and others.is_number:
            return _powers(self.unit) == _powers(other.unit)
        if mine.name == others.name == "enum":
            return bool(set(mine.vals) & set(others.vals))
        return mine.name == others.name and mine.name in ("bool", "str")


def _powers(unit: Unit | None) -> tuple[tuple[str, int], ...]:
    return unit.powers if unit else ()


def places(schema: Schema) -> list[Place]:
    """Return every field outside of lists, what the trainee gave first.

    >>> from assessments.rules.kinds import record
    >>> [each.text for each in places(Schema({"key": record({"n": Kind("int")}), "answer": Kind("int")}))]
    ['answer', 'key.n']
    """
    found = [place for name, kind in schema.names.items() for place in _under((name,), kind)]
    return sorted(found, key=lambda place: _FIRST.index(place.path[0]) if place.path[0] in _FIRST else len(_FIRST))


def _under(path: Path, kind: Kind) -> Iterator[Place]:
    if len(path) > 1 or kind.name != "rec":
        yield Place(path, kind)
    for name, inner in kind.fields.items():
        yield from _under((*path, name), inner)


def writable(kind: Kind) -> Iterator[str]:
    """Return the words of a choice that a rule can hold."""
    return (word for word in kind.vals if "\\" not in word and not {"'", '"'} <= set(word))


def quoted(word: str) -> str:
    """Return a word in the quotes it doesn't hold itself.

    >>> quoted("wait"), quoted("don't")
    ("'wait'", '"don\\'t"')
    """
    return f'"{word}"' if "'" in word else f"'{word}'"


def variables(schema: Schema) -> tuple[str, str]:
    """Return two names for loop variables that the schema doesn't take.

    >>> variables(Schema({"s": Kind("int")}))
    ('t', 'item0')
    """
    free = (each for each in chain(_VARIABLES, map("item{}".format, count())) if each not in schema.names)
    return next(free), next(free)
