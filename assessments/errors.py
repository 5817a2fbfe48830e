"""Refusals of the upper floor, each a sentence for the reader."""

from assessments.competence import Change
from courses.errors import Refused


class AttemptRefused(Refused):
    """An attempt that cannot be opened, put away or handed in."""


class AnswerRefused(Refused):
    """An answer that cannot be kept as it came."""


class PublishingRefused(Refused):
    """A version that cannot be published."""


class DraftRefused(Refused):
    """A change of a draft that cannot be made."""


class SignatureRefused(Refused):
    """A signature, or another decision on the record, that cannot be made; `changes` is what is no longer as shown."""

    changes: tuple[Change, ...] = ()


class RecordChanged(SignatureRefused):
    """The record is no longer what was shown."""

    def __init__(self, message: str, changes: tuple[Change, ...]) -> None:
        super().__init__(message)
        self.changes = changes
