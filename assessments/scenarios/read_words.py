"""Sentences of a scenario file, and the names their slots may ask for."""

from types import MappingProxyType

from assessments.scenarios.located import Path, Table
from assessments.scenarios.spec import Paragraph, Sentence
from assessments.scenarios.story import slots
from courses.trade.errors import offer


def read_paragraph(table: Table) -> Paragraph:
    """Return the sentences of one paragraph."""
    sentences = tuple(read_sentence(one) for one in table.some("sentence"))
    table.finish()
    return sentences


def read_sentence(table: Table) -> Sentence:
    """Return one sentence with the conditions it is told under."""
    where = table.table("where")
    sentence = Sentence(
        text=table.text("text"),
        given=table.text("given", ""),
        missing=table.text("missing", ""),
        where=MappingProxyType({name: where.texts(name) for name in where.names()}),
    )
    table.finish()
    return sentence


def refuse_unknown_slots(sentences: Paragraph, known: set[str], whole: Table, path: Path) -> None:
    """Refuse a slot or a condition that names no known value; a slot may also be a fixed quantity."""
    for n, sentence in enumerate(sentences):
        named = (*slots(sentence.text), sentence.given, sentence.missing, *sentence.where)
        lost = next((name for name in named if name and name not in known), "")
        if lost:
            near = offer(lost, known) if known else "only a fixed quantity such as {4.2 K} can stand here."
            raise whole.source.refusal((*path, n, "text"), f"no value is called '{lost}'; {near}")
