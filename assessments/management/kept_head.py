"""A head that left the house: how it is printed, and how it is read again."""

from assessments.competence.log import Head, PublicKeys, stamp
from assessments.models import TreeHead
from courses.management.door import DoorError, read_json

KEYS = {"key_id": str, "root": str, "signature": str, "signed_at": str, "size": int}


def printed(row: TreeHead) -> dict[str, object]:
    """Return a head as it is printed, with everything it takes to check it but the public key."""
    return {
        "size": row.size,
        "root": row.root,
        "signed_at": stamp(row.signed_at),
        "key_id": row.key_id,
        "signature": row.signature,
    }


def kept_head(source: str, keys: PublicKeys) -> Head:
    """Return the head in a file, its signature checked; a `DoorError` says what is wrong with it."""
    said = read_json(source)
    if not isinstance(said, dict) or set(said) != set(KEYS):
        raise DoorError(f"{source}: a head has {', '.join(sorted(KEYS))}, as log_head prints it.")
    for key, kind in KEYS.items():
        if type(said[key]) is not kind:
            raise DoorError(f"{source}: {key} is {said[key]!r}, not as log_head prints it.")
    head = Head(said["size"], said["root"], said["signed_at"], said["key_id"])
    if head.key_id not in keys:
        raise DoorError(f"{source}: the key {head.key_id} never signed here; it is not among the public keys.")
    if not head.is_signed(said["signature"], keys[head.key_id]):
        raise DoorError(f"{source}: its signature is not that of the key {head.key_id}. Use it as it was printed.")
    return head
