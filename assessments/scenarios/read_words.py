"""Sentences of a scenario file, and the names their slots may ask for."""

from collections.abc import Collection
from types import MappingProxyType

from assessments.scenarios.story import slots
from assessments.scenarios.wording import Paragraph, Sentence
from courses.content.tables import Table
from courses.trade.errors import offer


def read_paragraph(table: Table, known: Collection[str]) -> Paragraph:
    """Return the sentences of one paragraph, told with the values that are ``known``."""
    return tuple(read_sentence(one, known) for one in table.only("sentence").some("sentence"))


def read_sentence(table: Table, known: Collection[str]) -> Sentence:
    """Return one sentence with the conditions it is told under; raise FileRefused for a value that isn't ``known``."""
    where = table.only_fields_of(Sentence).table("where").only(*known)
    return Sentence(
        text=read_words(table, "text", known),
        given=table.one_of("given", known, ""),
        missing=table.one_of("missing", known, ""),
        where=MappingProxyType({name: where.texts(name) for name in where.values}),
        asked=table.texts("asked", ()),
        not_asked=table.texts("not_asked", ()),
    )


def read_words(table: Table, key: str, known: Collection[str] = (), default: str | None = None) -> str:
    """Return a text whose slots are fixed quantities or values that are ``known``; raise FileRefused for another."""
    words = table.text(key, default)
    for name in slots(words):
        if name not in known:
            near = offer(name, known) if known else "only a fixed quantity such as {4.2 K} can stand here."
            raise table.refuse(key, f"no value is called {name!r}; {near}")
    return words
