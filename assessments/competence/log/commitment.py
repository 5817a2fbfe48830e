"""Commitments: what shows later that a value was this one, and tells nothing to whoever lacks the salt."""

import hashlib
import hmac


def committed(salt: str, label: str, value: str) -> str:
    """Return HMAC-SHA-256 (RFC 2104) of the label, a zero byte and the value under the salt (hex), in 64 hex digits.

    >>> committed("00" * 32, "name", "Tara") == committed("00" * 32, "reason", "Tara")
    False
    """
    return hmac.new(bytes.fromhex(salt), f"{label}\0{value}".encode(), hashlib.sha256).hexdigest()
