"""Secrets that travel in a link."""

import hashlib

from courses.tokens import digest_of, new_token


def test_two_tokens_differ_and_fit_a_link():
    first, second = new_token(), new_token()
    assert first != second
    assert all(sign.isalnum() or sign in "-_" for sign in first)


def test_the_digest_is_sha_256():
    """FIPS 180-4, the digest of 'abc' (example of the standard, from memory)."""
    assert digest_of("abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    assert digest_of("abc") == hashlib.sha256(b"abc").hexdigest()
