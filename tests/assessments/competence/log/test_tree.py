"""The tree, against the vectors published for RFC 6962 and RFC 9162."""

import hashlib

import pytest

from assessments.competence.log.errors import LogFault
from assessments.competence.log.tree import EMPTY_ROOT, grown, leaf_hash, node_hash, root_of, tree_root

# The roots over the first 1 to 8 inputs (conftest.py), as the reference implementation of RFC 6962 publishes them.
ROOTS = [
    "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d",
    "fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125",
    "aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77",
    "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
    "4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4",
    "76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef",
    "ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c",
    "5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328",
]


def test_an_empty_tree_has_the_hash_of_nothing():
    # RFC 9162 §2.1.1: the hash of an empty list is that of an empty string (FIPS 180-4 example value).
    assert EMPTY_ROOT.hex() == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"
    assert (root_of(()), tree_root([])) == (EMPTY_ROOT, EMPTY_ROOT)


@pytest.mark.parametrize("size", range(1, 9))
def test_the_root_is_the_published_one(leaves, size):
    assert tree_root(leaves[:size]).hex() == ROOTS[size - 1]


def test_growing_leaf_by_leaf_comes_to_the_published_roots(leaves):
    peaks, found = (), []
    for size, leaf in enumerate(leaves):
        peaks = grown(size, peaks, leaf)
        found.append(root_of(peaks).hex())
    assert found == ROOTS


def test_the_root_of_many_is_the_same_either_way():
    peaks, leaves = (), [leaf_hash(bytes([one % 251])) for one in range(300)]
    for size, leaf in enumerate(leaves):
        peaks = grown(size, peaks, leaf)
        assert root_of(peaks) == tree_root(leaves[: size + 1])
    assert len(peaks) == (300).bit_count()


def test_a_leaf_is_never_a_node():
    left, right = leaf_hash(b"a"), leaf_hash(b"b")
    assert node_hash(left, right) == hashlib.sha256(b"\x01" + left + right).digest()
    assert node_hash(left, right) != leaf_hash(left + right)


@pytest.mark.parametrize(("size", "peaks"), [(1, ()), (0, (b"a" * 32,)), (1, (b"short",)), (2, (b"a" * 32, b"b" * 32))])
def test_peaks_that_do_not_fit_the_size_are_refused(size, peaks):
    with pytest.raises(LogFault, match=f"A tree of {size} has {size.bit_count()} peaks of 32 bytes, not {len(peaks)}"):
        grown(size, peaks, b"c" * 32)
