"""What counts as competence: requirements, evidence, standing, and the log that keeps it honest."""

from assessments.competence.deed import Change, Deed, changes
from assessments.competence.evidence import Decision, Evidence, as_judged_now
from assessments.competence.framework import Ask, Criterion, Element, Framework, Requirement, Unit, UnknownCode
from assessments.competence.judged import AskState, Missing
from assessments.competence.months import months_after
from assessments.competence.reader import read_framework
from assessments.competence.standing import Standing, standing_of, unit_standing
from assessments.competence.stuck import Stuck, stuck

__all__ = [
    "Ask", "AskState", "Change", "Criterion", "Decision", "Deed", "Element", "Evidence", "Framework", "Missing",
    "Requirement", "Standing", "Stuck", "Unit", "UnknownCode", "as_judged_now", "changes", "months_after",
    "read_framework", "standing_of", "stuck", "unit_standing",
]  # fmt: skip
