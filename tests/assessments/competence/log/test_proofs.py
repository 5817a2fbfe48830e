"""Proofs of inclusion and consistency, against the vectors published for RFC 6962 and by trying each other one."""

import pytest

from assessments.competence.log.errors import LogFault
from assessments.competence.log.proofs import consistency_proof, inclusion_proof, is_consistent, is_included
from assessments.competence.log.tree import tree_root

# Published with the reference implementation of RFC 6962: leaf 5 (from 0) in the tree of 8; the tree of 6 in that of 8.
INCLUSION_5_OF_8 = [
    "bc1a0643b12e4d2d7c77918f44e0f4f79a838b6cf9ec5b5c283e1f4d88599e6b",
    "ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0",
    "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
]
CONSISTENCY_6_TO_8 = [
    "0ebc5d3437fbe2db158b9f126a1d118e308181031d0a949f8dededebc558ef6a",
    "ca854ea128ed050b41b35ffc1b87b8eb2bde461e9e3b5596ece6b9d5975a0ae0",
    "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
]


def test_the_published_inclusion_proof(leaves):
    proof = inclusion_proof(leaves, 5)
    assert [one.hex() for one in proof] == INCLUSION_5_OF_8
    assert is_included(leaves[5], 5, 8, proof, tree_root(leaves))


def test_the_published_consistency_proof(leaves):
    proof = consistency_proof(leaves, 6)
    assert [one.hex() for one in proof] == CONSISTENCY_6_TO_8
    assert is_consistent(6, 8, tree_root(leaves[:6]), tree_root(leaves), proof)


def test_every_leaf_is_proved_in_every_tree_and_at_no_other_place(leaves):
    for size in range(1, 9):
        root = tree_root(leaves[:size])
        for index in range(size):
            proof = inclusion_proof(leaves[:size], index)
            assert [one for one in range(9) if is_included(leaves[index], one, size, proof, root)] == [index]


def test_every_tree_is_proved_inside_every_later_one(leaves):
    for second in range(1, 9):
        for first in range(1, second + 1):
            proof, old, new = (
                consistency_proof(leaves[:second], first),
                tree_root(leaves[:first]),
                tree_root(leaves[:second]),
            )
            assert is_consistent(first, second, old, new, proof)
            assert first == second or not is_consistent(first, second, new, new, proof)
            assert first == second or not is_consistent(first, second, old, old, proof)


def test_an_inclusion_proof_with_a_fault_is_refused(leaves):
    root, proof = tree_root(leaves), inclusion_proof(leaves, 5)
    flipped = (bytes([proof[0][0] ^ 1]) + proof[0][1:], *proof[1:])
    tried = [
        (leaves[5], 5, 0, proof, root),
        (leaves[5], -1, 8, proof, root),
        (leaves[5], 8, 8, proof, root),
        (leaves[5], 5, 8, (), root),
        (leaves[5], 5, 8, proof[:-1], root),
        (leaves[5], 5, 8, (*proof, proof[0]), root),
        (leaves[5], 5, 8, flipped, root),
        (leaves[5], 5, 8, (b"", *proof), root),
        (b"", 5, 8, proof, root),
        (leaves[5], 5, 8, proof, b""),
        (leaves[4], 5, 8, proof, root),
        (leaves[0], 0, 1, (leaves[1],), leaves[0]),
    ]
    assert [is_included(*one) for one in tried] == [False] * len(tried)


def test_a_consistency_proof_with_a_fault_is_refused(leaves):
    old, new, proof = tree_root(leaves[:6]), tree_root(leaves), consistency_proof(leaves, 6)
    tried = [
        (0, 8, old, new, proof),
        (8, 6, new, old, proof),
        (6, 8, old, new, ()),
        (6, 8, old, new, proof[:-1]),
        (6, 8, old, new, (*proof, proof[0])),
        (6, 8, old, new, (b"", *proof)),
        (6, 8, b"", new, proof),
        (6, 8, old, b"", proof),
        (6, 8, new, old, proof),
        (7, 8, old, new, proof),
        (8, 8, new, new, (old,)),
        (8, 8, old, new, ()),
        (4, 8, tree_root(leaves[:4]), new, ()),
    ]
    assert [is_consistent(*one) for one in tried] == [False] * len(tried)


@pytest.mark.parametrize("index", [-1, 8])
def test_a_leaf_outside_the_tree_has_no_proof(leaves, index):
    with pytest.raises(LogFault, match=f"Leaf {index} is not in a tree of 8. They count from 0."):
        inclusion_proof(leaves, index)


@pytest.mark.parametrize("first", [0, 9])
def test_a_tree_that_is_not_inside_has_no_proof(leaves, first):
    with pytest.raises(LogFault, match=f"A tree of {first} can't be shown inside one of 8. Ask for 1 to 8."):
        consistency_proof(leaves, first)
