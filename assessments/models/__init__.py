"""Rows of the upper floor, in story order."""

from assessments.models.scenario import RuleBook, Scenario
from assessments.models.attempt import Answer, Attempt, Finding

__all__ = ["Answer", "Attempt", "Finding", "RuleBook", "Scenario"]
