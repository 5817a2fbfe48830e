"""What is on record of a person, as the judgement takes it: evidence and decisions, opaque ids for everything else."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime

KINDS = ("scenario", "paper", "bench", "prod", "oral", "job", "log")
"""Attempt, paper of several scenarios, bench practical, photographs with readings, oral, job on a hull, job log."""
MODES = ("practice", "paper")
"""How an attempt was made; empty for kinds that know no modes."""
DECIDED = ("signed", "declined", "more_asked", "withdrawn")
"""Kinds of decision."""
SATISFACTORY = "satisfactory"


@dataclass(frozen=True, slots=True)
class Evidence:
    """One piece of evidence, with the elements it speaks of and how it came out.

    `kind` is one of `KINDS`, `at` the moment it happened, with a zone; `witness` holds the letters of who saw it: T own
    teacher, X examiner, W workplace, several joined ("WX"). `replaces` is the id of the same as judged before.
    """

    id: str
    kind: str
    mode: str
    scenario: str
    version: int
    elements: tuple[str, ...]
    outcome: str
    at: datetime
    substrate: str = ""
    witness: str = ""
    tags: tuple[str, ...] = ()
    replaces: str | None = None


@dataclass(frozen=True, slots=True)
class Decision:
    """What was decided on an element: `kind` is one of `DECIDED`, `until` the end of a signature, `by` an opaque id."""

    id: str
    kind: str
    element: str
    by: str
    at: datetime
    until: datetime | None = None
    withdraws: str | None = None


def as_judged_now(evidence: Iterable[Evidence]) -> tuple[Evidence, ...]:
    """Return the evidence without what was judged again, oldest first; of one moment, in the order of their ids."""
    held = tuple(evidence)
    replaced = {one.replaces for one in held}
    return tuple(sorted((one for one in held if one.id not in replaced), key=lambda one: (one.at, one.id)))


def first_of(evidence: Iterable[Evidence]) -> Mapping[str, str]:
    """Return for each id the id under which the same evidence was first filed; itself where it was judged once."""
    before = {one.id: one.replaces for one in evidence}
    found = {}
    for start in before:
        here, seen = start, {start}
        while (earlier := before.get(here)) in before and earlier not in seen:
            here = str(earlier)
            seen.add(here)
        found[start] = here
    return found
