"""Proofs about the tree (RFC 9162 §2.1.3-2.1.4): that an entry is in it, that a later one only added to it."""

from collections.abc import Sequence

from assessments.competence.log.errors import LogFault
from assessments.competence.log.tree import HASH_BYTES, _split, node_hash, tree_root

Proof = tuple[bytes, ...]


def inclusion_proof(leaves: Sequence[bytes], index: int) -> Proof:
    """Return the hashes that lead from leaf `index` (from 0) to the root; raises `LogFault` outside the tree."""
    if not 0 <= index < len(leaves):
        raise LogFault(f"Leaf {index} is not in a tree of {len(leaves)}. They count from 0.")
    if len(leaves) == 1:
        return ()
    split = _split(len(leaves))
    left, right = leaves[:split], leaves[split:]
    if index < split:
        return (*inclusion_proof(left, index), tree_root(right))
    return (*inclusion_proof(right, index - split), tree_root(left))


def consistency_proof(leaves: Sequence[bytes], first: int) -> Proof:
    """Return the hashes that show a tree of the `first` leaves inside this one; raises `LogFault` outside 1..size."""
    if not 1 <= first <= len(leaves):
        raise LogFault(f"A tree of {first} can't be shown inside one of {len(leaves)}. Ask for 1 to {len(leaves)}.")
    return _subproof(leaves, first, whole=True)


def _subproof(leaves: Sequence[bytes], first: int, *, whole: bool) -> Proof:
    if first == len(leaves):
        return () if whole else (tree_root(leaves),)
    split = _split(len(leaves))
    left, right = leaves[:split], leaves[split:]
    if first <= split:
        return (*_subproof(left, first, whole=whole), tree_root(right))
    return (*_subproof(right, first - split, whole=False), tree_root(left))


def is_included(leaf: bytes, index: int, size: int, proof: Sequence[bytes], root: bytes) -> bool:
    """Say whether `proof` leads from `leaf` at `index` (from 0) to `root` of a tree of `size` (RFC 9162 §2.1.3.2)."""
    if not 0 <= index < size or not _are_hashes(leaf, root, *proof):
        return False
    at, last, found = index, size - 1, leaf
    for one in proof:
        if last == 0:
            return False
        found = node_hash(one, found) if at & 1 or at == last else node_hash(found, one)
        if not at & 1:
            at, last = _up_to_a_right_turn(at, last) if at == last else (at, last)
        at, last = at >> 1, last >> 1
    return last == 0 and found == root


def _up_to_a_right_turn(at: int, last: int) -> tuple[int, int]:
    while at and not at & 1:
        at, last = at >> 1, last >> 1
    return at, last


def is_consistent(first: int, second: int, first_root: bytes, second_root: bytes, proof: Sequence[bytes]) -> bool:
    """Say whether `proof` shows that the tree of `second` leaves only added to that of `first` (RFC 9162 §2.1.4.2)."""
    if not 1 <= first <= second or not _are_hashes(first_root, second_root, *proof):
        return False
    if first == second:
        return not proof and first_root == second_root
    path = (first_root, *proof) if first & (first - 1) == 0 else tuple(proof)
    if not path:
        return False
    return _climb(first - 1, second - 1, path) == (first_root, second_root)


def _climb(at: int, last: int, path: Proof) -> tuple[bytes, bytes] | None:
    while at & 1:
        at, last = at >> 1, last >> 1
    older = newer = path[0]
    for one in path[1:]:
        if last == 0:
            return None
        if at & 1 or at == last:
            older, newer = node_hash(one, older), node_hash(one, newer)
            at, last = _up_to_a_right_turn(at, last) if not at & 1 else (at, last)
        else:
            newer = node_hash(newer, one)
        at, last = at >> 1, last >> 1
    return (older, newer) if last == 0 else None


def _are_hashes(*found: bytes) -> bool:
    return all(len(one) == HASH_BYTES for one in found)
