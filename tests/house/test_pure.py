"""The pure chapters read no clock, no file and no chance: what they need is handed to them."""

import ast
from collections.abc import Iterator

import pytest

from tests.house.measure import PURE, named, sources

OUTSIDE = {
    "asyncio", "glob", "io", "logging", "multiprocessing", "os", "pathlib", "random", "secrets", "shutil", "socket",
    "sqlite3", "subprocess", "sys", "tempfile", "threading", "time", "urllib", "uuid",
}  # fmt: skip
CALLS = {"open", "now", "today", "utcnow", "read_text", "read_bytes", "print", "input"}
CHANCE = "assessments/scenarios/draw.py"
"""The one place with a random source."""


def outside(text: str, place: str) -> Iterator[str]:
    """Yield what a module imports or calls that reaches outside itself."""
    for node in ast.walk(ast.parse(text)):
        for name in _imported(node):
            if name.split(".")[0] in OUTSIDE:
                yield f"{place}: {name}"
        if isinstance(node, ast.Call):
            called = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
            if called in CALLS:
                yield f"{place}: {called}("


def _imported(node: ast.AST) -> list[str]:
    if isinstance(node, ast.Import):
        return [alias.name for alias in node.names]
    return [node.module or ""] if isinstance(node, ast.ImportFrom) else []


def test_the_pure_chapters_reach_nothing_outside() -> None:
    found = [line for path in sources(*PURE) for line in outside(path.read_text(encoding="utf-8"), named(path))]
    assert [line for line in found if line != f"{CHANCE}: random"] == []


@pytest.mark.parametrize(
    "line", ["import random", "from pathlib import Path", "import os.path", "datetime.now()", "open('a')"]
)
def test_a_reach_outside_is_seen(line: str) -> None:
    assert list(outside(line, "a.py"))


@pytest.mark.parametrize(
    "line", ["import math", "from datetime import timedelta", "opened(3)", "from dataclasses import field"]
)
def test_plain_arithmetic_is_left_alone(line: str) -> None:
    assert list(outside(line, "a.py")) == []
