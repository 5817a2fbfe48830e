"""The shipped rule book of COA-01, made ready once."""

from pathlib import Path

import pytest

from assessments.marking import Marker
from assessments.rules import RuleBook, read_book, read_shared
from assessments.scenarios.spec import Scenario

BOOKS = Path(__file__).parents[3] / "fixtures/rulebooks"


@pytest.fixture(scope="session")
def coa_01_book() -> RuleBook:
    shared = read_shared((BOOKS / "shared.toml").read_text(encoding="utf-8"))
    return read_book((BOOKS / "COA-01-v1.toml").read_text(encoding="utf-8"), "COA-01-v1.toml", shared)


@pytest.fixture(scope="session")
def coa_01_marker(coa_01: Scenario, coa_01_book: RuleBook) -> Marker:
    return Marker.of(coa_01, coa_01_book)
