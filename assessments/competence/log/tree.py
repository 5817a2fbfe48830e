"""The Merkle tree over all entries (RFC 9162 §2.1): its hashes, its root worked out as it grows, its proofs.

Hashes are 32 bytes. A tree of `size` leaves is kept as its *peaks*: the roots of the full trees it is made of, the
largest first, one for each bit that is set in `size`. Growing by a leaf and finding the root cost O(log size).
"""

import hashlib
from collections.abc import Sequence

from assessments.competence.log.errors import LogFault

HASH_BYTES = 32
EMPTY_ROOT = hashlib.sha256(b"").digest()
"""The root of a tree without leaves (RFC 9162 §2.1.1)."""


def leaf_hash(body: bytes) -> bytes:
    """Return the hash of a leaf: SHA-256 of a zero byte and the body (RFC 9162 §2.1.1).

    >>> leaf_hash(b"").hex()
    '6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d'
    """
    return hashlib.sha256(b"\x00" + body).digest()


def node_hash(left: bytes, right: bytes) -> bytes:
    """Return the hash of a node: SHA-256 of a one byte, its left hash and its right hash (RFC 9162 §2.1.1)."""
    return hashlib.sha256(b"\x01" + left + right).digest()


def grown(size: int, peaks: Sequence[bytes], leaf: bytes) -> tuple[bytes, ...]:
    """Return the peaks of a tree of `size` leaves after one more; raises `LogFault` if the peaks don't fit the size."""
    if len(peaks) != size.bit_count() or any(len(one) != HASH_BYTES for one in peaks):
        raise LogFault(f"A tree of {size} has {size.bit_count()} peaks of {HASH_BYTES} bytes, not {len(peaks)} such.")
    after = [*peaks, leaf]
    while size & 1:
        right, left = after.pop(), after.pop()
        after.append(node_hash(left, right))
        size >>= 1
    return tuple(after)


def root_of(peaks: Sequence[bytes]) -> bytes:
    """Return the root of the tree these peaks stand for; without a peak, `EMPTY_ROOT`."""
    if not peaks:
        return EMPTY_ROOT
    root = peaks[-1]
    for peak in reversed(peaks[:-1]):
        root = node_hash(peak, root)
    return root


def tree_root(leaves: Sequence[bytes]) -> bytes:
    """Return the root over these leaf hashes.

    >>> tree_root([leaf_hash(b"")]) == leaf_hash(b"")
    True
    """
    if len(leaves) < 2:
        return leaves[0] if leaves else EMPTY_ROOT
    split = _split(len(leaves))
    return node_hash(tree_root(leaves[:split]), tree_root(leaves[split:]))


def _split(size: int) -> int:
    return int(1 << ((size - 1).bit_length() - 1))
