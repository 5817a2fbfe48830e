"""Pictures that may be shown: hung under an address that tells nothing, found again, measured when first rendered.

What is not hung can't be rendered: an address names a row, never a scene.
"""

import base64
import json
import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from django.db import connection, transaction
from django.urls import reverse
from django.utils.crypto import salted_hmac
from django.utils.translation import gettext as _

from courses.darkroom import Exposure, Lamp, Made, darkroom
from courses.errors import Refused
from courses.models import HungPicture, Person
from courses.models.picture import Purpose
from courses.pictures import LIGHTS, RENDERER, Scene
from courses.pictures.lookalikes import CLEAN, SHADES, STRIPS, lookalike
from courses.pictures.plan_scenes import LAMPS
from courses.shipped import catalogue, pictures

SALT = "courses.gallery"
MOST_LAMPS = 12
MOST_TRIED = 2000
"""So many pictures of tried plans hang; of more, those hung longest ago are taken down."""
OUTSIDE = 0.5
"""So far beyond the edge of the picture, in fractions of it, a lamp may stand."""


class PictureRefused(Refused):
    """A picture that can't be hung."""


@dataclass(frozen=True, slots=True)
class Place:
    """One place of the lamp: its number from 1, the address of the picture there, and where it stands in words."""

    number: int
    url: str
    words: str


@dataclass(frozen=True, slots=True)
class Frame:
    """A picture as a page shows it, with every place of its lamp; `beside` stand under the same lamp."""

    code: str
    alt: str
    caption: str
    width: int
    height: int
    places: tuple[Place, ...]
    current: int
    beside: tuple["Frame", ...] = ()

    @property
    def all(self) -> tuple["Frame", ...]:
        """Return this picture and those beside it."""
        return (self, *self.beside)

    @property
    def key(self) -> str:
        """Return what tells its controls from those of another picture on the page."""
        return self.code[:8]

    @property
    def count(self) -> int:
        """Return how many places the lamp has."""
        return len(self.places)

    @property
    def here(self) -> Place:
        """Return the place where the lamp stands at first."""
        return self.places[self.current - 1]


def hang(
    scene: Mapping[str, Any],
    light: str,
    lamps: Sequence[Lamp],
    purpose: str,
    owner: Person | None = None,
) -> HungPicture:
    """Hang a picture, or return the one that hangs; a picture of an attempt (`paper`) has its owner.

    Raises SceneRefused for a scene and PictureRefused for lamps or a light that can't be rendered.
    """
    row = sheet(scene, light, lamps, purpose, owner)
    found = {"scene": row.scene, "light": light, "lamps": row.lamps, "renderer": RENDERER, "purpose": purpose}
    return HungPicture.objects.get_or_create(code=row.code, defaults={**found, "owner": owner})[0]


def sheet(
    scene: Mapping[str, Any], light: str, lamps: Sequence[Lamp], purpose: str, owner: Person | None = None
) -> HungPicture:
    """Return the row of a picture as it is hung, without asking the database whether it hangs."""
    plain = Scene.of(scene, catalogue()).as_json()
    places = [[float(x), float(y)] for x, y in lamps]
    if light not in LIGHTS:
        raise PictureRefused(f"There is no light {light!r}. Use one of {', '.join(LIGHTS)}.")
    if not 1 <= len(places) <= MOST_LAMPS or not all(_stands(place) for place in places):
        raise PictureRefused(f"A picture has 1 to {MOST_LAMPS} lamp places, each two fractions near the picture.")
    told = json.dumps([plain, light, places, RENDERER, owner.pk if owner else 0], sort_keys=True, allow_nan=False)
    code = base64.urlsafe_b64encode(salted_hmac(SALT, told, algorithm="sha256").digest()[:24]).decode()
    return HungPicture(
        code=code, scene=plain, light=light, lamps=places, renderer=RENDERER, purpose=purpose, owner=owner
    )


def _stands(place: list[float]) -> bool:
    return all(math.isfinite(one) and -OUTSIDE <= one <= 1 + OUTSIDE for one in place)


def hang_shipped() -> int:
    """Hang every picture of the lessons and of the look-alikes; return how many were new."""
    rows = {row.code: row for row in [*_of_lessons(), *_of_lookalikes()]}
    hung = set(HungPicture.objects.filter(code__in=rows).values_list("code", flat=True))
    new = [row for code, row in rows.items() if code not in hung]
    HungPicture.objects.bulk_create(new, ignore_conflicts=True)
    return len(new)


def _of_lessons() -> Iterator[HungPicture]:
    for one in pictures().values():
        yield sheet(one.scene, one.light, one.lamps, Purpose.LESSON)


def _of_lookalikes() -> Iterator[HungPicture]:
    for kind in lookalike_kinds():
        for shade in SHADES:
            for light in LIGHTS:
                yield lookalike_sheet(kind, shade, light)


def lookalike_sheet(kind: str, shade: str, light: str) -> HungPicture:
    """Return the row of one panel of the look-alikes."""
    return sheet(lookalike(kind, shade), light, STRIPS[light], Purpose.LOOKALIKE)


def tried_sheets(scenes: Sequence[Mapping[str, Any]], light: str) -> list[HungPicture]:
    """Return the rows of a panel before and after a plan, all under one lamp, hung or not."""
    return [sheet(scene, light, LAMPS[light], Purpose.TRIED) for scene in scenes]


def are_hung(rows: Sequence[HungPicture]) -> bool:
    """Say whether every one of these pictures hangs."""
    codes = {row.code for row in rows}
    return HungPicture.objects.filter(code__in=codes).count() == len(codes)


def hang_all(rows: Sequence[HungPicture]) -> None:
    """Hang those of these pictures that don't hang yet."""
    HungPicture.objects.bulk_create(rows, ignore_conflicts=True)


@transaction.atomic
def hang_tried(rows: Sequence[HungPicture]) -> None:
    """Hang the pictures of a tried plan, which somebody asked to see; take down what hangs longest beyond the most."""
    hang_all(rows)
    tried = HungPicture.objects.filter(purpose=Purpose.TRIED).order_by("-pk")
    if last := tried.values_list("pk", flat=True)[MOST_TRIED:].first():
        tried.filter(pk__lte=last).delete()


def lookalike_kinds() -> tuple[str, ...]:
    """Return what may stand on the page of look-alikes: every kind, and the clean panel."""
    return (*catalogue().kinds, CLEAN)


def lesson_frame(codes: Sequence[str]) -> Frame:
    """Return the pictures of these codes as a lesson shows them, side by side under one lamp."""
    listed = [pictures()[code] for code in codes]
    rows = [sheet(one.scene, one.light, one.lamps, Purpose.LESSON) for one in listed]
    return together([frame(row, one.alt, one.caption) for row, one in zip(rows, listed, strict=True)])


def together(frames: Sequence[Frame]) -> Frame:
    """Return the first of these with the others beside it; all have the same lamp places."""
    return replace(frames[0], beside=tuple(frames[1:]))


def frame(row: HungPicture, alt: str, caption: str, current: int | None = None) -> Frame:
    """Return a picture for a page; the lamp stands at `current` (from 1), in the middle unless told otherwise."""
    width, height = row.scene["size"]
    words = place_words(row.lamps)
    places = tuple(Place(number, address(row, number), said) for number, said in enumerate(words, start=1))
    return Frame(row.code, alt, caption, width, height, places, current or (len(places) + 1) // 2)


def address(row: HungPicture, number: int) -> str:
    """Return where the picture of one lamp place is found."""
    return reverse("picture", args=[row.code, number])


def place_words(lamps: Sequence[Sequence[float]]) -> tuple[str, ...]:
    """Return where the lamp stands at each place, in a word or two while there are five at most, else by number."""
    rows: Mapping[int, tuple[str, ...]] = {
        1: (_("middle"),),
        2: (_("left"), _("right")),
        3: (_("left"), _("middle"), _("right")),
        4: (_("far left"), _("left"), _("right"), _("far right")),
        5: (_("far left"), _("left"), _("middle"), _("right"), _("far right")),
    }
    across = [place[0] for place in lamps]
    if len(lamps) in rows and across == sorted(across):
        return rows[len(lamps)]
    return tuple(str(number) for number in range(1, len(lamps) + 1))


def shown(row: HungPicture, number: int) -> Made | None:
    """Return the picture of lamp place `number`, made now if it must be; None where the row has no such place.

    Raises DarkroomBusy.
    """
    if not 1 <= number <= len(row.lamps):
        return None
    exposure = _exposure(row, number)
    made = darkroom().find(exposure.name)
    if made is None and not connection.in_atomic_block:
        connection.close()  # whoever waits for a picture leaves the database to the others
    if made is None or exposure.measure:
        made = darkroom().picture(exposure)
    gather_measured(row)
    return made


def _exposure(row: HungPicture, number: int) -> Exposure:
    x, y = row.lamps[number - 1]
    return Exposure(row.scene, row.light, (x, y), row.renderer, measure=row.purpose == Purpose.PAPER)


def gather(codes: Iterable[str]) -> list[HungPicture]:
    """Keep with each picture of an attempt what was measured in it by now; called when the attempt closes."""
    return [gather_measured(row) for row in HungPicture.objects.filter(code__in=list(codes))]


def gather_measured(row: HungPicture) -> HungPicture:
    """Keep with the row of an attempt what was measured in its frames meanwhile; the first measure stands."""
    numbers = [number for number in range(1, len(row.lamps) + 1) if str(number) not in row.measured]
    if row.purpose != Purpose.PAPER or not numbers:
        return row
    seen = {str(number): darkroom().seen(_exposure(row, number).name) for number in numbers}
    new = {number: found for number, found in seen.items() if found is not None}
    return _keep_measured(row, new) if new else row


@transaction.atomic
def _keep_measured(row: HungPicture, new: Mapping[str, Any]) -> HungPicture:
    held = HungPicture.objects.select_for_update().get(pk=row.pk)
    held.measured = {**new, **held.measured}
    held.save(update_fields=["measured"])
    return held
