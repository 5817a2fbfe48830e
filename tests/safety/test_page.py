"""The page on security names tests that stand, and leaves nothing without a word."""

import ast
import re
from pathlib import Path

import pytest

from courses.server import settings as of_the_site

ROOT = Path(__file__).resolve().parents[2]
PAGE = (ROOT / "docs" / "security.md").read_text(encoding="utf-8")
NAMED = sorted(set(re.findall(r"`(tests/[\w/]+\.py)::(\w+)`", PAGE)))
ROWS = [line for line in PAGE.splitlines() if line.startswith("| ") and not line.startswith(("| ASVS", "| attack"))]


def names_in(file: str) -> set[str]:
    """Return the name of every test in a file."""
    tree = ast.parse((ROOT / file).read_text(encoding="utf-8"))
    return {node.name for node in ast.walk(tree) if isinstance(node, ast.FunctionDef) and node.name.startswith("test_")}


@pytest.mark.parametrize(("file", "name"), NAMED)
def test_every_test_that_is_named_stands(file: str, name: str) -> None:
    assert name in names_in(file)


def test_every_row_is_tried_or_says_why_not() -> None:
    assert len(ROWS) > 50
    assert [row for row in ROWS if not re.search(r"`(tests|docs)/|not yet, because ", row)] == []


def test_passwords_are_kept_by_argon2() -> None:
    assert of_the_site.PASSWORD_HASHERS[0] == "django.contrib.auth.hashers.Argon2PasswordHasher"
