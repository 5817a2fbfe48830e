"""Measures how well every kind of defect shows and writes `fixtures/trade/contrast.toml`: `measure_pictures`."""

from collections.abc import Sequence
from pathlib import Path
from time import monotonic
from typing import Any

from django.conf import settings
from django.core.management.base import CommandParser

from courses.management.door import Door, DoorError
from courses.pictures import LIGHTS, RENDERER
from courses.pictures.contrast import COLOURS, STEPS, Contrast, Entry, Meter, read_contrast, written
from courses.shipped import CONTRAST, FIXTURES, catalogue
from courses.trade.errors import offer

Entries = dict[tuple[str, str, str], tuple[Entry, ...]]


class Command(Door):
    """Measures the contrast of every kind, colour, light and severity step."""

    help = "Measure how well every kind of defect shows, and write the table that draws read. Takes about ten minutes."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("kinds", nargs="*", help="measure only these and keep the rest; all unless given")
        parser.add_argument("--out", help="the table to write; the shipped one unless given")

    def answer(self, **options: Any) -> object:
        out = Path(options["out"] or Path(settings.BASE_DIR) / FIXTURES / "trade" / CONTRAST)
        kinds = _known(options["kinds"]) or list(catalogue().kinds)
        began = monotonic()
        meter = Meter(catalogue())
        kept = _kept(out) if options["kinds"] else {}
        entries: Entries = dict(kept)
        for kind in kinds:
            entries |= _measured(meter, kind)
            self.stderr.write(f"{kind}, {monotonic() - began:.0f} s")
        ordered = {key: entries[key] for kind in catalogue().kinds for key in entries if key[0] == kind}
        table = Contrast(RENDERER, STEPS, meter.lightness(), ordered)
        try:
            out.write_text(written(table), encoding="utf-8")
        except OSError as wrong:
            raise DoorError(
                f"{out} cannot be written: {wrong.strerror}; name a file in a folder that is there."
            ) from wrong
        return {
            "renderer": RENDERER,
            "seconds": round(monotonic() - began),
            "kinds": {kind: _said(table, kind) for kind in kinds},
        }


def _known(kinds: Sequence[str]) -> list[str]:
    for kind in kinds:
        if kind not in catalogue().kinds:
            raise DoorError(f"There is no kind {kind!r}; {offer(kind, catalogue().kinds)}")
    return list(kinds)


def _kept(out: Path) -> Entries:
    """What the table held before, where it was made by this renderer."""
    if not out.exists():
        return {}
    table = read_contrast(out.read_text(encoding="utf-8"), out.name)
    if (table.renderer, table.steps) != (RENDERER, STEPS):
        raise DoorError(f"{out.name} was made by renderer {table.renderer}; measure every kind anew, naming none.")
    return dict(table.entries)


def _measured(meter: Meter, kind: str) -> Entries:
    return {
        (kind, colour, light): tuple(meter.entry(kind, colour, light, severity) for severity in STEPS)
        for colour in COLOURS
        for light in LIGHTS
    }


def _said(table: Contrast, kind: str) -> dict[str, list[str]]:
    """In which lights a kind may be asked for at half its severity, by colour."""
    return {
        colour: [light for light in LIGHTS if table.of(kind, colour, light, 0.5).askable] for colour in table.colours
    }
