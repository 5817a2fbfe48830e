"""The register of sketches."""

from dataclasses import replace

import pytest

from assessments.scenarios.errors import UnknownScenario
from assessments.scenarios.register import SKETCHES, sketch_of
from assessments.scenarios.spec import Scenario


def test_a_shipped_version_has_its_functions(coa_01: Scenario) -> None:
    assert sketch_of(coa_01) is SKETCHES["COA-01@1"]


def test_a_version_nobody_wrote_is_refused_with_the_near_miss(coa_01: Scenario) -> None:
    with pytest.raises(UnknownScenario, match="Nothing draws COA-01@9; did you mean COA-01@1?"):
        sketch_of(replace(coa_01, version=9))
