"""One rule, one shared rule, one rule book: frozen, and the same digest whenever they say the same."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any

ENGINE_VERSION = 1
SEVERITIES = ("critical", "needed", "points")
Places = Mapping[str, tuple[str, int]]
"""Where the keys of a rule stand: file and line."""

_NOWHERE: Places = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Step:
    """One test of a rule that gives points by steps."""

    test: str
    points: float


@dataclass(frozen=True, slots=True)
class Part:
    """One expression of a rule: its name in the book, its text, and what it has to give (`bool` or `num`)."""

    name: str
    text: str
    wants: str


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule as it is judged. Exactly one of `test`, `steps` and `share` says how its points are earned.

    `when` guards it; `places` says where its keys stand, for refusals, and is no part of what it says.
    """

    code: str
    sentence: str
    severity: str
    points: float
    because: str
    source: str
    lesson: str | None = None
    test: str | None = None
    when: str | None = None
    steps: tuple[Step, ...] = ()
    share: str | None = None
    places: Places = field(default_factory=lambda: _NOWHERE, compare=False, repr=False)

    @property
    def parts(self) -> tuple[Part, ...]:
        """The expressions of the rule, the guard first.

        >>> Rule("R41", "…", "critical", 5, "…", "practice", test="a", when="b").parts[0].name
        'when'
        """
        return tuple(self._parts())

    def _parts(self) -> Iterator[Part]:
        for name, text in (("when", self.when), ("test", self.test)):
            if text is not None:
                yield Part(name, text, "bool")
        for place, step in enumerate(self.steps):
            yield Part(f"steps[{place}]", step.test, "bool")
        if self.share is not None:
            yield Part("share", self.share, "num")

    def as_json(self) -> dict[str, Any]:
        """Return everything the rule says, as it is digested."""
        return {
            "code": self.code,
            "sentence": self.sentence,
            "severity": self.severity,
            "points": self.points,
            "because": self.because,
            "source": self.source,
            "lesson": self.lesson,
            "test": self.test,
            "when": self.when,
            "steps": [[step.test, step.points] for step in self.steps],
            "share": self.share,
        }


@dataclass(frozen=True, slots=True)
class SharedRule:
    """A rule that books refer to by code and weigh themselves."""

    code: str
    sentence: str
    test: str
    because: str
    source: str
    lesson: str | None = None
    when: str | None = None
    places: Places = field(default_factory=lambda: _NOWHERE, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class SharedBook:
    """The shared rules by code."""

    rules: Mapping[str, SharedRule]


@dataclass(frozen=True, slots=True)
class RuleBook:
    """One version of the rules of a scenario version. Published, it never changes; its digest proves that."""

    code: str
    version: int
    rules: tuple[Rule, ...]
    file: str = field(default="", compare=False)
    scenario_version: int | None = None

    @property
    def marks(self) -> str:
        """The scenario version this book marks, as code and version: its own number unless it says another.

        >>> RuleBook("COA-01", 2, (), scenario_version=1).marks
        'COA-01@1'
        """
        return f"{self.code}@{self.scenario_version or self.version}"

    @property
    def digest(self) -> str:
        """SHA-256, in hex, of everything the book says and of the engine that reads it.

        >>> len(RuleBook("COA-01", 1, ()).digest)
        64
        """
        return self.digest_by(ENGINE_VERSION)

    def digest_by(self, engine: int) -> str:
        """Return the digest under which an engine of that version published the book."""
        said = {
            "engine": engine,
            "code": self.code,
            "version": self.version,
            "rules": [rule.as_json() for rule in self.rules],
        }
        if self.scenario_version is not None:
            said["scenario_version"] = self.scenario_version
        canonical = json.dumps(said, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
        return hashlib.sha256(canonical.encode()).hexdigest()

    @property
    def of(self) -> float:
        """The points of all rules together."""
        return sum(rule.points for rule in self.rules)
