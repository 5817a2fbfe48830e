"""Finders: tables that are looked up. A few choices in, exactly one row out.

A finder file has ``code``, ``title``, ``about``, then ``[[choice]]`` (``name``, ``title``, ``options`` of ``id`` and
``text``), ``[[result]]`` (``name``, ``title``) and ``[[row]]`` with ``when``, ``then``, ``source``, ``mark`` and, where
there is one, ``caution``. A ``when`` names an option, a list of options, or ``"any"``.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from itertools import product

from courses.content.markup import Numbering, Place, render_line
from courses.content.prose import Prose
from courses.content.tables import Table, read_table
from courses.trade.sources import MARKS


@dataclass(frozen=True, slots=True)
class Choice:
    """One thing to choose: ``name``, the ``title`` on screen, and its options as (id, text) in order."""

    name: str
    title: str
    options: tuple[tuple[str, str], ...]

    @property
    def ids(self) -> tuple[str, ...]:
        """The ids of the options in order."""
        return tuple(option for option, _ in self.options)


@dataclass(frozen=True, slots=True)
class Column:
    """One thing the finder answers: ``name`` and the ``title`` on screen."""

    name: str
    title: str


@dataclass(frozen=True, slots=True)
class Row:
    """What stands for one or more combinations; ``results`` in the order of the table's columns.

    ``mark`` is one of `courses.trade.sources.MARKS`, which also has its words.
    """

    when: tuple[tuple[str, tuple[str, ...]], ...]
    results: tuple[Prose, ...]
    source: str
    mark: str
    caution: Prose | None

    def holds(self, chosen: Mapping[str, str]) -> bool:
        """Whether this row stands for the options ``chosen``."""
        return all(chosen.get(name) in options for name, options in self.when)


@dataclass(frozen=True, slots=True)
class FinderTable:
    """A finder that has been read: every combination of options has exactly one row."""

    code: str
    title: str
    about: Prose
    choices: tuple[Choice, ...]
    columns: tuple[Column, ...]
    rows: tuple[Row, ...]

    @property
    def sources(self) -> tuple[str, ...]:
        """The keys of the sources in the order of the rows, each once."""
        return tuple(dict.fromkeys(row.source for row in self.rows))


def find(table: FinderTable, chosen: Mapping[str, str]) -> Row | None:
    """The one row for ``chosen`` (choice name to option id), or nothing while one is left open or unknown."""
    if any(chosen.get(choice.name) not in choice.ids for choice in table.choices):
        return None
    return next(row for row in table.rows if row.holds(chosen))


def read_finder(text: str, file: str, sources: Collection[str]) -> FinderTable:
    """The finder written in ``text``; raises `FileRefused` on a hole, a doubled row, or a source not in ``sources``."""
    top = read_table(text, file).only("code", "title", "about", "choice", "result", "row")
    choices = tuple(_choice(entry) for entry in top.some("choice"))
    columns = tuple(_column(entry) for entry in top.some("result"))
    if not 1 <= len(choices) <= 5:
        raise top.refuse("choice", f"{len(choices)} choices stand here; a finder has one to five.")
    entries = top.some("row")
    rows = tuple(_row(entry, choices, columns, sources) for entry in entries)
    _refuse_holes(top, choices, rows, entries)
    about = render_line(top.text("about"), Place(file, top.line_of("about"), "about"), Numbering(()))
    return FinderTable(top.text("code"), top.text("title"), about, choices, columns, rows)


def _choice(entry: Table) -> Choice:
    entry.only("name", "title", "options")
    options = [option.only("id", "text") for option in entry.some("options")]
    choice = Choice(
        entry.text("name"), entry.text("title"), tuple((option.text("id"), option.text("text")) for option in options)
    )
    if len(choice.ids) < 2 or len(set(choice.ids)) < len(choice.ids) or "any" in choice.ids:
        raise entry.refuse("options", "give two or more options, each with an id of its own, none called any.")
    return choice


def _column(entry: Table) -> Column:
    entry.only("name", "title")
    return Column(entry.text("name"), entry.text("title"))


def _row(entry: Table, choices: tuple[Choice, ...], columns: tuple[Column, ...], sources: Collection[str]) -> Row:
    entry.only("when", "then", "source", "mark", "caution")
    when = entry.table("when").only(*(choice.name for choice in choices))
    then = entry.table("then").only(*(column.name for column in columns))
    return Row(
        when=tuple((choice.name, _chosen(when, choice)) for choice in choices),
        results=tuple(_said(then, column.name) for column in columns),
        source=entry.one_of("source", sources),
        mark=entry.one_of("mark", MARKS),
        caution=_said(entry, "caution") if entry.has("caution") else None,
    )


def _chosen(when: Table, choice: Choice) -> tuple[str, ...]:
    written = when.values.get(choice.name)
    if written == "any":
        return choice.ids
    if isinstance(written, list):
        return when.some_of(choice.name, choice.ids)
    return (when.one_of(choice.name, (*choice.ids, "any")),)


def _said(table: Table, key: str) -> Prose:
    return render_line(table.text(key), Place(table.file, table.line_of(key), key), Numbering(()))


def _combinations(choices: tuple[Choice, ...]) -> Iterator[dict[str, str]]:
    names = [choice.name for choice in choices]
    for options in product(*(choice.ids for choice in choices)):
        yield dict(zip(names, options, strict=True))


def _refuse_holes(top: Table, choices: tuple[Choice, ...], rows: tuple[Row, ...], entries: tuple[Table, ...]) -> None:
    for chosen in _combinations(choices):
        named = ", ".join(f"{name} {option}" for name, option in chosen.items())
        holding = [entry for row, entry in zip(rows, entries, strict=True) if row.holds(chosen)]
        if not holding:
            raise top.refuse("row", f"no row for {named}; every combination has exactly one.")
        if len(holding) > 1:
            lines = " and ".join(str(entry.line) for entry in holding)
            raise holding[1].refuse("when", f"{named} has rows on lines {lines}; every combination has exactly one.")
