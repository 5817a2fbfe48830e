"""What the tests of the upper floor share: the scenario that is shipped, read once."""

from pathlib import Path

import pytest

from assessments.scenarios.reader import read_scenario
from assessments.scenarios.spec import Scenario

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="session")
def coa_01_text() -> str:
    return (ROOT / "fixtures/scenarios/COA-01-v1.toml").read_text(encoding="utf-8")


@pytest.fixture(scope="session")
def coa_01(coa_01_text: str) -> Scenario:
    return read_scenario(coa_01_text, "COA-01-v1.toml")
