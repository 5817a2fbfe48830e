"""The log of the record: entries in canonical form, a tree over them, signed heads, and the check of it all."""

from assessments.competence.log.canonical import canonical
from assessments.competence.log.commitment import committed
from assessments.competence.log.entry import START, Entry, follows, hash_of
from assessments.competence.log.errors import LogFault
from assessments.competence.log.head import Head, PublicKeys, handover, sign
from assessments.competence.log.moment import stamp
from assessments.competence.log.tree import grown, root_of
from assessments.competence.log.verify import Broken, Pair, RawEntry, RawHead, Verified, first_broken

__all__ = [
    "START", "Broken", "Entry", "Head", "LogFault", "Pair", "PublicKeys", "RawEntry", "RawHead", "Verified",
    "canonical", "committed", "first_broken", "follows", "grown", "handover", "hash_of", "root_of", "sign", "stamp",
]  # fmt: skip
