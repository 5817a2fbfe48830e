"""Secrets that travel in a link: the link carries the token, the row only its digest."""

import hashlib
import secrets


def new_token() -> str:
    """Return 192 bits of chance, safe in a link."""
    return secrets.token_urlsafe(24)


def digest_of(token: str) -> str:
    """Return what is kept of `token`."""
    return hashlib.sha256(token.encode()).hexdigest()
