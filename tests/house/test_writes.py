"""Rows are written by the verbs alone: one file on each floor, the authoring desk and the loaders."""

import ast
from collections.abc import Iterator

import pytest

from tests.house.measure import PURE, STOREYS, named, sources

WRITERS = {
    "courses/actions.py",
    "courses/gallery.py",  # hangs pictures, and keeps what is measured in them
    "courses/models/people.py",  # the framework asks its manager to make people
    "assessments/journey.py",
    "assessments/filing.py",
    "assessments/log.py",
    "assessments/bench.py",
    "assessments/authoring.py",
    "assessments/drafting.py",
    "assessments/management/shelves.py",  # the loaders: one transaction over the verbs
    "assessments/management/demo.py",
}
ALWAYS = {"save", "create", "bulk_create", "bulk_update", "get_or_create", "update_or_create", "delete", "atomic"}


def writes(text: str, place: str) -> Iterator[str]:
    """Yield each line of a module that saves, makes, changes or removes rows, or opens a transaction."""
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and _is_write(node, node.func.attr):
            yield f"{place}:{node.lineno} .{node.func.attr}("
        elif isinstance(node, ast.Attribute) and node.attr == "atomic":
            yield f"{place}:{node.lineno} atomic"


def _is_write(call: ast.Call, verb: str) -> bool:
    changes_rows = verb == "update" and bool(call.keywords) and not call.args
    return changes_rows or (verb in ALWAYS and verb != "atomic")


def test_rows_are_written_by_the_verbs_alone() -> None:
    shell = [path for path in sources(*STOREYS) if not named(path).startswith(PURE) and named(path) not in WRITERS]
    found = [line for path in shell for line in writes(path.read_text(encoding="utf-8"), named(path))]
    assert found == []


@pytest.mark.parametrize(
    "line",
    [
        "attempt.save()",
        "Attempt.objects.create(person=person)",
        "Finding.objects.bulk_create(rows)",
        "people.update(theme='dark')",
        "row.delete()",
        "with transaction.atomic(): ...",
        "@transaction.atomic\ndef a(): ...",
    ],
)
def test_a_write_is_seen(line: str) -> None:
    assert list(writes(line, "a.py"))


@pytest.mark.parametrize("line", ["digest.update(text)", "words.update({'a': 1})", "attempt.saved_at()"])
def test_what_is_no_write_is_left_alone(line: str) -> None:
    assert list(writes(line, "a.py")) == []
