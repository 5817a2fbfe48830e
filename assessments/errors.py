"""Refusals of the upper floor, each a sentence for the reader."""

from courses.errors import Refused


class AttemptRefused(Refused):
    """An attempt that cannot be opened, put away or handed in."""


class AnswerRefused(Refused):
    """An answer that cannot be kept as it came."""


class PublishingRefused(Refused):
    """A version that cannot be published."""
