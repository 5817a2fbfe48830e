"""Facts and answers in, a verdict with reasons out."""

from assessments.marking.mark import Marked, Marker, mark, said
from assessments.marking.prove import Proof, prove

__all__ = ["Marked", "Marker", "Proof", "mark", "prove", "said"]
