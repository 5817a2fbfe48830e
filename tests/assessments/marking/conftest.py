"""The shipped rule book of COA-01, made ready once."""

from pathlib import Path

import pytest

from assessments.marking import Marker
from assessments.rules import RuleBook, read_book, read_shared
from assessments.scenarios.spec import Scenario

BOOKS = Path(__file__).parents[3] / "fixtures/rulebooks"


@pytest.fixture(scope="session")
def coa_01_book_text() -> tuple[str, str]:
    """The book as it is written, and the shared one it leans on."""
    own, shared = (BOOKS / name for name in ("COA-01-v1.toml", "shared.toml"))
    return own.read_text(encoding="utf-8"), shared.read_text(encoding="utf-8")


@pytest.fixture(scope="session")
def coa_01_book(coa_01_book_text: tuple[str, str]) -> RuleBook:
    text, shared = coa_01_book_text
    return read_book(text, "COA-01-v1.toml", read_shared(shared))


@pytest.fixture(scope="session")
def coa_01_marker(coa_01: Scenario, coa_01_book: RuleBook) -> Marker:
    return Marker.of(coa_01, coa_01_book)
