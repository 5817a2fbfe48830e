"""An entry of the log: what its body says, and the hash it is known by."""

from collections.abc import Mapping
from dataclasses import dataclass

from assessments.competence.log.canonical import canonical, read
from assessments.competence.log.errors import LogFault
from assessments.competence.log.tree import leaf_hash

START = "0" * 64
"""What the first entry of a stream follows."""
KEYS = ("at", "kind", "prev", "seq", "stream", "stream_seq", "what")


@dataclass(frozen=True, slots=True)
class Entry:
    """One thing that happened. `seq` counts from 1 over all, `stream_seq` from 1 in its stream.

    `prev` is the hash of the entry before it in its stream, 64 hex digits; `at` is a stamp.
    """

    seq: int
    stream: str
    stream_seq: int
    kind: str
    at: str
    prev: str
    what: Mapping[str, object]

    @property
    def body(self) -> str:
        """Return the canonical text over everything the entry says; raises `LogFault` for what it cannot hold."""
        return canonical({key: getattr(self, key) for key in KEYS})

    @property
    def hash(self) -> str:
        """Return the leaf hash of the body, 64 hex digits."""
        return hash_of(self.body)

    @classmethod
    def of(cls, body: str) -> "Entry":
        """Return the entry a body says; raises `LogFault` where it can't be read or says too much or too little."""
        said = read(body)
        if tuple(sorted(said)) != KEYS:
            raise LogFault(f"It says {', '.join(sorted(said)) or 'nothing'}; an entry says {', '.join(KEYS)}.")
        for key in KEYS:
            _refuse_kind(key, said[key])
        return cls(**said)  # type: ignore[arg-type]


def hash_of(body: str) -> str:
    """Return the leaf hash of a body, 64 hex digits."""
    return leaf_hash(body.encode("utf-8", "surrogatepass")).hex()


def follows(body: str, leaf_hash: str, **place: object) -> bool:
    """Say whether a body is what its hash says, and says itself that it stands at `place` (seq, stream, prev ...)."""
    try:
        entry = Entry.of(body)
    except LogFault:
        return False
    return hash_of(body) == leaf_hash and all(getattr(entry, key) == value for key, value in place.items())


def _refuse_kind(key: str, value: object) -> None:
    wanted = {"seq": int, "stream_seq": int, "what": dict}.get(key, str)
    if not isinstance(value, wanted):
        raise LogFault(f"Its {key} is {value!r}.")
