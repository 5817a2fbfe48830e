from dataclasses import dataclass

import pytest

from assessments.rules import outcome


@dataclass(frozen=True)
class Found:
    severity: str
    verdict: str
    points: float = 0
    of: float = 0
    failed: str | None = None


CRITICAL = Found("critical", "not_met", 0, 5)
SILENT = Found("critical", "not_answered", 0, 5)
FAILED = Found("points", "not_answered", 0, 1, "dew_point() failed")
LACKING = Found("needed", "not_met", 0, 2)
MET = Found("needed", "met", 10, 10)


@pytest.mark.parametrize(
    ("findings", "wanted"),
    [
        ([], "satisfactory"),
        ([MET], "satisfactory"),
        ([MET, CRITICAL], "critical_fail"),
        ([SILENT, CRITICAL], "critical_fail"),
        ([FAILED, CRITICAL], "critical_fail"),
        ([MET, SILENT], "cannot_certify"),
        ([MET, FAILED], "cannot_certify"),
        ([SILENT, LACKING], "cannot_certify"),
        ([MET, LACKING], "not_yet_satisfactory"),
        ([MET, Found("needed", "not_answered", 0, 2)], "not_yet_satisfactory"),
        ([MET, Found("needed", "partly", 1.9, 2)], "not_yet_satisfactory"),
        ([MET, Found("needed", "not_applicable")], "satisfactory"),
        ([MET, Found("critical", "not_applicable")], "satisfactory"),
        ([Found("points", "met", 8, 8), Found("points", "not_met", 0, 2)], "satisfactory"),
        ([Found("points", "met", 7.9, 7.9), Found("points", "not_met", 0, 2.1)], "not_yet_satisfactory"),
        ([Found("points", "not_answered", 0, 2)], "not_yet_satisfactory"),
        ([Found("points", "partly", 0.1, 0.125)], "satisfactory"),
    ],
)
def test_the_worst_that_applies_decides(findings, wanted):
    assert outcome(findings) == wanted


def test_eighty_per_cent_is_enough_in_spite_of_binary_fractions():
    thirds = [Found("points", "met", 0.1, 0.1)] * 8 + [Found("points", "not_met", 0, 0.1)] * 2
    assert outcome(thirds) == "satisfactory"
