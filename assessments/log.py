"""The log's verbs: what happened to the record is entered, chained and signed for, in the transaction it happens in."""

import secrets
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from django.conf import settings
from django.db import connection, transaction

from assessments.competence.log import (
    START,
    Entry,
    Head,
    committed,
    follows,
    grown,
    handover,
    hash_of,
    root_of,
    sign,
    stamp,
)
from assessments.models import LogEntry, Salt, TreeHead
from courses.actions import is_erased
from courses.keys import forget_signing_keys, make_signing_key, raw_public, signing_key
from courses.models import Membership, Person

__all__ = [
    "SCHOOL", "Chain", "begin", "chain_of", "commitment", "enter", "enter_role", "forget", "hand_over", "role_said",
    "salt_of", "stamp", "stream_of",
]  # fmt: skip

SCHOOL = "school"
LOCK = 4_162_001
"""The number of the lock that writers of the log take turns by, on PostgreSQL."""


@dataclass(frozen=True, slots=True)
class Chain:
    """How many entries a stream has, and whether each follows from the one before it."""

    entries: int
    whole: bool


@transaction.atomic(savepoint=False)
def enter(stream: str, kind: str, what: Mapping[str, object], *, now: datetime, key_id: str = "") -> LogEntry:
    """Add an entry and the signed head over everything up to it; `key_id` names a key that takes over with it."""
    _take_turns()
    size, peaks, before = TreeHead.objects.order_by("-size").values_list("size", "peaks", "key_id").first() or (
        0,
        "",
        "",
    )
    count, prev = _last_of(stream)
    entry = Entry(size + 1, stream, count + 1, kind, stamp(now), prev, what)
    body = entry.body
    leaf_hash = hash_of(body)
    after = grown(size, [bytes.fromhex(one) for one in peaks.split()], bytes.fromhex(leaf_hash))
    _sign(entry.seq, after, key_id or before, now)
    return LogEntry.objects.create(
        seq=entry.seq,
        stream=stream,
        stream_seq=entry.stream_seq,
        kind=kind,
        body=body,
        leaf_hash=leaf_hash,
        prev_hash=prev,
        created_at=now,
    )


def _last_of(stream: str) -> tuple[int, str]:
    rows = LogEntry.objects.filter(stream=stream).order_by("-stream_seq")
    return rows.values_list("stream_seq", "leaf_hash").first() or (0, START)


def _take_turns() -> None:
    """Number without gaps: on SQLite a transaction writes alone anyway."""
    if connection.vendor == "postgresql":
        with connection.cursor() as cursor:
            cursor.execute("SELECT pg_advisory_xact_lock(%s)", [LOCK])


def _sign(size: int, peaks: tuple[bytes, ...], key_id: str, now: datetime) -> None:
    key_id, key = signing_key(settings.VAR, key_id)
    head = Head(size, root_of(peaks).hex(), stamp(now), key_id)
    TreeHead.objects.create(
        size=size,
        root=head.root,
        peaks=" ".join(one.hex() for one in peaks),
        signed_at=now,
        key_id=key_id,
        signature=head.signed_by(key),
    )


def stream_of(person: Person) -> str:
    """Return the name of a person's stream, which tells nobody who they are."""
    return str(person.handle)


def salt_of(person: Person) -> str:
    """Return the salt of a person's commitments, made at the first asking; nothing for one who was erased."""
    if is_erased(person):
        return ""
    try:
        return person.salt.value
    except Salt.DoesNotExist:
        return Salt.objects.get_or_create(person=person, defaults={"value": secrets.token_hex(32)})[0].value


def commitment(person: Person, label: str, value: str) -> str:
    """Return what shows later that a value of `person` was this one; nothing for one who was erased."""
    salt = salt_of(person)
    return committed(salt, label, value) if salt else ""


def forget(person: Person) -> None:
    """Drop the salt of a person: from here on their commitments tell nothing, and every proof still holds."""
    Salt.objects.filter(person=person).delete()
    person._state.fields_cache.pop("salt", None)


def chain_of(stream: str) -> Chain:
    """Return how many entries a stream has, and whether each is what its hash says and follows the one before."""
    prev, count, whole = START, 0, True
    rows = LogEntry.objects.filter(stream=stream).order_by("stream_seq")
    for seq, body, leaf_hash in rows.values_list("seq", "body", "leaf_hash"):
        count += 1
        whole = whole and follows(body, leaf_hash, seq=seq, stream=stream, stream_seq=count, prev=prev)
        prev = leaf_hash
    return Chain(count, whole)


def enter_role(membership: Membership, change: str, by: Person | None, now: datetime) -> LogEntry:
    """Enter that a role was `given`, `changed` or `ended`, in the stream of whoever holds it."""
    what = {**role_said(membership), "by": stream_of(by) if by else ""}
    return enter(stream_of(membership.person), f"role_{change}", what, now=now)


def role_said(membership: Membership) -> dict[str, object]:
    """Return what an entry says of a role."""
    return {
        "membership": membership.pk,
        "role": membership.role,
        "cohort": membership.cohort_id or 0,
        "teaches": list(membership.teaches),
        "may_sign": list(membership.may_sign),
    }


@transaction.atomic
def begin(now: datetime) -> int:
    """Begin a log with the roles that stand already; return how many. A log that has begun is left as it is."""
    _take_turns()
    if TreeHead.objects.exists():
        return 0
    standing = Membership.objects.select_related("person").order_by("pk")
    return len([enter_role(membership, "given", None, now) for membership in standing])


@transaction.atomic
def hand_over(now: datetime) -> str:
    """Let a new key sign from here on, vouched for by the one before it, whose secret half goes; return its id."""
    _take_turns()
    last = TreeHead.objects.order_by("size").last()
    old, old_key = signing_key(settings.VAR, last.key_id if last else "")
    new = make_signing_key(settings.VAR)
    new_key = signing_key(settings.VAR, new)[1]
    public = raw_public(new_key)
    text = handover(old, new, public)
    signed = {"by_old": sign(old_key, text), "by_new": sign(new_key, text)}
    enter(SCHOOL, "key", {"old": old, "new": new, "public": public, **signed}, now=now, key_id=new)
    transaction.on_commit(lambda: forget_signing_keys(settings.VAR, but=new))
    return new
