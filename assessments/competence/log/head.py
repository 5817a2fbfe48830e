"""A head: how many entries there are, what they come to, and when and by which key that was signed (RFC 8032)."""

from collections.abc import Mapping
from dataclasses import dataclass

from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey, Ed25519PublicKey

from assessments.competence.log.canonical import canonical

PublicKeys = Mapping[str, Ed25519PublicKey]


@dataclass(frozen=True, slots=True)
class Head:
    """What is signed: the size and root (64 hex digits) of the tree, the stamp, and the id of the key."""

    size: int
    root: str
    signed_at: str
    key_id: str

    @property
    def text(self) -> str:
        """Return the canonical text that is signed."""
        return canonical({"key_id": self.key_id, "root": self.root, "signed_at": self.signed_at, "size": self.size})

    def signed_by(self, key: Ed25519PrivateKey) -> str:
        """Return the signature of the text, 128 hex digits."""
        return sign(key, self.text)

    def is_signed(self, signature: str, key: Ed25519PublicKey) -> bool:
        """Say whether `signature` (hex) is the key's own over this head."""
        return is_signed(key, self.text, signature)


def sign(key: Ed25519PrivateKey, text: str) -> str:
    """Return the Ed25519 signature of a text, 128 hex digits."""
    return key.sign(text.encode("utf-8")).hex()


def is_signed(key: Ed25519PublicKey, text: str, signature: str) -> bool:
    """Say whether `signature` (128 small hex digits) is the key's own over `text`; anything else is none."""
    try:
        raw = bytes.fromhex(signature)
        key.verify(raw, text.encode("utf-8"))
    except (ValueError, InvalidSignature):
        return False
    return raw.hex() == signature


def handover(old: str, new: str, public: str) -> str:
    """Return the text that both keys sign when `new` takes over from `old`; `public` is the new key, 64 hex digits."""
    return canonical({"new": new, "old": old, "public": public})
