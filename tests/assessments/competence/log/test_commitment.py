"""Commitments, against the published vectors of HMAC-SHA-256."""

import hashlib
import hmac

import pytest

from assessments.competence.log.commitment import committed

SALT = "0b" * 20


def test_the_library_commits_as_the_standard_does():
    # RFC 4231 §4.2, test case 1.
    found = hmac.new(bytes.fromhex(SALT), b"Hi There", hashlib.sha256).hexdigest()
    assert found == "b0344c61d8db38535ca8afceaf0bf12b881dc200c9833da726e9376c2e32cff7"


def test_label_and_value_are_committed_to_with_a_zero_byte_between():
    assert committed(SALT, "name", "Tära") == hmac.digest(bytes.fromhex(SALT), b"name\0T\xc3\xa4ra", "sha256").hex()


@pytest.mark.parametrize(
    "other", [("0c" * 20, "name", "a"), (SALT, "reason", "a"), (SALT, "name", "b"), (SALT, "", "a")]
)
def test_another_salt_label_or_value_is_another_commitment(other):
    assert committed(*other) != committed(SALT, "name", "a")
