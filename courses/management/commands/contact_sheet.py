"""Draws every kind of defect on three colours in the light that shows it and in one that doesn't: `contact_sheet`."""

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from django.conf import settings
from django.core.management.base import CommandParser

from courses.management.door import Door, DoorError
from courses.pictures import Panel, Scene
from courses.pictures.contrast import ON_CLEAR
from courses.pictures.sheet import Tile, sheet
from courses.shipped import catalogue
from courses.trade.errors import offer

COLOURS = ("white", "grey", "black")
"""A light, a middling and a dark panel."""
PER_SHEET = 7
TILE = (360, 240)
SIZE = (720, 480)
REGION = (0.16, 0.14, 0.84, 0.86)


class Command(Door):
    """Draws the sheets of `docs/pictures`."""

    help = "Draw every kind of defect on white, grey and black in its right and in a wrong light, as sheets to look at."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("kinds", nargs="*", help="only these kinds; all unless given")
        parser.add_argument("--out", help="the folder to write to; docs/pictures unless given")

    def answer(self, **options: Any) -> object:
        kinds = _known(options["kinds"]) or list(catalogue().kinds)
        folder = Path(options["out"] or Path(settings.BASE_DIR) / "docs" / "pictures")
        folder.mkdir(parents=True, exist_ok=True)
        return {"sheets": [_drawn(folder, number, part) for number, part in _parts(kinds)]}


def _known(kinds: Sequence[str]) -> list[str]:
    for kind in kinds:
        if kind not in catalogue().kinds:
            raise DoorError(f"There is no kind {kind!r}; {offer(kind, catalogue().kinds)}")
    return list(kinds)


def _parts(kinds: list[str]) -> Iterator[tuple[int, list[str]]]:
    for start in range(0, len(kinds), PER_SHEET):
        yield start // PER_SHEET + 1, kinds[start : start + PER_SHEET]


def _drawn(folder: Path, number: int, kinds: list[str]) -> dict[str, object]:
    path = folder / f"sheet-{number}.webp"
    data = sheet(
        [[_tile(kind, colour, light) for colour in COLOURS for light in _lights(kind)] for kind in kinds], TILE
    )
    path.write_bytes(data)
    return {"file": path.name, "bytes": len(data), "kinds": kinds}


def _lights(kind: str) -> tuple[str, str]:
    """The light that shows a kind, and the one that shows it least."""
    known = catalogue().kinds[kind]
    return known.best, (known.hidden or known.weak)[-1]


def _tile(kind: str, colour: str, light: str) -> Tile:
    scene = Scene.of(
        {
            "substrate": "clear_coat" if kind in ON_CLEAR else "gel_coat",
            "colour": colour,
            "size": list(SIZE),
            "seed": 11,
            "defects": [{"kind": kind, "severity": 0.6, "region": {"box": list(REGION)}}],
        },
        catalogue(),
    )
    shot = Panel.build(scene, light).shoot()
    return Tile(f"{catalogue().kinds[kind].called}, {colour}, {light}", shot.rgb)
