"""What stands behind a scenario in code: two small pure functions."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.spec import Kind


@dataclass(frozen=True, slots=True)
class Thrown:
    """A try that a condition threw away, and which condition, in words that finish "thrown away because"."""

    why: str


@dataclass(frozen=True, slots=True)
class Sketch:
    """One try at the facts of a kind, and the key worked from facts that were kept.

    ``draw`` returns values for the fields of the facts; ``key`` returns a value for every task that isn't text, and
    for every field beside the answer. Neither reads anything but its arguments.
    """

    draw: Callable[[Chance, Kind], Mapping[str, object] | Thrown]
    key: Callable[[Record], Mapping[str, object]]
