"""How well each kind of defect shows: measured on small pictures, written as a table, read where draws are made."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from types import MappingProxyType
from typing import Final

import numpy as np

from courses.pictures.arrays import Floats
from courses.pictures.colour import lightness
from courses.pictures.measure import contrast_of
from courses.pictures.panel import LAMP, Panel
from courses.pictures.scene import LIGHTS, Scene
from courses.pictures.truth import masks
from courses.trade.errors import ImpossibleChoice, OutOfRange, offer
from courses.trade.surfaces import Catalogue
from courses.trade.tables import Entry as Table
from courses.trade.tables import tables_in

__all__ = ["COLOURS", "SIZE", "STEPS", "Contrast", "Entry", "Meter", "read_contrast", "written"]

COLOURS: Final = ("white", "grey", "red", "navy", "black")
"""The colours that are measured; any other stands with the one nearest in lightness."""
STEPS: Final = (0.3, 0.6, 1.0)
"""The severities that are measured."""
SIZE: Final = (480, 320)
"""Pixels of a measured picture. Thin marks show less here than at 960 by 640."""
PANEL: Final = 41
"""The number of the panel that is measured."""
DIRECTION: Final = 20.0
"""Which way a measured defect runs, degrees."""
BOX: Final = (0.18, 0.16, 0.82, 0.84)
"""The region of a measured defect, fractions of the picture."""
ASKABLE: Final = (5.0, 1.5)
"""From which CNR and rms difference of lightness a kind may be asked for. Our own choice, untested on people."""
EASY: Final = 40.0
"""Above this CNR a kind can't be missed. Our own choice."""
UNSEEN: Final = 2.0
"""Below this CNR a kind can't be told from the panel. Our own choice."""
ON_CLEAR: Final = ("swirl", "hologram", "da_haze", "haze", "orange_peel", "run", "die_back", "high_spot", "pigtail")
"""Kinds measured on clear coat; all others are measured on gel coat."""
_HEADER = "measured"
_LIGHTNESS = "lightness"


@dataclass(frozen=True, slots=True)
class Entry:
    """How a defect shows: ``cnr`` of its strongest twentieth, and the root mean square of its change in L*.

    >>> Entry(cnr=8.0, rms_dl=2.7).askable, Entry(cnr=0.5, rms_dl=0.1).unseen
    (True, True)
    """

    cnr: float
    rms_dl: float

    @property
    def askable(self) -> bool:
        """Whether a trainee may be asked for it."""
        return self.cnr >= ASKABLE[0] and self.rms_dl >= ASKABLE[1]

    @property
    def easy(self) -> bool:
        """Whether it can't be missed."""
        return self.cnr > EASY

    @property
    def unseen(self) -> bool:
        """Whether it can't be told from the clean panel."""
        return self.cnr < UNSEEN


@dataclass(frozen=True)
class Contrast:
    """The measured table: entries at ``steps`` of severity by kind, colour and light; made by ``renderer``.

    ``lightness`` is L* of every colour of the palette.
    """

    renderer: int
    steps: tuple[float, ...]
    lightness: Mapping[str, float]
    entries: Mapping[tuple[str, str, str], tuple[Entry, ...]]

    @cached_property
    def kinds(self) -> tuple[str, ...]:
        """The kinds that were measured, in the order of the table."""
        return tuple(dict.fromkeys(kind for kind, _, _ in self.entries))

    @cached_property
    def colours(self) -> tuple[str, ...]:
        """The colours that were measured, in the order of the table."""
        return tuple(dict.fromkeys(colour for _, colour, _ in self.entries))

    def of(self, kind: str, colour: str, light: str, severity: float) -> Entry:
        """How a ``kind`` of this ``severity`` (0 to 1) shows on a ``colour`` (a name or #rrggbb) in a ``light``.

        Between two steps it runs straight; at severity 0 there is nothing to see. A colour that was not measured stands
        with the nearest in lightness. `ImpossibleChoice` for an unknown kind, colour or light, `OutOfRange` for a
        severity beyond.
        """
        if not 0 <= severity <= 1:
            raise OutOfRange("Severity runs from 0 to 1.", "severity")
        if kind not in self.kinds:
            raise ImpossibleChoice(f"{kind[:40]!r} was not measured; {offer(kind[:40], self.kinds)}", "kind")
        if light not in LIGHTS:
            raise ImpossibleChoice(f"There is no light {light[:40]!r}; {offer(light[:40], LIGHTS)}", "light")
        entries = self.entries[kind, self.measured_colour(colour), light]
        at = (0.0, *self.steps)
        cnr = np.interp(severity, at, (0.0, *(entry.cnr for entry in entries)))
        rms_dl = np.interp(severity, at, (0.0, *(entry.rms_dl for entry in entries)))
        return Entry(float(cnr), float(rms_dl))

    def measured_colour(self, colour: str) -> str:
        """The measured colour that stands for ``colour``: itself, or the nearest in lightness."""
        if colour in self.colours:
            return colour
        own = self.lightness.get(colour)
        if own is None:
            own = _lightness_of(_rgb(colour, tuple(self.lightness)))
        return min(self.colours, key=lambda other: abs(self.lightness[other] - own))


def _rgb(colour: str, known: Sequence[str]) -> tuple[int, ...]:
    """Red, green and blue of #rrggbb."""
    try:
        rgb = tuple(bytes.fromhex(colour[1:])) if colour.startswith("#") else ()
    except ValueError:
        rgb = ()
    if len(rgb) != 3:
        raise ImpossibleChoice(f"There is no colour {colour[:40]!r}; {offer(colour[:40], known)}", "colour")
    return rgb


def _lightness_of(rgb: Sequence[int]) -> float:
    return float(lightness(np.array(rgb)))


class Meter:
    """Measures kinds of defects on one small panel, colour by colour; clean panels are kept from one to the next."""

    def __init__(self, trade: Catalogue) -> None:
        """Take the catalogue of the trade that scenes are read with."""
        self._trade = trade
        self._clean: dict[tuple[str, str, str], Floats] = {}

    def entry(self, kind: str, colour: str, light: str, severity: float) -> Entry:
        """Render a ``kind`` of a ``severity`` and the same panel without it, and return how it shows."""
        substrate = "clear_coat" if kind in ON_CLEAR else "gel_coat"
        defect = {"kind": kind, "severity": severity, "region": {"box": list(BOX)}, "direction": DIRECTION}
        scene = self._scene(substrate, colour, [defect])
        shown = lightness(Panel.build(scene, light).shoot(LAMP).rgb)
        return Entry(*contrast_of(shown, self._bare(substrate, colour, light), masks(scene, light)[0]))

    def _bare(self, substrate: str, colour: str, light: str) -> Floats:
        key = (substrate, colour, light)
        if key not in self._clean:
            panel = Panel.build(self._scene(substrate, colour, []), light)
            self._clean[key] = lightness(panel.shoot(LAMP).rgb)
        return self._clean[key]

    def _scene(self, substrate: str, colour: str, defects: list[dict[str, object]]) -> Scene:
        raw = {"substrate": substrate, "colour": colour, "size": list(SIZE), "seed": PANEL, "defects": defects}
        return Scene.of(raw, self._trade)

    def lightness(self) -> Mapping[str, float]:
        """Return L* of every colour of the palette."""
        return {colour: _lightness_of(self._trade.rgb(colour)) for colour in self._trade.palette}


def written(contrast: Contrast) -> str:
    """The table as the text of ``contrast.toml``; `read_contrast` reads it back."""
    return "\n".join(_lines(contrast)) + "\n"


def _lines(contrast: Contrast) -> Iterator[str]:
    yield "# How well each kind of defect shows: CNR and rms change of L* at the steps of severity, by kind, colour"
    yield "# and light. Written by `manage.py measure_pictures`, not by hand."
    yield ""
    yield f"[{_HEADER}]"
    yield f"renderer = {contrast.renderer}"
    yield f"size = {list(SIZE)}"
    yield f"panel = {PANEL}"
    yield f"steps = {list(contrast.steps)}"
    yield ""
    yield f"[{_LIGHTNESS}]"
    for colour, value in contrast.lightness.items():
        yield f"{colour} = {value:.1f}"
    for kind in contrast.kinds:
        for colour in contrast.colours:
            yield from ("", f"[{kind}.{colour}]")
            for light in LIGHTS:
                entries = contrast.entries[kind, colour, light]
                cnr = ", ".join(f"{entry.cnr:.2f}" for entry in entries)
                rms_dl = ", ".join(f"{entry.rms_dl:.2f}" for entry in entries)
                yield f"{light} = {{ cnr = [{cnr}], rms_dl = [{rms_dl}] }}"


def read_contrast(text: str, file: str) -> Contrast:
    """The table in a TOML ``text``; `TableRefused` with ``file``, line and key where something is wrong."""
    tables = {key: Table.at(key, value, text, file) for key, value in tables_in(text, file).items()}
    header = tables.pop(_HEADER, Table({}, f"{file}, {_HEADER}"))
    header.only("renderer", "size", "panel", "steps")
    steps = header.numbers("steps", len(STEPS))
    light_of = tables.pop(_LIGHTNESS, Table({}, f"{file}, {_LIGHTNESS}"))
    palette = {colour: light_of.number(colour) for colour in light_of.values}
    entries: dict[tuple[str, str, str], tuple[Entry, ...]] = {}
    for kind, table in tables.items():
        for colour in table.values:
            if colour not in palette:
                raise table.refused(f"{colour} has no lightness; {offer(colour, palette)}")
            own = table.table(colour).only(*LIGHTS)
            entries |= {(kind, colour, light): _entries(own.table(light), len(steps)) for light in LIGHTS}
    return Contrast(int(header.number("renderer")), steps, MappingProxyType(palette), MappingProxyType(entries))


def _entries(table: Table, count: int) -> tuple[Entry, ...]:
    table.only("cnr", "rms_dl")
    pairs = zip(table.numbers("cnr", count), table.numbers("rms_dl", count), strict=True)
    return tuple(Entry(cnr, rms_dl) for cnr, rms_dl in pairs)
