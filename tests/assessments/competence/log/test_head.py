"""Heads and the signature on them, against RFC 8032."""

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey, Ed25519PublicKey

from assessments.competence.log.head import Head, handover, is_signed, sign

# RFC 8032 §7.1, TEST 1 (the empty message) and TEST 3 (two bytes): secret, public, message, signature.
VECTORS = [
    ("9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
     "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
     "",
     "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655"
     "141438e7a100b"),
    ("c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
     "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
     "af82",
     "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc02"
     "7beceea1ec40a"),
]  # fmt: skip
ORDER = 2**252 + 27742317777372353535851937790883648493  # L, RFC 8032 §5.1
HEAD = Head(3, "ab" * 32, "2026-04-14T14:05:00.000000Z", "k1")


@pytest.fixture
def key():
    return Ed25519PrivateKey.from_private_bytes(bytes.fromhex(VECTORS[0][0]))


@pytest.mark.parametrize(("secret", "public", "message", "signature"), VECTORS)
def test_the_library_signs_as_the_standard_does(secret, public, message, signature):
    key = Ed25519PrivateKey.from_private_bytes(bytes.fromhex(secret))
    assert key.public_key().public_bytes_raw().hex() == public
    assert key.sign(bytes.fromhex(message)).hex() == signature


def test_our_signature_of_the_empty_text_is_the_published_one(key):
    assert sign(key, "") == VECTORS[0][3]
    assert is_signed(key.public_key(), "", VECTORS[0][3])


def test_one_flipped_bit_anywhere_is_no_signature(key):
    signature = bytes.fromhex(sign(key, HEAD.text))
    for bit in range(len(signature) * 8):
        flipped = bytearray(signature)
        flipped[bit // 8] ^= 1 << bit % 8
        assert not HEAD.is_signed(flipped.hex(), key.public_key())


def test_a_signature_whose_s_is_not_below_the_order_is_refused(key):
    # RFC 8032 §5.1.7: decoding S as an integer outside 0 <= S < L makes the signature invalid.
    raw = bytes.fromhex(VECTORS[0][3])
    same = int.from_bytes(raw[32:], "little") + ORDER
    assert not is_signed(key.public_key(), "", (raw[:32] + same.to_bytes(32, "little")).hex())


def test_the_head_that_is_signed_is_canonical_and_no_other_head(key):
    assert HEAD.text == f'{{"key_id":"k1","root":"{"ab" * 32}","signed_at":"2026-04-14T14:05:00.000000Z","size":3}}'
    signature = HEAD.signed_by(key)
    assert HEAD.is_signed(signature, key.public_key())
    others = [
        Head(4, HEAD.root, HEAD.signed_at, HEAD.key_id),
        Head(3, "ac" * 32, HEAD.signed_at, HEAD.key_id),
        Head(3, HEAD.root, "2026-04-14T14:05:00.000001Z", HEAD.key_id),
        Head(3, HEAD.root, HEAD.signed_at, "k2"),
    ]
    assert [other.is_signed(signature, key.public_key()) for other in others] == [False] * 4


def test_another_key_did_not_sign_it(key):
    other = Ed25519PublicKey.from_public_bytes(bytes.fromhex(VECTORS[1][1]))
    assert not HEAD.is_signed(HEAD.signed_by(key), other)


@pytest.mark.parametrize("signature", ["", "zz", "é", "00" * 63, "00" * 65])
def test_what_is_no_signature_is_refused_quietly(key, signature):
    assert not HEAD.is_signed(signature, key.public_key())


def test_a_signature_has_one_spelling(key):
    signature = HEAD.signed_by(key)
    assert not HEAD.is_signed(signature.upper(), key.public_key())
    assert not HEAD.is_signed(f" {signature}", key.public_key())


def test_a_handover_names_both_keys_and_the_new_one_whole():
    assert handover("k1", "k2", "ab") == '{"new":"k2","old":"k1","public":"ab"}'
