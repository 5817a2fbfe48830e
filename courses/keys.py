"""What is secret to this installation: files in `var/`, readable by their owner alone."""

import os
import secrets
from pathlib import Path

from cryptography.hazmat.primitives import serialization
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

OWNER_ONLY = 0o600


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
        keep_secret(var / "keys" / f"{secrets.token_hex(4)}.pem", _new_signing_key())


def _new_signing_key() -> str:
    pem = Ed25519PrivateKey.generate().private_bytes(
        encoding=serialization.Encoding.PEM,
        format=serialization.PrivateFormat.PKCS8,
        encryption_algorithm=serialization.NoEncryption(),
    )
    return pem.decode("ascii")
