"""Markdown to cleaned HTML: raw HTML off, then an allow-list; quantities, source marks and equations of our own.

Written in a lesson: ``{3.0 K}`` a quantity · ``[^practice]`` a source · ``$18 - 2 = 16$`` an equation on its own line.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, field

import nh3
from markdown_it import MarkdownIt
from markdown_it.rules_inline import StateInline
from markdown_it.token import Token

from courses.content.errors import FileRefused
from courses.content.prose import Prose, Quantity
from courses.trade.errors import offer

TAGS = {"p", "br", "h2", "h3", "ul", "ol", "li", "em", "strong", "code", "pre", "blockquote", "hr", "a", "sup", "span"}
TABLE_TAGS = {"table", "thead", "tbody", "tr", "th", "td"}
CLASSES = {
    "ol": {"steps"},
    "span": {"eq"},
    "table": {"table"},
    "th": {"n", "mid"},
    "td": {"n", "mid"},
    "div": {"scroll"},
}
ATTRIBUTES = {"a": {"href", "title", "aria-label"}, "ol": {"start"}, "data": {"value"}, "div": {"tabindex"}}
SCHEMES = {"https", "http", "mailto"}

# fmt: off
BASE_UNITS = (
    "degc", "K", "rh", "um", "mm", "m", "m2", "m3", "ml", "l", "g", "kg", "min", "h", "rpm", "n", "mps", "ppm", "mgm3",
    "db", "mps2", "hpa", "gkg",
)
# fmt: on

_QUANTITY = re.compile(r"\{\s*([-−]?\d+(?:\.(\d+))?)\s+([A-Za-z0-9_]+)\s*\}")
_SOURCE = re.compile(r"\[\^([a-z0-9_-]+)\]")
_PLACE = re.compile(r'<data value="(\d+)">\d+</data>')
_LINK = re.compile(r"(https?://|mailto:|#|/(?!/))[^\s\\]*$", re.IGNORECASE)
_ALIGN = {"text-align:right": "n", "text-align:center": "mid"}
_PLAIN_UNIT = re.compile(r"\d\s*(°\s?[CF]|K)(?!\w)")
_GLUE = (
    (re.compile(r"(?<=\d) (?=(%|g/kg|gr/lb|hPa|h|min|s|m²|m|mm|µm|mil|ml|l|kg|g)(?!\w))"), "\u00a0"),
    (re.compile(r"\b([Ss]teps?|[Pp]anels?|[Ll]essons?|[Ll]imits?) (?=\d)"), "\\1\u00a0"),
    (
        re.compile(r"\b(January|February|March|April|May|June|July|August|September|October|November|December) (?=\d)"),
        "\\1\u00a0",
    ),
)
_REFUSED = {
    "image": "pictures do not stand in the text, since a page needs nothing from another host; leave it out.",
    "h1": "the title of a lesson stands in the catalogue; begin headings with ##.",
}


@dataclass(slots=True)
class Numbering:
    """The sources of one lesson, numbered in the order in which the text first names them."""

    known: Collection[str]
    keys: list[str] = field(default_factory=list)

    def number(self, key: str) -> int:
        """The number of ``key``, from 1; a key named for the first time takes the next one."""
        if key not in self.keys:
            self.keys.append(key)
        return self.keys.index(key) + 1


@dataclass(frozen=True, slots=True)
class Place:
    """Where a stretch of text begins: its file, its first line and the key named in a refusal."""

    file: str
    line: int
    key: str = "text"


def render_block(text: str, place: Place, numbering: Numbering, steps: bool = False) -> Prose:
    """Paragraphs, lists and tables of Markdown as safe HTML; refused at their line if not allowed.

    With ``steps`` a numbered list is laid out as the steps of a worked example.
    """
    tokens = _MARKDOWN.parse(text)
    for token in tokens:
        if steps and token.type == "ordered_list_open":
            token.attrSet("class", "steps")
    return _render(tokens, place, numbering)


def render_line(text: str, place: Place, numbering: Numbering) -> Prose:
    """One line of Markdown without a paragraph round it."""
    return _render(_MARKDOWN.parseInline(text), place, numbering)


def _render(tokens: Sequence[Token], place: Place, numbering: Numbering) -> Prose:
    quantities: list[Quantity] = []
    for token, line in _with_lines(tokens, place.line):
        _check(token, Place(place.file, line, place.key), numbering)
        if token.type == "quantity":
            token.meta = {"index": len(quantities)}
            quantities.append(_quantity(token.content))
        elif token.type == "source_mark":
            token.meta = {"number": numbering.number(token.content)}
        elif token.type == "text":
            token.content = _glued(token.content)
        _class_for(token)
    html = nh3.clean(
        _MARKDOWN.renderer.render(list(tokens), _MARKDOWN.options, {}),
        tags=TAGS | TABLE_TAGS | {"data", "div"},
        attributes=ATTRIBUTES,
        allowed_classes=CLASSES,
        url_schemes=SCHEMES,
        link_rel=None,
    )
    parts = _PLACE.split(html.strip())
    pieces = (quantities[int(part)] if n % 2 else part for n, part in enumerate(parts))
    return Prose(tuple(piece for piece in pieces if piece != ""))


def _with_lines(tokens: Sequence[Token], first_line: int) -> Iterator[tuple[Token, int]]:
    """Every token, children too, with the line of the file on which it stands."""
    for token in tokens:
        line = first_line + (token.map[0] if token.map else 0)
        yield token, line
        for child in token.children or ():
            yield child, line
            line += child.type in ("softbreak", "hardbreak")


def _check(token: Token, place: Place, numbering: Numbering) -> None:
    if refusal := _REFUSED.get(token.type) or _REFUSED.get(token.tag):
        raise FileRefused(place.file, place.line, place.key, refusal)
    if token.type == "source_mark" and token.content not in numbering.known:
        sentence = f"no source {token.content!r}; {offer(token.content, sorted(numbering.known))}"
        raise FileRefused(place.file, place.line, place.key, sentence)
    if token.type == "quantity":
        _check_quantity(token.content, place)
    if token.type == "text" and (plain := _PLAIN_UNIT.search(token.content)):
        sentence = (
            f"{plain[0]!r} would not follow the reader's units; write it as {{20 degc}} or, a difference, {{3.0 K}}."
        )
        raise FileRefused(place.file, place.line, place.key, sentence)
    if token.type == "link_open" and not _LINK.match(str(token.attrGet("href"))):
        sentence = f"{token.attrGet('href')!r} is not a link to https, mailto or a page of this site (/…)."
        raise FileRefused(place.file, place.line, place.key, sentence)


def _check_quantity(written: str, place: Place) -> None:
    found = _QUANTITY.fullmatch(written)
    if not found:
        sentence = f"{written!r} is not a quantity; write a number and a unit, such as {{3.0 K}}."
        raise FileRefused(place.file, place.line, place.key, sentence)
    if found[3] not in BASE_UNITS:
        sentence = f"{written!r} names no base unit; {offer(found[3], BASE_UNITS)}"
        raise FileRefused(place.file, place.line, place.key, sentence)


def _quantity(written: str) -> Quantity:
    found = _QUANTITY.fullmatch(written)
    assert found is not None
    return Quantity(float(found[1].replace("−", "-")), found[3], len(found[2] or ""))


def _glued(text: str) -> str:
    for pattern, glue in _GLUE:
        text = pattern.sub(glue, text)
    return text


def _class_for(token: Token) -> None:
    """Alignment as a class, since an inline style would be dropped; a table gets the site's class."""
    if token.type == "table_open":
        token.attrSet("class", "table")
    style = token.attrs.pop("style", None)
    if style in _ALIGN:
        token.attrSet("class", _ALIGN[str(style)])


def _read_quantity(state: StateInline, silent: bool) -> bool:
    """``{3.0 K}``; whatever else stands in braces is kept as written and refused afterwards."""
    if state.src[state.pos] != "{":
        return False
    end = state.src.find("}", state.pos, state.posMax)
    if end < 0:
        return False
    if not silent:
        state.push("quantity", "data", 0).content = state.src[state.pos : end + 1]
    state.pos = end + 1
    return True


def _read_source(state: StateInline, silent: bool) -> bool:
    """``[^key]``, the mark of a source."""
    found = _SOURCE.match(state.src, state.pos, state.posMax)
    if not found:
        return False
    if not silent:
        state.push("source_mark", "sup", 0).content = found[1]
    state.pos = found.end()
    return True


def _read_equation(state: StateInline, silent: bool) -> bool:
    """``$…$``, an equation that gets a line of its own; quantities inside are read as everywhere."""
    if state.src[state.pos] != "$":
        return False
    end = state.src.find("$", state.pos + 1, state.posMax)
    if end <= state.pos + 1:
        return False
    if not silent:
        start, last = state.pos, state.posMax
        state.push("equation_open", "span", 1).attrSet("class", "eq")
        state.pos, state.posMax = start + 1, end
        state.md.inline.tokenize(state)
        state.push("equation_close", "span", -1)
        state.posMax = last
    state.pos = end + 1
    return True


def _quantity_html(self: object, tokens: Sequence[Token], at: int, options: object, env: object) -> str:
    index = tokens[at].meta["index"]
    return f'<data value="{index}">{index}</data>'


def _source_html(self: object, tokens: Sequence[Token], at: int, options: object, env: object) -> str:
    number = tokens[at].meta["number"]
    gap = "\u00a0" if at and tokens[at - 1].type == "source_mark" else ""
    return f'{gap}<sup><a href="#s{number}" aria-label="Source {number}">{number}</a></sup>'


def _markdown() -> MarkdownIt:
    md = MarkdownIt("commonmark", {"html": False}).enable("table")
    for name, rule in (("quantity", _read_quantity), ("source_mark", _read_source), ("equation", _read_equation)):
        md.inline.ruler.before("link", name, rule)
    md.add_render_rule("quantity", _quantity_html)
    md.add_render_rule("source_mark", _source_html)
    return md


_MARKDOWN = _markdown()
