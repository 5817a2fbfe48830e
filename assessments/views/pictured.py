"""The pictures of an attempt: each with its task, shown once what it waits for was asked, or read in words."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from assessments.journey import facts_of
from assessments.models import Answer, Attempt
from assessments.scenarios.draw import pictures_of, shop_of
from assessments.scenarios.shown import Shop, Shown, observed
from assessments.scenarios.spec import Picture
from courses.gallery import Frame, frame
from courses.models import HungPicture


@dataclass(frozen=True, slots=True)
class Pinned:
    """A picture on a page, with what a neutral observer notes of it where it is read in words."""

    name: str
    frame: Frame
    observations: tuple[Any, ...]


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


def _observed(attempt: Attempt, shown: Shown, shop: Shop) -> tuple[Any, ...]:
    return observed(shown, shop) if attempt.described else ()


def truth_of(attempt: Attempt, marked: Any) -> dict[str, Any] | None:
    """Return the marked picture of a judged attempt with what was to be marked: each cell and what became of it."""
    spec, zoned = attempt.scenario.spec, attempt.scenario.spec.the("zones")
    found = [one for picture, one in _pinned(attempt, spec.pictures) if zoned and picture.name == zoned.picture]
    return {"pinned": found[0], **marked} if found else None
