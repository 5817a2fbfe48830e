"""Every rule, table row, sum and lesson names a source that fixtures/trade/sources.toml knows."""

import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest

from courses.trade.sums import SUMS
from tests.house.measure import ROOT, named

FIXTURES = ROOT / "fixtures"
REGISTER = FIXTURES / "trade" / "sources.toml"
ROWS = ("rule", "row")


def read(path: Path) -> dict[str, Any]:
    """Return the TOML in `path`."""
    return tomllib.loads(path.read_text(encoding="utf-8"))


def known_keys() -> set[str]:
    """Return every key of the register: the names of its tables."""
    return {key for key, about in read(REGISTER).items() if isinstance(about, dict)}


def sourceless(table: Mapping[str, Any], place: str, known: set[str]) -> list[str]:
    """Return the rules and rows of a file whose source is missing or unknown; a shared rule may carry its own."""
    found = []
    for kind in ROWS:
        for at, row in enumerate(table.get(kind, []), start=1):
            if row.get("source", "" if "shared" not in row else None) not in known | {None}:
                found.append(f"{place}, {kind} {row.get('code', at)}: {row.get('source', 'no source')}")
    return found


def test_every_rule_and_table_row_names_a_known_source() -> None:
    files = [*(FIXTURES / "rulebooks").glob("*.toml"), *(FIXTURES / "trade").rglob("*.toml")]
    tables = [path for path in files if path != REGISTER]
    assert tables
    assert [line for path in tables for line in sourceless(read(path), named(path), known_keys())] == []


def test_every_sum_names_a_known_source() -> None:
    assert {name: entry.source for name, entry in SUMS.items() if entry.source not in known_keys()} == {}


def test_practice_and_model_stand_in_the_register() -> None:
    assert {"practice", "model"} <= known_keys()


@pytest.mark.parametrize(
    ("row", "wanting"),
    [
        ({"source": "iso-8502-4"}, []),
        ({"source": "hearsay"}, ["a.toml, rule 1: hearsay"]),
        ({}, ["a.toml, rule 1: no source"]),
        ({"shared": "R21"}, []),
        ({"shared": "R21", "source": "hearsay"}, ["a.toml, rule 1: hearsay"]),
    ],
)
def test_a_row_without_a_known_source_is_seen(row: dict[str, str], wanting: list[str]) -> None:
    assert sourceless({"rule": [row]}, "a.toml", {"iso-8502-4"}) == wanting
