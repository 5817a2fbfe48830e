"""The check of the whole log, from its first entry on: the first thing that isn't as it was signed, with the reason.

It reads the columns as the database writes them, so that one which can't be read is found too; it holds one line for
each stream and the peaks of the tree, however long the log is.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from typing import NamedTuple

from assessments.competence.log.entry import START, Entry, hash_of
from assessments.competence.log.errors import LogFault
from assessments.competence.log.head import Head, PublicKeys, handover, is_signed
from assessments.competence.log.moment import stamp_kept
from assessments.competence.log.tree import grown, root_of

HEADS = "heads"
"""The stream that a broken head is reported in; its `seq` is the size the head is for."""


class RawEntry(NamedTuple):
    """A row of the entries, each column as text; what is null or no text comes as text that can't be right."""

    seq: str
    stream: str
    stream_seq: str
    kind: str
    body: str
    leaf_hash: str
    prev_hash: str
    created_at: str


class RawHead(NamedTuple):
    """A row of the heads, each column as text."""

    size: str
    root: str
    peaks: str
    signed_at: str
    key_id: str
    signature: str


Pair = tuple[RawEntry | None, RawHead | None]
"""An entry with the head for it and everything before it; a head without its entry, or an entry without its head."""


@dataclass(frozen=True, slots=True)
class Broken:
    """The first thing that is wrong: in which stream, at which number over all, and why."""

    stream: str
    seq: int
    why: str


@dataclass(frozen=True, slots=True)
class Verified:
    """How many entries and heads were read, and the first thing that is wrong, if any."""

    entries: int
    heads: int
    broken: Broken | None


def first_broken(pairs: Iterable[Pair], keys: PublicKeys, kept: Head | None = None) -> Verified:
    """Read the log in the order of its numbers and return what is wrong first.

    Pairs without an entry come last. `keys` are all public keys that ever signed; `kept` is a head, its signature
    checked, that was kept elsewhere: what it covered has to stand unchanged. Reads on after a fault, to count.
    """
    walk, entries, heads = _Walk(keys, kept), 0, 0
    for row, head in pairs:
        entries, heads = entries + (row is not None), heads + (head is not None)
        walk.take(row, head)
    return Verified(entries, heads, walk.broken or _cut_off(kept, entries))


def _cut_off(kept: Head | None, entries: int) -> Broken | None:
    if kept is None or kept.size <= entries:
        return None
    why = f"The head that was kept covers {kept.size} entries; the log has {entries}. What came after was removed."
    return Broken(HEADS, kept.size, why)


@dataclass(slots=True)
class _Walk:
    keys: PublicKeys
    kept: Head | None
    size: int = 0
    peaks: tuple[bytes, ...] = ()
    key_id: str = ""
    last: dict[str, tuple[int, str]] = field(default_factory=dict)
    broken: Broken | None = None

    def take(self, row: RawEntry | None, head: RawHead | None) -> None:
        """Check the next entry with its head, until something was wrong."""
        if self.broken is None:
            self.broken = self._fault(row, head)
        elif self.broken.stream == "" and row is not None:
            self._name_stream(row)

    def _fault(self, row: RawEntry | None, head: RawHead | None) -> Broken | None:
        number = self.size + 1
        if row is None:
            size = head.size if head else ""
            return Broken(HEADS, _number(size, number), f"There is a head for {size} entries, and no entry {size}.")
        entry, why = _said(row)
        if row.seq != str(number) and not (entry and entry.seq == number):
            return Broken("", number, f"Entry {number} is missing: {row.seq} follows {self.size}.")
        if entry is None:
            return Broken(row.stream, number, why)
        why = _unlike(row, entry) or self._unchained(row, entry)
        if why:
            return Broken(entry.stream if row.leaf_hash == hash_of(row.body) else row.stream, number, why)
        why = self._grow(entry, row.leaf_hash) or self._wrong_head(entry, head)
        return Broken(HEADS, number, why) if why else None

    def _unchained(self, row: RawEntry, entry: Entry) -> str:
        count, before = self.last.get(entry.stream, (0, START))
        if entry.stream_seq != count + 1:
            return f"It is number {entry.stream_seq} of its stream; number {count + 1} comes next."
        if entry.prev != before:
            return "It doesn't follow the entry before it in its stream: prev is another hash."
        self.last[entry.stream] = (entry.stream_seq, row.leaf_hash)
        return ""

    def _grow(self, entry: Entry, leaf_hash: str) -> str:
        self.peaks = grown(self.size, self.peaks, bytes.fromhex(leaf_hash))
        self.size = entry.seq
        if self.kept and self.kept.size == self.size and self.kept.root != root_of(self.peaks).hex():
            return f"The head that was kept has another root for {self.size} entries: something up to here was altered."
        return ""

    def _wrong_head(self, entry: Entry, row: RawHead | None) -> str:
        if row is None:
            return f"There is no signed head for {self.size} entries."
        if row.root != root_of(self.peaks).hex():
            return (
                f"Its root is not what the {self.size} entries come to: an entry up to here, or the head, was altered."
            )
        if row.peaks != " ".join(one.hex() for one in self.peaks):
            return f"Its peaks are not what the {self.size} entries come to."
        return self._wrong_key(entry, row) or self._wrong_signature(row)

    def _wrong_key(self, entry: Entry, row: RawHead) -> str:
        before, self.key_id = self.key_id, row.key_id
        if row.key_id not in self.keys:
            return f"It is signed by the key {row.key_id}, whose public half is not among the keys."
        if entry.kind == "key":
            return _wrong_handover(entry, before, row.key_id, self.keys)
        if before and before != row.key_id:
            return f"It is signed by the key {row.key_id}; {before} signs here, and no entry hands over from it."
        return ""

    def _wrong_signature(self, row: RawHead) -> str:
        try:
            head = Head(self.size, row.root, stamp_kept(row.signed_at), row.key_id)
        except LogFault as fault:
            return f"signed_at can't be read: {fault}"
        if not head.is_signed(row.signature, self.keys[row.key_id]):
            return f"The signature is not that of the key {row.key_id} over this head."
        return ""

    def _name_stream(self, row: RawEntry) -> None:
        """Find whose entry is missing: the stream that skips a number, or an entry that was moved."""
        entry, _why = _said(row)
        if entry is None or self.broken is None:
            return
        count, _before = self.last.get(entry.stream, (0, START))
        if entry.seq == self.broken.seq or entry.stream_seq > count + 1:
            self.broken = replace(self.broken, stream=entry.stream)
        self.last[entry.stream] = (entry.stream_seq, row.leaf_hash)


def _number(text: str, otherwise: int) -> int:
    return int(text) if text.isascii() and text.isdigit() else otherwise


def _said(row: RawEntry) -> tuple[Entry | None, str]:
    try:
        return Entry.of(row.body), ""
    except LogFault as fault:
        return None, f"Its body is not that of an entry. {fault}"


def _unlike(row: RawEntry, entry: Entry) -> str:
    """Return which column doesn't repeat what the body says, or nothing."""
    try:
        at = stamp_kept(row.created_at)
    except LogFault as fault:
        return f"created_at can't be read: {fault}"
    for column, kept, said in (
        ("leaf_hash", row.leaf_hash, hash_of(row.body)),
        ("seq", row.seq, str(entry.seq)),
        ("stream", row.stream, entry.stream),
        ("stream_seq", row.stream_seq, str(entry.stream_seq)),
        ("kind", row.kind, entry.kind),
        ("prev_hash", row.prev_hash, entry.prev),
        ("created_at", at, entry.at),
    ):
        if kept != said:
            return f"The column {column} is {kept!r}, where its body comes to {said!r}."
    return ""


def _wrong_handover(entry: Entry, before: str, new: str, keys: PublicKeys) -> str:
    said = {key: str(entry.what.get(key, "")) for key in ("old", "new", "public", "by_old", "by_new")}
    if (said["old"], said["new"]) != (before, new):
        return f"The entry hands over from {said['old']} to {said['new']}; the heads, from {before} to {new}."
    if said["public"] != keys[new].public_bytes_raw().hex():
        return f"The public half of the key {new} is not the one this entry names."
    text = handover(before, new, said["public"])
    if not (before in keys and is_signed(keys[before], text, said["by_old"])):
        return f"The handover is not signed by the key {before}."
    return "" if is_signed(keys[new], text, said["by_new"]) else f"The handover is not signed by the key {new}."
