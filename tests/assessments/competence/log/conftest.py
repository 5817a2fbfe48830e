"""The tree of RFC 6962, as its reference implementation publishes it."""

import pytest

from assessments.competence.log.tree import leaf_hash

# The inputs of the reference implementation of RFC 6962 (the log that RFC 9162 describes), in hex.
INPUTS = ["", "00", "10", "2021", "3031", "40414243", "5051525354555657", "606162636465666768696a6b6c6d6e6f"]


@pytest.fixture
def leaves():
    """The hashes of the eight published leaves."""
    return [leaf_hash(bytes.fromhex(one)) for one in INPUTS]
