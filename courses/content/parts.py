"""What a lesson consists of: parts that a template lays out one after another, none of them live."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from courses.content.prose import Prose


@dataclass(frozen=True, slots=True)
class Text:
    """Running text: headings, paragraphs, lists and tables."""

    kind: ClassVar[str] = "text"
    prose: Prose


@dataclass(frozen=True, slots=True)
class Calculator:
    """The calculator of ``sum`` (a name in `courses.trade.sums`), with the inputs it opens with, as written."""

    kind: ClassVar[str] = "calculator"
    sum: str
    given: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Finder:
    """The finder with the code ``table``, a table that is looked up."""

    kind: ClassVar[str] = "finder"
    table: str


@dataclass(frozen=True, slots=True)
class Pictures:
    """One to three pictures of the list side by side under one lamp, by their ``codes``."""

    kind: ClassVar[str] = "pictures"
    codes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Drawing:
    """The line drawing ``code``, which explains and has no scale to read."""

    kind: ClassVar[str] = "drawing"
    code: str


@dataclass(frozen=True, slots=True)
class Caution:
    """A caution box."""

    kind: ClassVar[str] = "caution"
    title: str
    prose: Prose


@dataclass(frozen=True, slots=True)
class Worked:
    """An example worked step by step."""

    kind: ClassVar[str] = "worked"
    title: str
    prose: Prose


@dataclass(frozen=True, slots=True)
class Mistakes:
    """The mistakes that are made here."""

    kind: ClassVar[str] = "mistakes"
    title: str
    prose: Prose


@dataclass(frozen=True, slots=True)
class Option:
    """One answer to a check question, whether it is right, and why or why not. ``id`` is ``a``, ``b``, …"""

    id: str
    text: Prose
    right: bool
    why: Prose


@dataclass(frozen=True, slots=True)
class Check:
    """A question with two to five options, exactly one of them right. ``id`` is ``c1``, ``c2``, … in the lesson."""

    kind: ClassVar[str] = "check"
    id: str
    question: Prose
    options: tuple[Option, ...]

    @property
    def right(self) -> Option:
        """The one right option."""
        return next(option for option in self.options if option.right)

    def option(self, chosen: str) -> Option | None:
        """The option with the id ``chosen``, or nothing if the question has no such option."""
        return next((option for option in self.options if option.id == chosen), None)


Part = Text | Calculator | Finder | Pictures | Drawing | Caution | Worked | Mistakes | Check
