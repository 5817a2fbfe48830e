"""What a signature covers, and what changed between two readings of it."""

from collections.abc import Iterator, Mapping
from dataclasses import asdict, dataclass, fields
from hashlib import sha256
from typing import Any

import rfc8785

TEXTS = ("school", "person", "signer", "element", "requirement_digest")
LISTS = ("asks", "decisions", "counted")


@dataclass(frozen=True, slots=True)
class Deed:
    """Exactly what is shown to who decides: opaque ids, whole numbers and sentences, never a name.

    `evidence` is every piece on the element with its outcome, counted or not, sorted; `counted` the ids that count;
    `decisions` the ids of what was decided so far.
    """

    school: str
    person: str
    signer: str
    element: str
    requirement_version: int
    requirement_digest: str
    asks: tuple[str, ...]
    evidence: tuple[tuple[str, str], ...]
    decisions: tuple[str, ...]
    counted: tuple[str, ...]

    @staticmethod
    def of(value: Any) -> "Deed":
        """Return the deed that `as_json` gave as `value`; raises `ValueError` with a sentence for anything else."""
        names = [field.name for field in fields(Deed)]
        if not isinstance(value, Mapping) or set(value) != set(names):
            raise ValueError(f"A deed holds exactly {', '.join(names)}.")
        for name in TEXTS:
            _refuse(name, isinstance(value[name], str), "is text")
        _refuse("requirement_version", type(value["requirement_version"]) is int, "is a whole number")
        for name in LISTS:
            _refuse(name, _is_texts(value[name]), "is a list of texts")
        pairs = value["evidence"]
        fit = isinstance(pairs, list | tuple) and all(_is_texts(one) and len(one) == 2 for one in pairs)
        _refuse("evidence", fit, "is a list of pairs, an id and an outcome")
        lists = {name: tuple(value[name]) for name in LISTS}
        return Deed(**{**value, **lists, "evidence": tuple((one, outcome) for one, outcome in pairs)})

    def as_json(self) -> dict[str, Any]:
        """Return the deed as JSON holds it: texts, whole numbers and lists."""
        held = asdict(self)
        lists = {name: list(held[name]) for name in LISTS}
        return {**held, **lists, "evidence": [list(pair) for pair in self.evidence]}

    def digest(self) -> str:
        """Return the SHA-256, in hex, of the deed in canonical JSON (RFC 8785)."""
        return sha256(rfc8785.dumps(self.as_json())).hexdigest()


@dataclass(frozen=True, slots=True)
class Change:
    """One difference between what was shown and what stands now; `id` is the evidence or decision it speaks of.

    `why` is one of new_evidence, gone, rearranged, rejudged (from outcome `before` to `after`), counts,
    no_longer_counts, decided, requirement (from version `before` to `after`), someone_else (`id` says which of person,
    signer, school or element).
    """

    why: str
    id: str = ""
    before: str = ""
    after: str = ""


def changes(old: Deed, new: Deed) -> tuple[Change, ...]:
    """Return every difference between two deeds; nothing exactly where their digests are the same."""
    found = tuple(_changes(old, new))
    return found if found or old == new else (Change("rearranged"),)


def _changes(old: Deed, new: Deed) -> Iterator[Change]:
    for name in ("school", "person", "signer", "element"):
        if getattr(old, name) != getattr(new, name):
            yield Change("someone_else", name, getattr(old, name), getattr(new, name))
    if _requirement(old) != _requirement(new):
        yield Change("requirement", "", str(old.requirement_version), str(new.requirement_version))
    before, after = dict(old.evidence), dict(new.evidence)
    yield from (Change("new_evidence", one, "", outcome) for one, outcome in new.evidence if one not in before)
    yield from (Change("gone", one, outcome) for one, outcome in old.evidence if one not in after)
    both = [one for one in after if one in before]
    yield from (Change("rejudged", one, before[one], after[one]) for one in both if before[one] != after[one])
    yield from (Change("counts", one) for one in new.counted if one not in old.counted and one in before)
    yield from (Change("no_longer_counts", one) for one in old.counted if one not in new.counted and one in after)
    yield from (Change("decided", one) for one in new.decisions if one not in old.decisions)
    yield from (Change("gone", one) for one in old.decisions if one not in new.decisions)


def _requirement(deed: Deed) -> tuple[object, ...]:
    return deed.requirement_version, deed.requirement_digest, deed.asks


def _is_texts(value: object) -> bool:
    return isinstance(value, list | tuple) and all(isinstance(one, str) for one in value)


def _refuse(name: str, fit: bool, right: str) -> None:
    if not fit:
        raise ValueError(f"{name} of a deed {right}.")
