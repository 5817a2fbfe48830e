"""What is secret to this installation: files in `var/`, readable by their owner alone.

A key that signs the record has two files in `var/keys`: `<id>.pem`, secret, and `<id>.pub`, kept for ever to check
what it signed.
"""

import os
import secrets
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path

from cryptography.exceptions import UnsupportedAlgorithm
from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey, Ed25519PublicKey

from courses.errors import Refused

OWNER_ONLY = 0o600


class KeyMissing(Refused):
    """A key that is needed and isn't there, or can't be read."""


def keep_secret(path: Path, text: str) -> None:
    """Write `text` to a new file that only its owner may read; an existing file is left as it is."""
    if path.exists():
        return
    path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, OWNER_ONLY)
    with os.fdopen(handle, "w", encoding="utf-8") as file:
        file.write(text)


def make_keys(var: Path) -> None:
    """Make the site's secret and the key that signs the record, where they are missing."""
    var.mkdir(mode=0o700, parents=True, exist_ok=True)
    keep_secret(var / "secret.key", secrets.token_urlsafe(48) + "\n")
    if not list((var / "keys").glob("*.pem")):
        make_signing_key(var)
    for path in (var / "keys").glob("*.pem"):
        keep_secret(path.with_suffix(".pub"), _public_text(_private(path)))


def secret_of(var: Path) -> str:
    """Return the site's secret as it is kept in `var`, or nothing where the environment gives it."""
    kept = var / "secret.key"
    if os.environ.get("RAKING_SECRET_KEY") or not kept.is_file():
        return ""
    return kept.read_text(encoding="ascii").strip()


def make_signing_key(var: Path) -> str:
    """Make another key that can sign the record, and return its id."""
    key_id, key = secrets.token_hex(4), Ed25519PrivateKey.generate()
    keep_secret(var / "keys" / f"{key_id}.pub", _public_text(key))
    keep_secret(var / "keys" / f"{key_id}.pem", _private_text(key))
    return key_id


def signing_key(var: Path, key_id: str = "") -> tuple[str, Ed25519PrivateKey]:
    """Return the key of this id, or the only one there is, with its id."""
    if key_id:
        path = var / "keys" / f"{key_id}.pem"
        if not path.is_file():
            raise KeyMissing(f"The key {key_id}, which signs the record, is not in {_folder(var)}. Put it back.")
        return key_id, _private(path)
    found = sorted((var / "keys").glob("*.pem"))
    if not found:
        raise KeyMissing(f"There is no signing key in {_folder(var)}. Run 'python manage.py setup' once.")
    if len(found) > 1:
        names = ", ".join(path.stem for path in found)
        raise KeyMissing(f"There are {len(found)} signing keys in {_folder(var)}: {names}. Leave one.")
    return found[0].stem, _private(found[0])


def forget_signing_keys(var: Path, *, but: str) -> list[str]:
    """Remove every secret signing key but one; return the ids. Their public halves stay."""
    gone = [path for path in sorted((var / "keys").glob("*.pem")) if path.stem != but]
    for path in gone:
        keep_secret(path.with_suffix(".pub"), _public_text(_private(path)))
        path.unlink()
    return [path.stem for path in gone]


def public_keys(var: Path) -> Mapping[str, Ed25519PublicKey]:
    """Return every key that ever signed here, by its id."""
    return {path.stem: _public(path) for path in sorted((var / "keys").glob("*.pub"))}


def raw_public(key: Ed25519PrivateKey) -> str:
    """Return the public half of a key, 64 hex digits."""
    return key.public_key().public_bytes_raw().hex()


def _folder(var: Path) -> str:
    return f"{var.name}/keys"


def _private(path: Path) -> Ed25519PrivateKey:
    return _private_at(path, path.stat().st_mtime_ns)


@lru_cache(maxsize=8)
def _private_at(path: Path, _written: int) -> Ed25519PrivateKey:
    try:
        key = serialization.load_pem_private_key(path.read_bytes(), password=None)
    except (ValueError, TypeError, UnsupportedAlgorithm) as wrong:
        raise _unreadable(path) from wrong
    if not isinstance(key, Ed25519PrivateKey):
        raise _unreadable(path)
    return key


def _public(path: Path) -> Ed25519PublicKey:
    try:
        key = serialization.load_pem_public_key(path.read_bytes())
    except (ValueError, UnsupportedAlgorithm) as wrong:
        raise _unreadable(path) from wrong
    if not isinstance(key, Ed25519PublicKey):
        raise _unreadable(path)
    return key


def _unreadable(path: Path) -> KeyMissing:
    return KeyMissing(f"{path.name} in {path.parent.name} is no Ed25519 key. Put the file back from a backup.")


def _private_text(key: Ed25519PrivateKey) -> str:
    pem = key.private_bytes(
        encoding=serialization.Encoding.PEM,
        format=serialization.PrivateFormat.PKCS8,
        encryption_algorithm=serialization.NoEncryption(),
    )
    return pem.decode("ascii")


def _public_text(key: Ed25519PrivateKey) -> str:
    pem = key.public_key().public_bytes(
        encoding=serialization.Encoding.PEM, format=serialization.PublicFormat.SubjectPublicKeyInfo
    )
    return pem.decode("ascii")
