"""Letters and figures of our own drawing, cut as from vinyl: straight strokes, bevelled corners, square ends."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.random import Generator
from numpy.typing import NDArray

from courses.pictures.arrays import F32, Floats
from courses.pictures.camera import Camera
from courses.pictures.turned import Turned

__all__ = ["GLYPHS", "Lettering", "lettered"]

Reals = NDArray[np.float64]

GLYPHS = {
    "A": "0,6 0,1.5 1.5,0 2.5,0 4,1.5 4,6 / 0,3.6 4,3.6",
    "E": "4,0 0,0 0,6 4,6 / 0,3 3.2,3",
    "F": "4,0 0,0 0,6 / 0,3 3.2,3",
    "G": "4,1.2 2.9,0 1.2,0 0,1.2 0,4.8 1.2,6 2.8,6 4,4.8 4,3.2 2.4,3.2",
    "H": "0,0 0,6 / 4,0 4,6 / 0,3 4,3",
    "K": "0,0 0,6 / 4,0 0.4,3.3 / 1.4,2.5 4,6",
    "L": "0,0 0,6 3.8,6",
    "N": "0,6 0,0 / 0.2,0.3 3.8,5.7 / 4,6 4,0",
    "P": "0,6 0,0 2.9,0 4,1 4,2.4 2.9,3.4 0,3.4",
    "R": "0,6 0,0 2.9,0 4,1 4,2.2 2.9,3.2 0,3.2 / 2,3.2 4,6",
    "T": "0,0 4,0 / 2,0 2,6",
    "V": "0,0 2,6 4,0",
    "X": "0,0 4,6 / 4,0 0,6",
    "Y": "0,0 2,2.8 4,0 / 2,2.8 2,6",
    "0": "1.2,0 2.8,0 4,1.2 4,4.8 2.8,6 1.2,6 0,4.8 0,1.2 1.2,0 2.8,0",
    "2": "0,1.2 1.2,0 2.8,0 4,1.2 4,2.3 0,6 4,6",
    "3": "0,1 1.1,0 2.9,0 4,1 4,2.2 3.2,3 4,3.8 4,5 2.9,6 1.1,6 0,5 / 1.5,3 3.2,3",
    "4": "3,6 3,0 0,3.9 4,3.9",
    "5": "3.8,0 0.2,0 0.2,2.5 2.8,2.5 4,3.5 4,4.9 2.8,6 1.1,6 0,5",
    "6": "3.8,1 2.8,0 1.2,0 0,1.2 0,4.8 1.2,6 2.8,6 4,4.9 4,3.8 2.9,2.8 0,2.8",
    "7": "0,0 4,0 1.4,6",
    "9": "0.2,5 1.2,6 2.8,6 4,4.8 4,1.2 2.8,0 1.2,0 0,1.1 0,2.2 1.1,3.2 4,3.2",
}
"""Strokes of each sign on a field 4 wide and 6 high, corners as x,y from the upper left; a bar parts strokes."""
LETTERS, FIGURES = "AEFGHKLNPRTVXY", "0234567 9".replace(" ", "")
ADVANCE = 5.7
"""From one sign to the next, in units of that field."""


@dataclass(frozen=True)
class Lettering:
    """Strokes on a panel: from ``x0``, ``y0`` to ``x1``, ``y1`` (mm), ``half`` as wide as they are, and which ends
    are cut square."""

    text: str
    x0: Reals
    y0: Reals
    x1: Reals
    y1: Reals
    half: float
    cut0: NDArray[np.bool_]
    cut1: NDArray[np.bool_]

    def inside(self, camera: Camera, beyond_mm: float) -> Floats:
        """Return how deep each pixel lies inside a stroke, mm; below 0 outside, exact up to ``beyond_mm`` outside."""
        out = np.full(camera.x.shape, -beyond_mm, F32)
        for nth in range(self.x0.size):
            ax, ay, bx, by = (float(value[nth]) for value in (self.x0, self.y0, self.x1, self.y1))
            mx, my, long = (ax + bx) / 2, (ay + by) / 2, float(np.hypot(bx - ax, by - ay))
            window = camera.window(mx, my, long / 2 + 1.5 * self.half + beyond_mm)
            if window is None:
                continue
            c, s = F32((bx - ax) / long), F32((by - ay) / long)
            along = window.dx * c + window.dy * s
            aside = window.dy * c - window.dx * s
            before, past = -F32(long / 2) - along, along - F32(long / 2)
            round_ = np.where(self.cut0[nth], 0, before.clip(0)) + np.where(self.cut1[nth], 0, past.clip(0))
            deep = F32(self.half) - np.sqrt(aside * aside + round_ * round_)
            if self.cut0[nth]:
                deep = np.minimum(deep, F32(self.half) - before)
            if self.cut1[nth]:
                deep = np.minimum(deep, F32(self.half) - past)
            out[window.at] = np.maximum(out[window.at], deep)
        return out


def _strokes(glyph: str) -> list[tuple[float, float, float, float, bool, bool]]:
    """Straight pieces of a sign; an end is cut where a stroke begins or stops."""
    pieces = []
    for stroke in glyph.split(" / "):
        corners = [tuple(float(number) for number in corner.split(",")) for corner in stroke.split()]
        for nth, (one, other) in enumerate(pairwise(corners)):
            pieces.append((*one, *other, nth == 0, nth == len(corners) - 2))
    return pieces  # type: ignore[return-value]


def lettered(rng: Generator, axes: Turned, aspect: float) -> Lettering:
    """Draw a few signs by chance, two letters and then figures, to fill a region; sometimes slanted, sometimes with a
    line below.

    ``aspect`` is the width of the region over its height, as seen square on: it says how many signs there are.

    >>> signs = lettered(np.random.default_rng(3), Turned(300.0, 200.0, 0.0, 200.0, 60.0), 3.0)
    >>> 2 <= len(signs.text) <= 7, 2 < signs.half < 20
    (True, True)
    """
    count = int(np.clip(round(2.3 * np.sqrt(aspect)) + rng.integers(0, 2), 2, 6))
    letters = "".join(rng.choice(list(LETTERS), min(2, count)))
    text = letters + "".join(rng.choice(list(FIGURES), count - len(letters)))
    slant, heavy = float(rng.choice([0.0, 0.0, 0.22])), float(rng.uniform(0.50, 0.72))
    pieces = [
        (x0 + nth * ADVANCE, y0, x1 + nth * ADVANCE, y1, cut0, cut1)
        for nth, sign in enumerate(text)
        for x0, y0, x1, y1, cut0, cut1 in _strokes(GLYPHS[sign])
    ]
    wide, high = ADVANCE * count - 1.7, 6.0
    if rng.random() < 0.45:
        high = 8.2
        pieces.append((-0.4, high, wide + 0.4, high, True, True))
    scale = min(1.70 * axes.half_u / (wide + 2 * heavy), 1.60 * axes.half_v / (high + 2 * heavy))
    ends = np.array([piece[:4] for piece in pieces]) - np.array([wide / 2, high / 2, wide / 2, high / 2])
    x0, y0 = axes.back(scale * (ends[:, 0] - slant * ends[:, 1]), scale * ends[:, 1])
    x1, y1 = axes.back(scale * (ends[:, 2] - slant * ends[:, 3]), scale * ends[:, 3])
    cuts = np.array([piece[4:] for piece in pieces], bool)
    return Lettering(text, x0, y0, x1, y1, float(scale * heavy), cuts[:, 0], cuts[:, 1])
