"""One adapter for each peer: a library for expressions or rules at large, none of them made for training.

A peer gets the tests it can express, turns a case into what it reads, and says yes or no to each test. What a language
can't work out (the dew point, a text in one form) is put beside the case as `worked`, and counted.
"""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Callable, Sequence
from importlib.metadata import version
from typing import Any

from tests.bench.rules import floor
from tests.bench.rules.dialect import Dialect, Inexpressible
from tests.bench.rules.trees import JsonLogic

Case = dict[str, Any]
LENT: dict[str, Callable[..., Any]] = {
    "dew_point": floor.dew_point,
    "near": floor.near,
    "overlap": floor.overlap,
    "before": floor.before,
    "starts_before": floor.starts_before,
    "norm": floor.norm,
}
BUILT_IN: dict[str, Callable[..., Any]] = {"all": all, "any": any, "sum": sum, "len": len, "abs": abs}


def with_worked(case: Case) -> Case:
    """Return the case with what a language without functions can't work out."""
    facts, answer = case["facts"], case["answer"]
    worked = {
        "dew_point": floor.dew_point(facts["air_degc"], facts["air_rh"]),
        "waste": floor.norm(answer["waste"]),
        "key_waste": floor.norm(case["key"]["waste"]),
        "note_length": len(answer["note"]),
    }
    return {**case, "worked": worked}


class Peer(ABC):
    """An engine with the tests of the book that it can express; `rules` are their places in the book."""

    distribution = ""
    way = "40 expressions"
    traces = False
    language: type[Dialect] | type[JsonLogic] = Dialect

    def __init__(self, tests: Sequence[str]) -> None:
        self.rules: list[int] = []
        self.texts: list[Any] = []
        writer = self.language()
        for place, test in enumerate(tests):
            try:
                self.texts.append(writer.written(test))
            except Inexpressible:
                continue
            self.rules.append(place)
        self.compile()

    @property
    def name(self) -> str:
        """The peer with the version that is installed."""
        return f"{self.distribution} {version(self.distribution)}"

    @abstractmethod
    def compile(self) -> None:
        """Make the tests ready to run."""

    def read(self, case: Case) -> Any:
        """Return a case as the peer reads it."""
        return case

    @abstractmethod
    def judge(self, case: Any) -> Sequence[Any]:
        """Return what the peer says to each of its tests."""

    def said(self, found: Any) -> list[Any]:
        """Return what was found as yes and no, one for each test it can express."""
        return list(found)

    def trace_bytes(self, case: Any) -> int:
        """Return the bytes, as JSON, of the trace of one case: none where it keeps no trace."""
        return 0

    def in_one(self) -> str:
        """Return all tests as one list."""
        return f"[{', '.join(self.texts)}]"
