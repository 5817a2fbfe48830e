"""The pictures of an attempt: each with its task, shown once what it waits for was asked, or read in words."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from assessments.journey import answers_of, facts_of, key_for
from assessments.marking.bound import bound
from assessments.models import Answer, Attempt
from assessments.scenarios.draw import pictures_of, shop_of
from assessments.scenarios.shown import Shop, Shown, observed
from assessments.scenarios.spec import Picture
from courses.gallery import Frame, frame
from courses.models import HungPicture
from courses.pictures import CELLS
from courses.pictures.described import Observation


@dataclass(frozen=True, slots=True)
class Pinned:
    """A picture on a page, with what a neutral observer notes of it where it is read in words."""

    name: str
    frame: Frame
    observations: tuple[Observation, ...]


def pinned_to(attempt: Attempt, given: Mapping[str, Answer]) -> dict[str, list[Pinned]]:
    """Return by task, "" for the story, the pictures that may be seen now."""
    asked = _asked(attempt, given)
    found: dict[str, list[Pinned]] = {}
    for one in _pinned(attempt, [one for one in attempt.scenario.spec.pictures if not one.after or one.after in asked]):
        found.setdefault(one[0].task, []).append(one[1])
    return found


def _asked(attempt: Attempt, given: Mapping[str, Answer]) -> list[str]:
    task = attempt.scenario.spec.the("ask")
    answer = given.get(task.id) if task else None
    return list(answer.value or []) if answer else []


def _pinned(attempt: Attempt, pictures: Iterable[Picture]) -> Iterable[tuple[Picture, Pinned]]:
    wanted = [one for one in pictures if one.name in attempt.pictures]
    if not wanted:
        return
    spec, facts = attempt.scenario.spec, facts_of(attempt)
    rows = {row.code: row for row in HungPicture.objects.filter(code__in=attempt.pictures.values())}
    shown = pictures_of(spec, facts)
    for one in wanted:
        row = rows.get(attempt.pictures[one.name])
        if row is not None:
            words = _observed(attempt, shown[one.name], shop_of(spec))
            yield one, Pinned(one.name, frame(row, one.alt, one.caption), words)


def _observed(attempt: Attempt, shown: Shown, shop: Shop) -> tuple[Observation, ...]:
    return observed(shown, shop) if attempt.described else ()


@dataclass(frozen=True, slots=True)
class Cell:
    """One cell of a judged picture: what was asked of it, and what was done.

    `fate` is found, missed, sound (marked, though nothing is there), free (may be marked, needn't) or "".
    """

    name: str
    fate: str


@dataclass(frozen=True, slots=True)
class Truth:
    """A marked picture with what was to be marked in it."""

    pinned: Pinned
    cells: tuple[Cell, ...]

    def of(self, fate: str) -> list[str]:
        """Return the names of the cells with that fate."""
        return [cell.name for cell in self.cells if cell.fate == fate]

    @property
    def found(self) -> list[str]:
        """Return the cells that were asked for and marked."""
        return self.of("found")

    @property
    def missed(self) -> list[str]:
        """Return the cells that were asked for and left out."""
        return self.of("missed")

    @property
    def sound(self) -> list[str]:
        """Return the cells that were marked with nothing in or beside them."""
        return self.of("sound")


def truth_of(attempt: Attempt) -> Truth | None:
    """Return the picture that was marked with its truth; None where there is none, or while the attempt is open."""
    spec = attempt.scenario.spec
    zoned = spec.the("zones")
    if zoned is None:
        return None
    found = [one for picture, one in _pinned(attempt, spec.pictures) if picture.name == zoned.picture]
    key = key_for(attempt)
    given = answers_of(attempt).get(zoned.id)
    marked = bound(spec, facts_of(attempt), {zoned.id: given})["cells"] if given is not None else []
    cells = tuple(Cell(name, _fate(name, marked, key)) for name in CELLS)
    return Truth(found[0], cells) if found else None


def _fate(cell: str, marked: Any, key: Mapping[str, Any]) -> str:
    if cell in key["required"]:
        return "found" if cell in marked else "missed"
    if cell in key["allowed"]:
        return "free"
    return "sound" if cell in marked else ""


def seen_in(attempt: Attempt) -> list[Pinned]:
    """Return every picture of a closed attempt, asked for or not."""
    return [one for _picture, one in _pinned(attempt, attempt.scenario.spec.pictures)]
