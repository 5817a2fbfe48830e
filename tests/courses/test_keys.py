"""What is secret to an installation."""

import stat

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
from cryptography.hazmat.primitives.serialization import load_pem_private_key

from courses import keys
from courses.keys import KeyMissing, keep_secret, make_keys, public_keys, secret_of, signing_key


def test_keys_are_made_once_and_only_their_owner_reads_them(tmp_path):
    var = tmp_path / "var"
    make_keys(var)
    files = [var / "secret.key", *sorted((var / "keys").iterdir())]
    before = [file.read_bytes() for file in files]
    make_keys(var)
    assert [file.read_bytes() for file in files] == before
    assert [file.suffix for file in files] == [".key", ".pem", ".pub"]
    assert [stat.S_IMODE(file.stat().st_mode) for file in files] == [0o600] * 3
    assert stat.S_IMODE(var.stat().st_mode) == 0o700
    assert isinstance(load_pem_private_key(before[1], password=None), Ed25519PrivateKey)


def test_a_secret_that_stands_is_left_alone(tmp_path):
    keep_secret(tmp_path / "one", "first")
    keep_secret(tmp_path / "one", "second")
    assert (tmp_path / "one").read_text() == "first"


def test_a_public_half_that_is_missing_is_made_from_the_secret_one(tmp_path):
    make_keys(tmp_path)
    (public,) = (tmp_path / "keys").glob("*.pub")
    before = public.read_bytes()
    public.unlink()
    make_keys(tmp_path)
    assert public.read_bytes() == before


def test_the_only_key_signs_and_its_public_half_checks_it(tmp_path):
    make_keys(tmp_path)
    key_id, key = signing_key(tmp_path)
    assert signing_key(tmp_path, key_id) == (key_id, key)
    public_keys(tmp_path)[key_id].verify(key.sign(b"words"), b"words")
    assert keys.raw_public(key) == public_keys(tmp_path)[key_id].public_bytes_raw().hex()


def test_a_key_that_is_forgotten_leaves_its_public_half(tmp_path):
    make_keys(tmp_path)
    old, _key = signing_key(tmp_path)
    new = keys.make_signing_key(tmp_path)
    (tmp_path / "keys" / f"{old}.pub").unlink()
    assert keys.forget_signing_keys(tmp_path, but=new) == [old]
    assert signing_key(tmp_path)[0] == new
    assert sorted(public_keys(tmp_path)) == sorted([old, new])


def test_without_a_key_a_sentence_says_what_to_do(tmp_path):
    with pytest.raises(KeyMissing) as refused:
        signing_key(tmp_path)
    assert str(refused.value) == (
        f"There is no signing key in {tmp_path.name}/keys. Run 'python manage.py setup' once."
    )


def test_two_keys_and_none_named_are_refused(tmp_path):
    one, two = sorted([keys.make_signing_key(tmp_path), keys.make_signing_key(tmp_path)])
    with pytest.raises(KeyMissing, match=f"There are 2 signing keys in {tmp_path.name}/keys: {one}, {two}. Leave one."):
        signing_key(tmp_path)


def test_a_key_that_is_asked_for_and_gone_is_refused(tmp_path):
    make_keys(tmp_path)
    with pytest.raises(KeyMissing, match="The key beef, which signs the record, is not in .*/keys. Put it back."):
        signing_key(tmp_path, "beef")


@pytest.mark.parametrize("name", ["ab.pem", "ab.pub"])
def test_a_file_that_is_no_key_is_refused(tmp_path, name):
    keep_secret(tmp_path / "keys" / name, "nonsense")
    with pytest.raises(KeyMissing, match=f"{name} in keys is no Ed25519 key. Put the file back from a backup."):
        signing_key(tmp_path) if name.endswith("pem") else public_keys(tmp_path)


@pytest.mark.parametrize("suffix", ["pem", "pub"])
def test_a_key_of_another_kind_is_refused(tmp_path, suffix):
    from cryptography.hazmat.primitives import serialization
    from cryptography.hazmat.primitives.asymmetric.x25519 import X25519PrivateKey

    key, pem = X25519PrivateKey.generate(), serialization.Encoding.PEM
    secret = key.private_bytes(pem, serialization.PrivateFormat.PKCS8, serialization.NoEncryption())
    public = key.public_key().public_bytes(pem, serialization.PublicFormat.SubjectPublicKeyInfo)
    keep_secret(tmp_path / "keys" / f"ab.{suffix}", (secret if suffix == "pem" else public).decode())
    with pytest.raises(KeyMissing, match=f"ab.{suffix} in keys is no Ed25519 key"):
        signing_key(tmp_path) if suffix == "pem" else public_keys(tmp_path)


def test_the_secret_is_the_kept_one_unless_the_environment_gives_one(tmp_path, monkeypatch):
    monkeypatch.delenv("RAKING_SECRET_KEY", raising=False)
    assert secret_of(tmp_path) == ""
    make_keys(tmp_path)
    assert secret_of(tmp_path) == (tmp_path / "secret.key").read_text().strip()
    monkeypatch.setenv("RAKING_SECRET_KEY", "x" * 40)
    assert secret_of(tmp_path) == ""
