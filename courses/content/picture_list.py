"""The pictures that lessons show, by code: what is rendered, under which light, and what there is to see.

A file of pictures has ``[[picture]]`` with ``code``, ``light``, ``lamps``, ``alt``, ``caption`` and
``[picture.scene]``, the panel with its marks. A code is never reused and never taken away: lessons that were read
keep naming it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from math import isfinite

from courses.content.tables import Table, read_table
from courses.trade.defects import LIGHTS

LAMPS_AT_MOST = 12
_CODE = re.compile(r"[a-z][a-z0-9_]*\Z")
_SHOWN_AT_MOST = 3
_OUTSIDE = 0.5

Lamp = tuple[float, float]


@dataclass(frozen=True, slots=True)
class ListedPicture:
    """A picture of the list.

    ``scene`` is the panel as written: plain values, checked by the renderer, which stand from ``line`` of the file on.
    ``lamps`` are the places of the lamp's reflection in fractions of the picture: one is a still, several are a lamp
    that moves. ``alt`` says in words what is to be seen, ``caption`` what it is.
    """

    code: str
    scene: Mapping[str, object]
    light: str
    lamps: tuple[Lamp, ...]
    alt: str
    caption: str
    line: int

    @property
    def moves(self) -> bool:
        """Whether its lamp can be moved."""
        return len(self.lamps) > 1


def read_pictures(text: str, file: str) -> Mapping[str, ListedPicture]:
    """The pictures written in ``text`` by code, in the order of the file; raises `FileRefused` at what is wrong.

    >>> listed = read_pictures('''[[picture]]
    ... code = "swirl_navy"
    ... light = "point"
    ... lamps = [[0.3, 0.4], [0.7, 0.4]]
    ... alt = "Fine bright lines close to rings round the lamp."
    ... caption = "Swirls on navy."
    ... [picture.scene]
    ... substrate = "clear_coat"
    ... colour = "navy"''', "pictures.toml")
    >>> listed["swirl_navy"].moves, listed["swirl_navy"].scene["colour"]
    (True, 'navy')
    """
    pictures: dict[str, ListedPicture] = {}
    for entry in read_table(text, file).only("picture").some("picture"):
        picture = _picture(entry, pictures)
        pictures[picture.code] = picture
    return pictures


def why_not_together(pictures: tuple[ListedPicture, ...]) -> str:
    """Why these can't stand side by side under one lamp, as a sentence; empty where they can.

    >>> why_not_together(())
    'name one to three pictures.'
    """
    if not 1 <= len(pictures) <= _SHOWN_AT_MOST:
        return "name one to three pictures."
    first = pictures[0]
    for other in pictures[1:]:
        if other.lamps != first.lamps:
            return f"{first.code} and {other.code} stand under one lamp, but their lamps are not the same."
    if len({picture.code for picture in pictures}) < len(pictures):
        return "a picture stands here twice; name each once."
    return ""


def _picture(entry: Table, before: Mapping[str, ListedPicture]) -> ListedPicture:
    entry.only("code", "scene", "light", "lamps", "alt", "caption")
    code = entry.new("code", before)
    if not _CODE.match(code):
        raise entry.refuse("code", f"{code!r} is no code; write small letters, digits and _, such as swirl_navy.")
    scene = entry.table("scene")
    if not scene.values:
        raise entry.refuse("scene", "this is missing; write [picture.scene] with substrate, colour and defects.")
    return ListedPicture(
        code=code,
        scene=scene.values,
        light=entry.one_of("light", LIGHTS),
        lamps=_lamps(entry),
        alt=entry.text("alt"),
        caption=entry.text("caption"),
        line=scene.line,
    )


def _lamps(entry: Table) -> tuple[Lamp, ...]:
    written = entry.values.get("lamps")
    if not isinstance(written, list) or not 1 <= len(written) <= LAMPS_AT_MOST:
        sentence = f"give one to {LAMPS_AT_MOST} places of the lamp; write lamps = [[0.5, 0.42]]."
        raise entry.refuse("lamps", sentence)
    lamps: list[Lamp] = []
    for place in written:
        lamp = _lamp(entry, place)
        if lamp in lamps:
            raise entry.refuse("lamps", f"{place} stands twice in the list.")
        lamps.append(lamp)
    return tuple(lamps)


def _lamp(entry: Table, place: object) -> Lamp:
    if not isinstance(place, list) or [type(one) in (int, float) for one in place] != [True, True]:
        raise entry.refuse("lamps", f"{place!r} is no place of a lamp; write two numbers, such as [0.5, 0.42].")
    x, y = (float(one) for one in place)
    if not all(isfinite(one) and -_OUTSIDE <= one <= 1 + _OUTSIDE for one in (x, y)):
        raise entry.refuse("lamps", f"{place} is too far outside the picture; its corners are [0, 0] and [1, 1].")
    return x, y
