"""Reads rule books from TOML text, and refuses them with file, line and key."""

from __future__ import annotations

import re
from collections.abc import Container, Mapping
from dataclasses import dataclass
from typing import Any

from assessments.rules.books.page import BookRefused, Page
from assessments.rules.faults import listed, nearest, offered
from assessments.rules.rule import SEVERITIES, Places, Rule, RuleBook, SharedBook, SharedRule, Step

MAX_RULES = 120
MAX_POINTS = 100
_OWN = ("code", "sentence", "test", "when", "steps", "share", "severity", "points", "because", "lesson", "source")
_REFERRING = ("shared", "when", "severity", "points", "because", "lesson", "source")
_SHARED = ("code", "sentence", "test", "when", "because", "lesson", "source")
_BOOK = ("code", "version", "scenario_version", "lesson", "rule", "exemplars")
_CODE = re.compile(r"[A-Z]{3}-\d{2}")
_SHARED_CODE = re.compile(r"R\d{2}")
_LESSON = re.compile(r"L\d{2}")


def read_shared(text: str, file: str = "shared.toml", sources: Container[str] | None = None) -> SharedBook:
    """Return the book of shared rules. Raises BookRefused.

    `sources` holds the known source keys; None leaves them unchecked.
    """
    page = _Page.of(text, file)
    page.only("", page.table, ("rule",))
    found: dict[str, SharedRule] = {}
    for row in page.rows(sources):
        row.only(_SHARED)
        code = row.code(_SHARED_CODE, "R21")
        if code in found:
            raise row.refusal("code", f"{code} stands here a second time; codes are never used twice.")
        lesson, when = row.maybe("lesson"), row.maybe("when")
        found[code] = SharedRule(
            code,
            row.text("sentence"),
            row.text("test"),
            row.text("because"),
            row.source(None),
            lesson,
            when,
            row.places,
        )
    return SharedBook(found)


def read_book(text: str, file: str, shared: SharedBook, sources: Container[str] | None = None) -> RuleBook:
    """Return the rule book of a scenario, its shared rules filled in. Raises BookRefused.

    `scenario_version` stands where the book's version isn't that of the scenario it marks. `exemplars` are left to
    whoever knows the scenario's tasks.

    >>> try: read_book('code = "COA-01"\\nversion = 0', "coa-01.toml", SharedBook({}))
    ... except BookRefused as refused: print(refused)
    coa-01.toml, line 2, version: The version is 0; it is a whole number from 1.
    """
    page = _Page.of(text, file)
    page.only("", page.table, _BOOK)
    code, version = page.book_code(), page.version()
    rules: list[Rule] = []
    for row in page.rows(sources):
        rule = _referring(row, shared) if "shared" in row.table else _own(row, code)
        if any(rule.code == other.code for other in rules):
            raise row.refusal("code", f"{rule.code} stands here a second time; codes are never used twice.")
        rules.append(rule)
    return RuleBook(code, version, tuple(rules), file, page.scenario_version())


@dataclass(frozen=True, slots=True)
class _Page(Page):
    """The page of a rule book, or of the shared rules."""

    def book_code(self) -> str:
        code = self.table.get("code")
        if not isinstance(code, str) or not _CODE.fullmatch(code):
            raise self.refusal("", "code", f"The code of the book is {code!r:.40}; it has to look like COA-01.")
        return code

    def version(self) -> int:
        return self.whole("version", "version")

    def scenario_version(self) -> int | None:
        key = "scenario_version"
        return self.whole(key, "version of the scenario") if key in self.table else None

    def whole(self, key: str, what: str) -> int:
        number = self.table.get(key)
        if isinstance(number, bool) or not isinstance(number, int) or number < 1:
            raise self.refusal("", key, f"The {what} is {number!r:.40}; it is a whole number from 1.")
        return number

    def rows(self, sources: Container[str] | None) -> list[_Row]:
        rows = self.table.get("rule", [])
        if not isinstance(rows, list) or not rows or not all(isinstance(row, dict) for row in rows):
            raise self.refusal("", "rule", "The book has no rules; each is a table [[rule]].")
        if len(rows) > MAX_RULES:
            raise self.refusal(f"rule[{MAX_RULES}]", "rule", f"The book has more than {MAX_RULES} rules.")
        lesson = self.table.get("lesson")
        if lesson is not None and not (isinstance(lesson, str) and _LESSON.fullmatch(lesson)):
            raise self.refusal("", "lesson", f"The lesson is {lesson!r:.40}; it has to look like L24.")
        return [_Row(self, f"rule[{place}]", row, lesson, sources) for place, row in enumerate(rows)]


@dataclass(frozen=True, slots=True)
class _Row:
    """One [[rule]] of a page."""

    page: _Page
    where: str
    table: Mapping[str, Any]
    lesson: str | None
    sources: Container[str] | None

    def refusal(self, key: str, sentence: str) -> BookRefused:
        return self.page.refusal(self.where, key, sentence)

    def only(self, keys: tuple[str, ...]) -> None:
        self.page.only(self.where, self.table, keys)

    @property
    def places(self) -> Places:
        keys = (*self.table, "", "test", "when", "steps", "share")
        return {key: (self.page.file, self.page.lines.line(self.where, key)) for key in keys}

    def text(self, key: str) -> str:
        value = self.table.get(key)
        if not isinstance(value, str) or not value.strip():
            raise self.refusal(key, f"The rule needs '{key}', a text that is not empty.")
        return value.strip()

    def maybe(self, key: str) -> str | None:
        if key == "lesson":
            return self._lesson()
        return self.text(key) if key in self.table else None

    def _lesson(self) -> str | None:
        lesson = self.text("lesson") if "lesson" in self.table else self.lesson
        if lesson is not None and not _LESSON.fullmatch(lesson):
            raise self.refusal("lesson", f"The lesson is {lesson!r:.40}; it has to look like L24.")
        return lesson

    def code(self, shape: re.Pattern[str], like: str) -> str:
        code = self.text("code")
        if not shape.fullmatch(code):
            raise self.refusal("code", f"The code is {code!r:.40}; it has to look like {like}.")
        return code

    def source(self, default: str | None) -> str:
        source = self.text("source") if "source" in self.table or default is None else default
        if self.sources is not None and source not in self.sources:
            known = self.sources if isinstance(self.sources, Mapping | set | frozenset | list | tuple) else ()
            near = nearest(source, [str(each) for each in known])
            raise self.refusal("source", offered(f"No source '{source}' is known", near))
        return source

    def severity(self) -> str:
        severity = self.text("severity")
        if severity not in SEVERITIES:
            said = f"'{severity}' is no severity; there are {listed(SEVERITIES)}"
            raise self.refusal("severity", offered(said, nearest(severity, SEVERITIES)))
        return severity

    def points(self) -> float:
        return self.number("points", self.table.get("points"))

    def number(self, key: str, points: object) -> float:
        if isinstance(points, bool) or not isinstance(points, int | float) or not 0 < points <= MAX_POINTS:
            raise self.refusal(key, f"{points!r:.40} are no points; they are a number above 0, at most {MAX_POINTS}.")
        return points

    def steps(self) -> tuple[Step, ...]:
        steps = self.table["steps"]
        if not isinstance(steps, list) or not steps:
            raise self.refusal("steps", 'Steps are a list of pairs, such as [["answer.ok", 2], ["answer.sure", 1]].')
        return tuple(self._step(step) for step in steps)

    def _step(self, step: object) -> Step:
        if not isinstance(step, list) or len(step) != 2 or not isinstance(step[0], str):
            raise self.refusal("steps", f"A step is a pair of test and points, not {step!r:.40}.")
        return Step(step[0], self.number("steps", step[1]))


def _referring(row: _Row, shared: SharedBook) -> Rule:
    """Return a shared rule with the points and severity of this book, and its own reason where one is given."""
    row.only(_REFERRING)
    code = row.text("shared")
    found = shared.rules.get(code)
    if found is None:
        raise row.refusal("shared", offered(f"There is no shared rule '{code}'", nearest(code, shared.rules)))
    return Rule(
        code,
        found.sentence,
        row.severity(),
        row.points(),
        row.maybe("because") or found.because,
        row.source(found.source),
        row.text("lesson") if "lesson" in row.table else found.lesson or row.lesson,
        test=found.test,
        when=row.maybe("when") or found.when,
        places={**found.places, **{key: place for key, place in row.places.items() if key in row.table}},
    )


def _own(row: _Row, book: str) -> Rule:
    """Return a rule of the scenario's own."""
    row.only(_OWN)
    code = row.code(re.compile(rf"{book}\.\d{{1,3}}"), f"{book}.1")
    ways = [key for key in ("test", "steps", "share") if key in row.table]
    if len(ways) != 1:
        said = f"it has {listed(ways)}" if ways else "it has none"
        raise row.refusal(ways[-1] if ways else "test", f"A rule has one of test, steps and share; {said}.")
    severity = row.severity()
    if severity == "critical" and ways != ["test"]:
        raise row.refusal(ways[0], "A critical rule is met or not met; points in part belong to the other severities.")
    steps = row.steps() if ways == ["steps"] else ()
    if steps and "points" in row.table:
        raise row.refusal("points", "The points of a rule with steps are those of its steps; leave 'points' out.")
    return Rule(
        code,
        row.text("sentence"),
        severity,
        sum(step.points for step in steps) if steps else row.points(),
        row.text("because"),
        row.source(None),
        row.maybe("lesson"),
        test=row.maybe("test"),
        when=row.maybe("when"),
        steps=steps,
        share=row.maybe("share"),
        places=row.places,
    )
