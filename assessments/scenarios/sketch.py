"""What stands behind a scenario in code: small pure functions."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.shown import Shown
from assessments.scenarios.spec import Kind


@dataclass(frozen=True, slots=True)
class Thrown:
    """A try that a condition threw away, and which condition, in words that finish "thrown away because"."""

    why: str


def no_pictures(_facts: Record) -> tuple[Shown, ...]:
    """Return the pictures of a scenario that has none."""
    return ()


def no_model(_facts: Record, _key: Mapping[str, object], _answer: Mapping[str, object]) -> Mapping[str, object]:
    """Return what is worked from the answer where nothing is."""
    return {}


def no_surface(_facts: Record) -> Mapping[str, object]:
    """Return the surface that plans are worked on where a scenario asks for none."""
    return {}


@dataclass(frozen=True, slots=True)
class Sketch:
    """One try at the facts of a kind, the key worked from facts that were kept, the pictures they are seen in.

    ``draw`` returns values for the fields of the facts; ``key`` a value for every task that is neither text nor
    zones, and for every field beside the answer; ``pictures`` what is to be seen; ``model`` what follows from facts,
    key and answer together; ``surface`` the panel that a plan is worked on, as the door ``simulate`` takes it. None of
    them reads anything but its arguments.
    """

    draw: Callable[[Chance, Kind], Mapping[str, object] | Thrown]
    key: Callable[[Record], Mapping[str, object]]
    pictures: Callable[[Record], tuple[Shown, ...]] = no_pictures
    model: Callable[[Record, Mapping[str, object], Mapping[str, object]], Mapping[str, object]] = no_model
    surface: Callable[[Record], Mapping[str, object]] = no_surface
