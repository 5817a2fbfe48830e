"""A second verifier of the log, written from the standards and the page about operating; it shares no code with it."""

import hashlib
import json
from datetime import UTC, datetime

from cryptography.exceptions import InvalidSignature
from django.db import connection

MOMENTS = {"sqlite": "{0}", "postgresql": "to_char({0} AT TIME ZONE 'UTC', 'YYYY-MM-DD HH24:MI:SS.US')"}


def rows(table, *columns):
    """Return the rows of a table, each column as text, in the order of the first."""
    moment = MOMENTS[connection.vendor]
    wanted = ", ".join(f"CAST({moment.format(c) if c.endswith('_at') else c} AS TEXT)" for c in columns)
    with connection.cursor() as cursor:
        cursor.execute(f"SELECT {wanted} FROM {table} ORDER BY {columns[0]}")
        return cursor.fetchall()


def canon(value):
    """Return canonical JSON of text, whole numbers, lists and objects."""
    if isinstance(value, dict):
        keys = sorted(value, key=lambda key: key.encode("utf-16-be"))
        return "{" + ",".join(f"{canon(key)}:{canon(value[key])}" for key in keys) + "}"
    if isinstance(value, list):
        return "[" + ",".join(map(canon, value)) + "]"
    return json.dumps(value, ensure_ascii=False)


def root(leaves):
    """Return the Merkle tree hash of RFC 9162 §2.1.1 over leaf hashes."""
    if len(leaves) == 1:
        return leaves[0]
    half = 1
    while half * 2 < len(leaves):
        half *= 2
    return hashlib.sha256(b"\x01" + root(leaves[:half]) + root(leaves[half:])).digest()


def written(text):
    """Return a moment of the database as an entry writes it."""
    return datetime.fromisoformat(text).replace(tzinfo=UTC).strftime("%Y-%m-%dT%H:%M:%S.%fZ")


def is_good(keys):
    """Say whether every entry and every head is what it was when it was signed."""
    columns = ("seq", "stream", "stream_seq", "kind", "body", "leaf_hash", "prev_hash", "created_at")
    entries = rows("assessments_logentry", *columns)
    heads = rows("assessments_treehead", "size", "root", "peaks", "signed_at", "key_id", "signature")
    try:
        return len(entries) == len(heads) and _entries(entries) and _heads(entries, heads, keys)
    except (ValueError, KeyError, InvalidSignature):
        return False


def _entries(entries):
    last = {}
    for number, (seq, stream, stream_seq, kind, body, leaf, prev, at) in enumerate(entries, start=1):
        said, (count, before) = json.loads(body), last.get(stream, (0, "0" * 64))
        wanted = {
            "at": written(at),
            "kind": kind,
            "prev": prev,
            "seq": number,
            "stream": stream,
            "stream_seq": count + 1,
        }
        good = canon(said) == body and said == {**wanted, "what": said["what"]} and (prev, seq) == (before, str(number))
        if not good or stream_seq != str(count + 1) or hashlib.sha256(b"\0" + body.encode()).hexdigest() != leaf:
            return False
        last[stream] = (count + 1, leaf)
    return True


def _heads(entries, heads, keys):
    leaves = [bytes.fromhex(entry[5]) for entry in entries]
    for number, (size, top, peaks, at, key, signature) in enumerate(heads, start=1):
        bits = [1 << bit for bit in range(number.bit_length()) if number >> bit & 1]
        ends = [sum(bits[place:]) for place in range(len(bits))][::-1]
        whole = [root(leaves[end - bit : end]).hex() for bit, end in zip(reversed(bits), ends, strict=True)]
        if (size, top, peaks) != (str(number), root(leaves[:number]).hex(), " ".join(whole)):
            return False
        text = canon({"key_id": key, "root": top, "signed_at": written(at), "size": number})
        keys[key].verify(bytes.fromhex(signature), text.encode())
    return True
