"""Rows of the upper floor, in story order."""

from assessments.models.scenario import RuleBook, Scenario
from assessments.models.attempt import Answer, Attempt, Finding
from assessments.models.record import Decision, Evidence, Note, Rejudgement
from assessments.models.draft import Draft
from assessments.models.log import LogEntry, Salt, TreeHead

__all__ = [
    "Answer",
    "Attempt",
    "Decision",
    "Draft",
    "Evidence",
    "Finding",
    "LogEntry",
    "Note",
    "Rejudgement",
    "RuleBook",
    "Salt",
    "Scenario",
    "TreeHead",
]
