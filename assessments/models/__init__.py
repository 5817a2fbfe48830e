"""Rows of the upper floor, in story order."""

from assessments.models.scenario import RuleBook, Scenario
from assessments.models.attempt import Answer, Attempt, Finding
from assessments.models.record import Decision, Evidence, Note
from assessments.models.log import LogEntry, Salt, TreeHead

__all__ = [
    "Answer",
    "Attempt",
    "Decision",
    "Evidence",
    "Finding",
    "LogEntry",
    "Note",
    "RuleBook",
    "Salt",
    "Scenario",
    "TreeHead",
]
