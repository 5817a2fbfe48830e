"""The log of the record: entries in canonical form, a tree over them, signed heads, and the check of it all."""

from assessments.competence.log.canonical import canonical
from assessments.competence.log.commitment import committed
from assessments.competence.log.entry import START, Entry, follows
from assessments.competence.log.errors import LogFault
from assessments.competence.log.head import Head, handover, sign
from assessments.competence.log.moment import stamp
from assessments.competence.log.tree import grown, root_of

__all__ = [
    "START", "Entry", "Head", "LogFault", "canonical", "committed", "follows", "grown", "handover", "root_of", "sign",
    "stamp",
]  # fmt: skip
