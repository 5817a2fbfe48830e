"""Facts and answers in, a verdict with reasons out."""

from assessments.marking.mark import Marked, Marker, mark
from assessments.marking.prove import Proof, prove
from assessments.marking.said import Said, said

__all__ = ["Marked", "Marker", "Proof", "Said", "mark", "prove", "said"]
