"""A rule book checked against the schema of its scenario and made ready to judge many cases."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from assessments.rules.books.page import BookRefused
from assessments.rules.checking.backing import Ask
from assessments.rules.checking.checker import Checked, check
from assessments.rules.compiler import Compiled, compile_book
from assessments.rules.faults import Fault
from assessments.rules.functions import Function
from assessments.rules.kinds import Schema
from assessments.rules.nodes import Call, Path
from assessments.rules.rule import Part, Places, Rule, RuleBook

MAX_BOOK_COST = 300_000
Rests = Mapping[str, Sequence[str]]


@dataclass(frozen=True, slots=True)
class RuleFault:
    """A fault or warning with the rule and the part (`test`, `when`, `steps[0]`, `share`) it stands in."""

    code: str
    part: str
    fault: Fault


@dataclass(frozen=True, slots=True)
class ReadyPart:
    """One expression of a rule, checked, and the code of its book with its place there."""

    part: Part
    checked: Checked
    compiled: Compiled
    place: int

    @property
    def alone(self) -> Compiled:
        """The code of this part by itself."""
        return self.compiled.alone[self.place]

    @property
    def asks_answered(self) -> bool:
        """Whether it asks if something was answered, so that a False may only mean silence."""
        return any(isinstance(node, Call) and node.name == "answered" for node in self.checked.nodes)


@dataclass(frozen=True, slots=True)
class ReadyRule:
    """A rule with its parts ready, by name, and every path that one of them reads."""

    rule: Rule
    parts: Mapping[str, ReadyPart]
    reads: frozenset[Path]

    @classmethod
    def of(cls, rule: Rule, checks: Iterable[tuple[Part, Checked]], compiled: Compiled, first: int) -> ReadyRule:
        """Return the rule ready to run, its parts from the place `first` on in the code of its book."""
        parts = {
            part.name: ReadyPart(part, checked, compiled, place)
            for place, (part, checked) in enumerate(checks, start=first)
        }
        reads = frozenset[Path]().union(*(part.checked.reads for part in parts.values()))
        return cls(rule, parts, reads)


@dataclass(frozen=True, slots=True)
class PreparedBook:
    """A rule book ready to judge: its rules, the schema cases are bound to, what the model rests on, its code
    and its digest."""

    book: RuleBook
    schema: Schema
    rules: tuple[ReadyRule, ...]
    rests: Mapping[Path, tuple[Path, ...]]
    warnings: tuple[RuleFault, ...]
    compiled: Compiled
    digest: str

    def rule(self, code: str) -> ReadyRule:
        """Return one rule by its code; KeyError when there is none."""
        for ready in self.rules:
            if ready.rule.code == code:
                return ready
        raise KeyError(code)


def check_book(
    book: RuleBook, schema: Schema, functions: Iterable[Function] = (), rests: Rests | None = None
) -> tuple[RuleFault, ...]:
    """Return every fault of every rule of a book, empty when it may be used."""
    resting = _loosened(schema, _paths(rests or {}))
    return _faults(book, _checked(book, resting, tuple(functions)))


def prepare(
    book: RuleBook, schema: Schema, functions: Iterable[Function] = (), rests: Rests | None = None
) -> PreparedBook:
    """Return the book ready to judge. Raises BookRefused, with the line, for the first fault.

    `rests` says from which answers a computed path was worked, as in `{"model": ("answer.plan",)}`: while one of them
    is unanswered the path is unknown.
    """
    paths, lent = _paths(rests or {}), tuple(functions)
    resting = _loosened(schema, paths)
    checks = _checked(book, resting, lent)
    for found in _faults(book, checks):
        raise refusal(book, found)
    compiled = compile_book([checked for _, parts in checks for _, checked in parts], resting, lent)
    return PreparedBook(book, resting, tuple(_ready(checks, compiled)), paths, _warnings(checks), compiled, book.digest)


def _ready(checks: Checks, compiled: Compiled) -> Iterator[ReadyRule]:
    first = 0
    for rule, parts in checks:
        yield ReadyRule.of(rule, parts, compiled, first)
        first += len(parts)


Checks = list[tuple[Rule, list[tuple[Part, Checked]]]]


def _checked(book: RuleBook, schema: Schema, functions: tuple[Function, ...]) -> Checks:
    return [
        (rule, [(part, check(part.text, schema, functions, part.wants)) for part in rule.parts]) for rule in book.rules
    ]


def _paths(rests: Rests) -> dict[Path, tuple[Path, ...]]:
    return {tuple(path.split(".")): tuple(tuple(each.split(".")) for each in on) for path, on in rests.items()}


def _loosened(schema: Schema, paths: Iterable[Path]) -> Schema:
    for path in paths:
        schema = schema.with_missing(path)
    return schema


def _faults(book: RuleBook, checks: Checks) -> tuple[RuleFault, ...]:
    found = [
        RuleFault(rule.code, part.name, fault)
        for rule, parts in checks
        for part, checked in parts
        for fault in (*checked.errors, *_words_weigh_little(rule, checked))
    ]
    cost = sum(checked.cost for _, parts in checks for _, checked in parts)
    if cost > MAX_BOOK_COST:
        said = (
            f"The book can cost {cost} steps on full lists, {MAX_BOOK_COST} are allowed; walk fewer or shorter lists."
        )
        found.append(RuleFault(book.code, "rule", Fault(said)))
    return tuple(found)


def _words_weigh_little(rule: Rule, checked: Checked) -> list[Fault]:
    """Text is read by people: a rule that looks for words gives points only."""
    said = f"A rule that looks for words gives points only; this one is {rule.severity}."
    return [
        Fault(said, node.start, node.end)
        for node in checked.nodes
        if isinstance(node, Call) and node.name == "mentions" and rule.severity != "points"
    ]


def _warnings(checks: Checks) -> tuple[RuleFault, ...]:
    """Return the warnings of all rules, without what another part of the rule, or another rule, settles.

    A guard takes nothing for granted and asks for nothing: where it is false its rule doesn't apply.
    """
    asked = [checked.backs for _, parts in checks for part, checked in parts if part.name != "when"]
    found: list[RuleFault] = []
    for rule, parts in checks:
        settling = frozenset[Ask]().union(*asked, *(checked.speaks_of for _, checked in parts))
        for part, checked in parts:
            left = [each for each in checked.claims if part.name != "when" and not each.settled(settling)]
            said = {(each.start, each.warning) for each in checked.claims} - {
                (each.start, each.warning) for each in left
            }
            still = (each for each in checked.warnings if (each.start, each.message) not in said)
            found += (RuleFault(rule.code, part.name, warning) for warning in still)
    return tuple(found)


def refusal(book: RuleBook, found: RuleFault) -> BookRefused:
    """Return the refusal of a book for one of its faults, at the line of the part it stands in."""
    places: Places = next((rule.places for rule in book.rules if rule.code == found.code), {})
    key = found.part.partition("[")[0]
    file, line = places.get(key, (book.file, 1))
    at = f" (character {found.fault.start + 1})" if found.fault.start is not None else ""
    return BookRefused(file, line, key, f"{found.code}{at}: {found.fault.message}")
