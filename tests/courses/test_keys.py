"""What is secret to an installation."""

import stat

from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
from cryptography.hazmat.primitives.serialization import load_pem_private_key

from courses.keys import keep_secret, make_keys


def test_keys_are_made_once_and_only_their_owner_reads_them(tmp_path):
    var = tmp_path / "var"
    make_keys(var)
    files = [var / "secret.key", *(var / "keys").iterdir()]
    before = [file.read_bytes() for file in files]
    make_keys(var)
    assert [file.read_bytes() for file in files] == before
    assert [stat.S_IMODE(file.stat().st_mode) for file in files] == [0o600, 0o600]
    assert stat.S_IMODE(var.stat().st_mode) == 0o700
    assert isinstance(load_pem_private_key(before[1], password=None), Ed25519PrivateKey)


def test_a_secret_that_stands_is_left_alone(tmp_path):
    keep_secret(tmp_path / "one", "first")
    keep_secret(tmp_path / "one", "second")
    assert (tmp_path / "one").read_text() == "first"
