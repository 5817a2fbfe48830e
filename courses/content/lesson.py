"""A lesson file, TOML between two lines of ``+++`` and then Markdown, to parts.

Beside Markdown a lesson has three forms, each beginning its line:

- ``{{ calculator dew_margin air_degc=18 }}``, ``{{ finder which_reading }}``, ``{{ picture swirl hologram }}`` and
  ``{{ drawing four_skins }}``;
- ``:::caution Title`` … ``:::``, likewise ``worked`` and ``mistakes``;
- ``:::check`` … ``:::``: a question, then ``- [x] right answer :: why`` and ``- [ ] wrong answer :: why not``.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass, field

from courses.content.errors import FileRefused
from courses.content.markup import Numbering, Place, render_block, render_line
from courses.content.parts import (
    Calculator,
    Caution,
    Check,
    Drawing,
    Finder,
    Mistakes,
    Option,
    Part,
    Pictures,
    Text,
    Worked,
)
from courses.content.picture_list import ListedPicture, why_not_together
from courses.content.tables import Table, read_table
from courses.trade.errors import offer

_SHORTCODE = re.compile(r"\{\{\s*(\w+)\s+(\w+)((?:\s+\w+=[^\s}]+)*)\s*\}\}\s*$")
_PICTURES = re.compile(r"\{\{\s*picture((?:\s+\w+)+)\s*\}\}\s*$")
_KINDS: Mapping[str, Callable[[Known], Collection[str]]] = {
    "calculator": lambda known: known.sums,
    "finder": lambda known: known.finders,
    "drawing": lambda known: known.drawings,
}
_EXAMPLES = "{{ calculator dew_margin air_degc=18 }}, {{ finder which_reading }} or {{ picture swirl_navy }}"
_FENCE = re.compile(r":::\s*(\w+)\s*(.*)$")
_OPTION = re.compile(r"- \[(x| )\] (.*)$")
_FENCES = ("caution", "worked", "mistakes", "check")
_TITLED: Mapping[str, tuple[Callable[..., Caution | Worked | Mistakes], str]] = {
    "caution": (Caution, "Caution"),
    "worked": (Worked, "Worked example"),
    "mistakes": (Mistakes, "Mistakes made here"),
}


@dataclass(frozen=True, slots=True)
class Known:
    """What a pack may name: source keys, sums with their inputs, finder codes, pictures by code, drawings."""

    sources: Collection[str]
    sums: Mapping[str, Collection[str]]
    finders: Collection[str] = ()
    pictures: Mapping[str, ListedPicture] = field(default_factory=dict)
    drawings: Collection[str] = ()


@dataclass(frozen=True, slots=True)
class Lesson:
    """A lesson that has been read. ``sources`` are keys in the order of their numbers in the text, from 1."""

    code: str
    version: int
    outcomes: tuple[str, ...]
    parts: tuple[Part, ...]
    sources: tuple[str, ...]

    @property
    def checks(self) -> tuple[Check, ...]:
        """The check questions in order."""
        return tuple(part for part in self.parts if isinstance(part, Check))


@dataclass(frozen=True, slots=True)
class _Stretch:
    """Consecutive lines that make one part: plain text, one shortcode, or what stands in a fence."""

    kind: str
    title: str
    text: str
    line: int


def read_lesson(text: str, file: str, known: Known) -> Lesson:
    """The lesson written in ``text``; raises `FileRefused` at the first thing that is wrong.

    >>> known = Known(sources=["practice"], sums={})
    >>> lesson = read_lesson('''+++
    ... code = "L99"
    ... version = 1
    ... outcomes = ["tell wet from dry"]
    ... +++
    ... Touch it.[^practice]
    ...
    ... :::check
    ... Is it dry?
    ... - [x] Touch it :: That tells you.
    ... - [ ] Guess :: That does not.
    ... :::
    ... ''', "L99.md", known)
    >>> [part.kind for part in lesson.parts], lesson.sources, lesson.checks[0].right.id
    (['text', 'check'], ('practice',), 'a')
    """
    head, body, line = _split(text, file)
    head.only("code", "version", "outcomes")
    numbering = Numbering(known.sources)
    reader = _Reader(file, known, numbering)
    parts = tuple(reader.part(stretch) for stretch in _stretches(body, file, line))
    lesson = Lesson(
        head.text("code"), head.whole("version", 1, 999), head.texts("outcomes"), parts, tuple(numbering.keys)
    )
    if not lesson.checks:
        raise FileRefused(file, line, "check", "this lesson asks nothing; add at least one :::check.")
    if not lesson.sources:
        raise FileRefused(file, line, "sources", "this lesson names no source; mark at least one, such as [^practice].")
    return lesson


def _split(text: str, file: str) -> tuple[Table, list[str], int]:
    """The front matter, the lines of the body, and the line on which the body begins."""
    lines = text.splitlines()
    fences = [n for n, line in enumerate(lines) if line.strip() == "+++"][:2]
    if len(fences) < 2 or fences[0] != 0:
        sentence = "a lesson begins with TOML between two lines of +++: code, version, outcomes."
        raise FileRefused(file, 1, "+++", sentence)
    end = fences[1]
    return read_table("\n".join(lines[1:end]), file, first_line=2), lines[end + 1 :], end + 2


def _stretches(lines: list[str], file: str, first_line: int) -> Iterator[_Stretch]:
    plain: list[str] = []
    at = 0
    while at < len(lines):
        line = lines[at]
        if not line.startswith((":::", "{{")):
            plain.append(line)
            at += 1
            continue
        yield from _plain(plain, first_line + at - len(plain))
        plain = []
        stretch, used = _special(lines, at, file, first_line)
        yield stretch
        at += used
    yield from _plain(plain, first_line + at - len(plain))


def _plain(lines: list[str], first_line: int) -> Iterator[_Stretch]:
    if any(line.strip() for line in lines):
        yield _Stretch("text", "", "\n".join(lines), first_line)


def _special(lines: list[str], at: int, file: str, first_line: int) -> tuple[_Stretch, int]:
    """The shortcode or fence that begins at line ``at`` of ``lines``, and how many lines it takes."""
    line, number = lines[at], first_line + at
    if line.startswith("{{"):
        return _Stretch("shortcode", "", line, number), 1
    opened = _FENCE.match(line)
    if not opened or opened[1] not in _FENCES:
        word = opened[1] if opened else line
        raise FileRefused(file, number, line, f"no block {word!r}; {offer(word, _FENCES)}")
    end = next((n for n in range(at + 1, len(lines)) if lines[n].strip() == ":::"), None)
    if end is None:
        raise FileRefused(file, number, opened[1], "this block is never closed; end it with a line of :::.")
    return _Stretch(opened[1], opened[2].strip(), "\n".join(lines[at + 1 : end]), number + 1), end - at + 1


class _Reader:
    """Turns stretches into parts; keeps the numbering of sources and the count of questions."""

    def __init__(self, file: str, known: Known, numbering: Numbering) -> None:
        self.file = file
        self.known = known
        self.numbering = numbering
        self.asked = 0

    def part(self, stretch: _Stretch) -> Part:
        if stretch.kind == "shortcode":
            return self._shortcode(stretch)
        if stretch.kind == "check":
            return self._question(stretch)
        place = Place(self.file, stretch.line, stretch.kind)
        prose = render_block(stretch.text, place, self.numbering, steps=stretch.kind == "worked")
        if stretch.kind == "text":
            return Text(prose)
        if not prose.pieces:
            raise FileRefused(self.file, stretch.line, stretch.kind, "this block is empty; write what it says.")
        part, title = _TITLED[stretch.kind]
        return part(stretch.title or title, prose)

    def _shortcode(self, stretch: _Stretch) -> Calculator | Finder | Pictures | Drawing:
        if pictures := _PICTURES.match(stretch.text):
            return self._pictures(tuple(pictures[1].split()), stretch.line)
        found = _SHORTCODE.match(stretch.text)
        if not found or found[1] not in _KINDS:
            sentence = f"{stretch.text!r} is not known; write {_EXAMPLES}."
            raise FileRefused(self.file, stretch.line, "{{", sentence)
        kind, name, rest = found.groups()
        self._refuse_unknown(kind, name, _KINDS[kind](self.known), stretch.line)
        given = tuple((key, value) for key, _, value in (pair.partition("=") for pair in rest.split()))
        if kind != "calculator":
            return Finder(name) if kind == "finder" else Drawing(name)
        for key, _ in given:
            self._refuse_unknown("input", key, self.known.sums[name], stretch.line)
        return Calculator(name, given)

    def _pictures(self, codes: tuple[str, ...], line: int) -> Pictures:
        for code in codes:
            self._refuse_unknown("picture", code, self.known.pictures, line)
        if wrong := why_not_together(tuple(self.known.pictures[code] for code in codes)):
            raise FileRefused(self.file, line, "picture", wrong)
        return Pictures(codes)

    def _refuse_unknown(self, kind: str, name: str, names: Collection[str], line: int) -> None:
        if name not in names:
            raise FileRefused(self.file, line, kind, f"no {kind} {name!r}; {offer(name, sorted(names))}")

    def _question(self, stretch: _Stretch) -> Check:
        self.asked += 1
        lines = stretch.text.splitlines()
        first = next((n for n, line in enumerate(lines) if line.startswith("- [")), len(lines))
        question = render_block("\n".join(lines[:first]), Place(self.file, stretch.line, "question"), self.numbering)
        if not question.pieces:
            raise FileRefused(self.file, stretch.line, "check", "this check asks nothing; write the question first.")
        options = tuple(
            self._option(letter, written, line)
            for letter, (written, line) in zip("abcdefghi", _option_lines(lines, first, stretch.line), strict=False)
        )
        if not 2 <= len(options) <= 5:
            raise FileRefused(self.file, stretch.line, "check", f"{len(options)} options stand here; give two to five.")
        right = sum(option.right for option in options)
        if right != 1:
            sentence = f"{right} options are marked [x]; exactly one is right."
            raise FileRefused(self.file, stretch.line, "check", sentence)
        return Check(f"c{self.asked}", question, options)

    def _option(self, letter: str, written: str, line: int) -> Option:
        found = _OPTION.match(written)
        text, _, why = found[2].partition("::") if found else ("", "", "")
        if not found or not text.strip() or not why.strip():
            sentence = f"{written!r} is no option; write '- [x] the answer :: the reason' or '- [ ] …'."
            raise FileRefused(self.file, line, "option", sentence)
        place = Place(self.file, line, "option")
        shown = render_line(text.strip(), place, self.numbering)
        return Option(letter, shown, found[1] == "x", render_line(why.strip(), place, self.numbering))


def _option_lines(lines: list[str], first: int, offset: int) -> Iterator[tuple[str, int]]:
    """Each option with its line; indented lines carry on the one above."""
    gathered: list[str] = []
    begun = offset + first
    for number, line in enumerate(lines[first:], start=offset + first):
        if gathered and (line.startswith("  ") or not line.strip()):
            gathered.append(line.strip())
            continue
        if gathered:
            yield " ".join(gathered).strip(), begun
        gathered, begun = [line], number
    if gathered:
        yield " ".join(gathered).strip(), begun
