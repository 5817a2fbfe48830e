"""The lines of a crack, millimetres on the panel: how they start, waver, fork and stop."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import cos, hypot, pi, sin

import numpy as np
from numpy.typing import NDArray

__all__ = ["Fracture", "parallel", "rings", "star"]

Reals = NDArray[np.float64]
STEP_MM = 1.6
"""Distance between two corners of a line."""


@dataclass(frozen=True)
class Fracture:
    """One line: its corners `x` and `y` in mm, and how wide it gapes at each, 0 to 1 of the widest."""

    x: Reals
    y: Reals
    gape: Reals

    def up_to(self, corners: int) -> Fracture:
        """Return the first `corners` of it, closing towards its new end."""
        close = np.clip((corners - 1 - np.arange(corners)) / 3.0 + 0.25, 0.0, 1.0)
        return Fracture(self.x[:corners], self.y[:corners], self.gape[:corners] * close)


def star(rng: np.random.Generator, half: tuple[float, float], severity: float) -> tuple[Fracture, ...]:
    """Return the lines of a star about 0, 0 that fills an ellipse of half axes `half`, mm.

    A blow from inside bends the film outwards: rays run from one point, fork at narrow angles and stop where they
    meet another (one marine surveyor's page; how many and how they fork is chosen by eye).

    >>> lines = star(np.random.default_rng(1), (60.0, 40.0), 0.6)
    >>> len(lines) > 6, round(float(max(abs(line.x).max() for line in lines))) < 70
    (True, True)
    """
    count = 6 + round(4 * severity) + int(rng.integers(0, 3))
    turn = np.sort(rng.uniform(0, 1, count) * 0.75 + np.arange(count)) / count * 2 * pi + rng.uniform(0, 2 * pi)
    reach = np.clip(rng.beta(2.2, 1.6, count) * 0.75 + 0.30, 0.3, 1.0)
    reach[rng.integers(0, count, 2)] = 1.0
    lines: list[Fracture] = []
    for angle, far in zip(turn, reach, strict=True):
        start = rng.uniform(0.0, 2.5)
        length = far / hypot(cos(angle) / half[0], sin(angle) / half[1])
        ray = _walk(rng, (start * cos(angle), start * sin(angle)), angle, length, 0.05)
        _grow(rng, lines, _tapered(ray, 1.0), 2)
    for _ in range(2 + round(3 * severity)):
        _join(rng, lines, turn, half)
    return tuple(lines)


def rings(rng: np.random.Generator, half: tuple[float, float], severity: float) -> tuple[Fracture, ...]:
    """Return broken, uneven rings about 0, 0 that fill an ellipse of half axes `half`, mm.

    A blow from outside (one marine surveyor's page). All rings share one out-of-round shape, so none crosses another.

    >>> lines = rings(np.random.default_rng(1), (60.0, 60.0), 0.6)
    >>> 20 < round(float(max(np.hypot(line.x, line.y).max() for line in lines))) < 75
    True
    """
    count = 3 + round(4 * severity)
    place = np.linspace(0.24, 0.97, count) + rng.uniform(-0.24, 0.24, count) / count
    wave = rng.uniform(0, 2 * pi, 4)
    lines: list[Fracture] = []
    for share in place:
        for begin, turn in _arcs(rng, int(rng.integers(2, 5))):
            angle = begin + np.linspace(0, turn, max(8, int(turn * share * min(half) / STEP_MM)))
            round_ = 1 + 0.05 * np.sin(2 * angle + wave[0]) + 0.03 * np.sin(3 * angle + wave[1])
            own = _wander(rng, angle.size) * 0.055 / count
            radius = (share + own) * round_
            gape = np.sin(np.linspace(0.06, pi - 0.06, angle.size)) ** 0.6 * rng.uniform(0.55, 1.0)
            line = Fracture(radius * half[0] * np.cos(angle), radius * half[1] * np.sin(angle), gape)
            _grow(rng, lines, line, 0)
    for _ in range(1 + round(3 * severity)):
        heading, begin = float(rng.uniform(0, 2 * pi)), float(rng.uniform(0.15, 0.7))
        length = rng.uniform(0.08, 0.22) * min(half)
        start = (begin * half[0] * cos(heading), begin * half[1] * sin(heading))
        _grow(rng, lines, _tapered(_walk(rng, start, heading, length, 0.08), 0.6), 0)
    return tuple(lines)


def parallel(rng: np.random.Generator, half: tuple[float, float], severity: float) -> tuple[Fracture, ...]:
    """Return near-parallel lines along x that fill a rectangle of half sides `half`, mm, and never cross.

    Film that flexes over a hard point or edge (one marine surveyor's page). The lines waver together, stand at uneven
    distances, break and go on beside themselves, and taper to nothing.

    >>> lines = parallel(np.random.default_rng(1), (70.0, 30.0), 0.6)
    >>> len(lines) > 4, round(float(max(abs(line.x).max() for line in lines))) < 75
    (True, True)
    """
    gaps = rng.lognormal(0.0, 0.45, int(np.clip(2 * half[1] / (15.0 - 6.0 * severity), 4, 9 + 8 * severity)))
    level = np.cumsum(gaps)
    level = (level - level[0]) / (level[-1] - level[0]) * 1.84 - 0.92
    lines: list[Fracture] = []
    phase = rng.uniform(0, 2 * pi, 3)
    for nth, high in enumerate(level):
        room = 2 * half[1] / level.size
        reach = half[0] * (1 - 0.35 * abs(high) ** 3)
        for left, right in _pieces(rng, reach):
            x = np.linspace(left, right, max(6, int((right - left) / STEP_MM)))
            together = (
                np.sin(x / 37 + phase[0] + 0.3 * high) + 0.6 * np.sin(x / 17 + phase[1]) + 0.5 * high * x / half[0]
            )
            calm = min(1.0, (right - left) / (0.9 * half[0]))
            own = _wander(rng, x.size) * min(0.20 * room, 2.2) * calm + rng.uniform(-0.14, 0.14) * room
            gape = np.sin(np.linspace(0.03, pi - 0.03, x.size)) ** 0.7 * rng.uniform(0.45, 1.0)
            _grow(
                rng,
                lines,
                Fracture(x, high * half[1] + min(0.05 * half[1], 2.6) * together + own, gape),
                0 if nth % 3 else 1,
            )
    return tuple(lines)


def _walk(
    rng: np.random.Generator, start: tuple[float, float], heading: float, length: float, wander: float
) -> tuple[Reals, Reals]:
    """Return the corners of a line that runs from `start`, wavering finely and kinking now and then."""
    count = max(4, int(length / STEP_MM))
    kink = np.where(rng.random(count) < 0.10, rng.normal(0, 0.22, count), 0.0)
    drift = np.cumsum(rng.normal(0, wander, count) + kink)
    turn = heading + drift - drift.mean() * np.linspace(0, 1, count) + rng.normal(0, 0.10, count)
    step = length / count
    x = np.concatenate([[0.0], np.cumsum(np.cos(turn))]) * step + start[0]
    y = np.concatenate([[0.0], np.cumsum(np.sin(turn))]) * step + start[1]
    return x, y


def _tapered(line: tuple[Reals, Reals], gape: float) -> Fracture:
    t = np.linspace(0, 1, line[0].size)
    return Fracture(*line, gape * (1 - t**1.4) * (0.85 + 0.15 * np.cos(9 * t)) + 0.04)


def _grow(rng: np.random.Generator, lines: list[Fracture], line: Fracture, forks: int) -> None:
    """Let a line in, cut short where it would cross one that was there before, and let it fork `forks` times deep."""
    whole = _stopped(line, lines)
    if whole.x.size < 4:
        return
    lines.append(whole)
    if forks <= 0:
        return
    for _ in range(int(rng.choice((0, 1, 2), p=(0.45, 0.35, 0.2)))):
        at = int(whole.x.size * rng.uniform(0.25, 0.8))
        if at < 1:
            continue
        heading = float(np.arctan2(whole.y[at] - whole.y[at - 1], whole.x[at] - whole.x[at - 1]))
        aside = heading + rng.choice([-1, 1]) * rng.uniform(0.25, 0.65)
        rest = STEP_MM * (whole.x.size - at)
        away = (whole.x[at] + 0.05 * cos(aside), whole.y[at] + 0.05 * sin(aside))
        fork = _tapered(_walk(rng, away, aside, rest * rng.uniform(0.35, 0.85), 0.06), 0.75 * float(whole.gape[at]))
        _grow(rng, lines, fork, forks - 1)


def _join(rng: np.random.Generator, lines: list[Fracture], turn: Reals, half: tuple[float, float]) -> None:
    """Let a short arc run from one ray to the next close to the middle, as crushed film has them."""
    at = int(rng.integers(0, turn.size))
    share = rng.uniform(0.10, 0.32)
    before = turn[at - 1] if at else turn[-1] - 2 * pi
    angle = np.linspace(before + 0.03, turn[at] + 0.12, 14)
    bent = share * (1 + rng.normal(0, 0.02, 14)) * (1 + 0.1 * np.linspace(-1, 1, 14) * rng.normal())
    gape = np.full(14, rng.uniform(0.25, 0.5))
    _grow(rng, lines, Fracture(bent * half[0] * np.cos(angle), bent * half[1] * np.sin(angle), gape), 0)


def _arcs(rng: np.random.Generator, count: int) -> Iterator[tuple[float, float]]:
    """Yield beginnings and turns of arcs that share one circle and leave gaps between them."""
    share = rng.dirichlet(np.full(count, 3.0)) * 2 * pi
    begin = rng.uniform(0, 2 * pi)
    for part in share:
        yield begin, float(part * rng.uniform(0.35, 0.92))
        begin += part


def _pieces(rng: np.random.Generator, reach: float) -> Iterator[tuple[float, float]]:
    """Yield the stretches of one wavering level that are cracked."""
    left = -reach * rng.uniform(0.45, 1.0)
    while left < reach * 0.75:
        right = min(left + reach * rng.uniform(0.35, 1.5), reach * rng.uniform(0.8, 1.0))
        if right - left > 6 * STEP_MM:
            yield left, right
        left = right + reach * rng.uniform(0.06, 0.30)


def _wander(rng: np.random.Generator, count: int) -> Reals:
    """Return a smooth wander of unit size about zero."""
    walk: Reals = np.cumsum(rng.normal(0, 1, count + 8))
    smooth: Reals = np.convolve(walk, np.full(9, 1 / 9), "valid")
    smooth = smooth - np.linspace(smooth[0], smooth[-1], count)
    return smooth / max(float(np.abs(smooth).max()), 1e-9)


def _stopped(line: Fracture, before: Sequence[Fracture]) -> Fracture:
    """Return the line up to the first place where it would cross one of those before it."""
    stop = line.x.size
    for other in before:
        stop = min(stop, _crossing(line, other))
    return line if stop == line.x.size else line.up_to(max(stop, 1))


def _crossing(line: Fracture, other: Fracture) -> int:
    """Return how many corners of `line` come before it crosses `other`; all of them where it doesn't."""
    apart_x = other.x.max() < line.x.min() or other.x.min() > line.x.max()
    if apart_x or other.y.max() < line.y.min() or other.y.min() > line.y.max():
        return line.x.size
    ax, ay, bx, by = line.x[:-1, None], line.y[:-1, None], line.x[1:, None], line.y[1:, None]
    cx, cy, dx, dy = other.x[:-1], other.y[:-1], other.x[1:], other.y[1:]
    first = (dx - cx) * (ay - cy) - (dy - cy) * (ax - cx)
    second = (dx - cx) * (by - cy) - (dy - cy) * (bx - cx)
    third = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax)
    fourth = (bx - ax) * (dy - ay) - (by - ay) * (dx - ax)
    hits = np.flatnonzero(((first * second < 0) & (third * fourth < 0)).any(axis=1))
    return int(hits[0]) + 1 if hits.size else line.x.size
