"""The small functions behind each version of each scenario: one try at a draw, and the key worked from facts.

A version that was published keeps its functions for ever: an attempt of last year must still show the same key.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from assessments.scenarios import (
    coa_01_v1,
    cut_02_v1,
    cut_03_v1,
    cut_04_v1,
    cut_05_v1,
    cut_07_v1,
    hom_02_v1,
    ins_01_v1,
    ins_02_v1,
    ins_03_v1,
    ins_03_v2,
    ins_04_v1,
    ins_05_v1,
    ins_06_v1,
    ins_06_v2,
    ins_07_v1,
    ins_08_v1,
    ins_09_v1,
    pln_01_v1,
    pln_02_v1,
    pln_03_v1,
    pln_04_v1,
    pln_05_v1,
    pln_06_v1,
    pln_07_v1,
    pln_08_v1,
    pln_09_v1,
)
from assessments.scenarios.errors import UnknownScenario
from assessments.scenarios.sketch import Sketch
from assessments.scenarios.spec import Scenario
from courses.trade.errors import offer

SKETCHES: Final[Mapping[str, Sketch]] = MappingProxyType(
    {
        "COA-01@1": Sketch(coa_01_v1.draw, coa_01_v1.key),
        "CUT-02@1": Sketch(cut_02_v1.draw, cut_02_v1.key, cut_02_v1.pictures, surface=cut_02_v1.surface),
        "CUT-03@1": Sketch(cut_03_v1.draw, cut_03_v1.key, model=cut_03_v1.model, surface=cut_03_v1.surface),
        "CUT-04@1": Sketch(cut_04_v1.draw, cut_04_v1.key, cut_04_v1.pictures, surface=cut_04_v1.surface),
        "CUT-05@1": Sketch(cut_05_v1.draw, cut_05_v1.key),
        "CUT-07@1": Sketch(cut_07_v1.draw, cut_07_v1.key),
        "HOM-02@1": Sketch(hom_02_v1.draw, hom_02_v1.key),
        "INS-01@1": Sketch(ins_01_v1.draw, ins_01_v1.key, ins_01_v1.pictures),
        "INS-02@1": Sketch(ins_02_v1.draw, ins_02_v1.key, ins_02_v1.pictures),
        "INS-03@1": Sketch(ins_03_v1.draw, ins_03_v1.key, ins_03_v1.pictures),
        "INS-03@2": Sketch(ins_03_v2.draw, ins_03_v2.key, ins_03_v2.pictures, surface=ins_03_v2.surface),
        "INS-04@1": Sketch(ins_04_v1.draw, ins_04_v1.key, ins_04_v1.pictures),
        "INS-05@1": Sketch(ins_05_v1.draw, ins_05_v1.key, ins_05_v1.pictures),
        "INS-06@1": Sketch(ins_06_v1.draw, ins_06_v1.key, ins_06_v1.pictures),
        "INS-06@2": Sketch(ins_06_v2.draw, ins_06_v2.key, ins_06_v2.pictures, surface=ins_06_v2.surface),
        "INS-07@1": Sketch(ins_07_v1.draw, ins_07_v1.key, ins_07_v1.pictures),
        "INS-08@1": Sketch(ins_08_v1.draw, ins_08_v1.key),
        "INS-09@1": Sketch(ins_09_v1.draw, ins_09_v1.key, model=ins_09_v1.model),
        "PLN-01@1": Sketch(pln_01_v1.draw, pln_01_v1.key, pln_01_v1.pictures, surface=pln_01_v1.surface),
        "PLN-02@1": Sketch(pln_02_v1.draw, pln_02_v1.key, pln_02_v1.pictures, surface=pln_02_v1.surface),
        "PLN-03@1": Sketch(pln_03_v1.draw, pln_03_v1.key, pln_03_v1.pictures, surface=pln_03_v1.surface),
        "PLN-04@1": Sketch(pln_04_v1.draw, pln_04_v1.key, pln_04_v1.pictures, surface=pln_04_v1.surface),
        "PLN-05@1": Sketch(pln_05_v1.draw, pln_05_v1.key, pln_05_v1.pictures, surface=pln_05_v1.surface),
        "PLN-06@1": Sketch(pln_06_v1.draw, pln_06_v1.key, surface=pln_06_v1.surface),
        "PLN-07@1": Sketch(pln_07_v1.draw, pln_07_v1.key, pln_07_v1.pictures, surface=pln_07_v1.surface),
        "PLN-08@1": Sketch(pln_08_v1.draw, pln_08_v1.key, pln_08_v1.pictures, surface=pln_08_v1.surface),
        "PLN-09@1": Sketch(pln_09_v1.draw, pln_09_v1.key, pln_09_v1.pictures),
    }
)


def sketch_of(scenario: Scenario) -> Sketch:
    """Return the functions of a scenario's version; raise UnknownScenario where nobody wrote them."""
    if scenario.ref not in SKETCHES:
        raise UnknownScenario(f"Nothing draws {scenario.ref}; {offer(scenario.ref, SKETCHES)}")
    return SKETCHES[scenario.ref]
