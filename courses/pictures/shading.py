"""Light on a surface: what the room gives, once for each panel, and what the lamp adds, for each of its places."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np

from courses.pictures.arrays import F32, Floats, blur, soft
from courses.pictures.canvas import Canvas
from courses.pictures.lamps import COLD, FACE_MM, USUAL_MM, Lamp
from courses.pictures.optics import fresnel, interference
from courses.pictures.room import AMBIENT, TINTS, mirrored, mirrored_widely

__all__ = ["Still", "lit", "still"]

BAND = 64
"""Rows worked on at once, so that memory stays small."""
HALO_WIDTH = F32(0.15)
FOG_LOBE = (0.020, 0.30)
"""Spread of slope along and across marks too fine to be told apart."""
WHITE = F32(0.62)
"""How white the torn bottom of a mark is."""
_PI = F32(math.pi)


@dataclass(frozen=True)
class Still:
    """What the lamp does not change:
    the room's light from below the coat (h, w, 3), and what the coat mirrors of it (h, w).
    """

    below: Floats
    above: Floats


def bands(height: int) -> Iterator[slice]:
    """Slices of rows that make up a picture so high."""
    return (slice(top, min(top + BAND, height)) for top in range(0, height, BAND))


@dataclass(frozen=True)
class _Facing:
    """How some rows of a surface lie to the eye: unit normal, its cosine to the eye, the mirrored ray, the view."""

    normal: tuple[Floats, Floats, Floats]
    cos: Floats
    ray: tuple[Floats, Floats, Floats]
    view: tuple[Floats, Floats, Floats]


def _facing(canvas: Canvas, rows: slice) -> _Facing:
    vx, vy, vz, _distance = canvas.camera.view(rows)
    nx, ny = canvas.nx[rows], canvas.ny[rows]
    nz = 1 / np.sqrt(1 + nx * nx + ny * ny)
    nx, ny = nx * nz, ny * nz
    cos = np.clip(nx * vx + ny * vy + nz * vz, F32(0.03), 1)
    ray = (2 * cos * nx - vx, 2 * cos * ny - vy, 2 * cos * nz - vz)
    return _Facing((nx, ny, nz), cos, ray, (vx, vy, vz))


def _marks(canvas: Canvas) -> tuple[Floats, Floats, Floats]:
    """White, dark and cover of the fine marks, each 0 to 1, (h, w)."""
    shape, grooves = canvas.camera.x.shape, canvas.grooves
    # what a flank throws from the room is spread by the room: no sparkle, a veil
    veil = blur(grooves.cover.reshape(shape), 1.6)
    pictures = (grooves.white, grooves.dark, veil)
    white, dark, cover = (np.clip(picture.reshape(shape), 0, F32(0.95)) for picture in pictures)
    return white, np.clip(dark + canvas.dark, 0, F32(0.95)), np.clip(cover + canvas.fog, 0, F32(0.95))


def still(canvas: Canvas) -> Still:
    """What the room alone gives on a ``canvas``; its albedo and coat are settled here for every lamp to come."""
    white, dark, cover = _marks(canvas)
    canvas.albedo += (WHITE - canvas.albedo) * white[..., None]
    canvas.coat *= 1 - cover
    canvas.dark = dark
    h, w = canvas.camera.x.shape
    found = Still(np.empty((h, w, 3), F32), np.empty((h, w), F32))
    wide = F32(mirrored_widely(canvas.light))
    for rows in bands(h):
        facing = _facing(canvas, rows)
        place = canvas.camera.x[rows], canvas.camera.y[rows]
        alpha, coat = canvas.alpha[rows], canvas.coat[rows]
        share = fresnel(facing.cos, canvas.scene.index)
        ambient = F32(AMBIENT[canvas.light]) * _shape(canvas, facing, place)
        tint = np.array(TINTS[canvas.light], F32)
        open_ = 1 - dark[rows]
        # a rough, chalky coat mirrors the room too, only spread out; so do the flanks of fine marks
        veil = share * (1 - coat - cover[rows]).clip(0) * (ambient * F32(0.9)) + share * cover[rows] * wide
        below = canvas.albedo[rows] * ((1 - share) * ambient * (1 / _PI))[..., None]
        found.below[rows] = (below + veil[..., None]) * tint * open_[..., None]
        found.above[rows] = share * coat * mirrored(canvas.light, place, facing.ray, alpha) * open_
    return found


def _shape(canvas: Canvas, facing: _Facing, place: tuple[Floats, Floats]) -> Any:
    """How the room's light falls: more on what leans towards its bright side."""
    nx, ny, _nz = facing.normal
    shape = 1 + F32(0.25) * (ny * F32(-0.6) + nx * F32(0.2))
    if canvas.light != "diffuse":
        return shape
    x, y = place
    down = F32(0.80) + F32(0.30) * soft((F32(300) - y) * F32(1 / 260))
    return shape * down * (F32(0.92) + F32(0.16) * soft((x - F32(250)) * F32(1 / 300)))


def lit(canvas: Canvas, room: Still, lamp: Lamp | None) -> Floats:
    """Linear radiance of each pixel, (h, w, 3): the room's light, and the lamp's where there is one."""
    h = canvas.camera.x.shape[0]
    tint = np.array(TINTS[canvas.light], F32)
    out = np.empty_like(room.below)
    if lamp is None:
        for rows in bands(h):
            out[rows] = room.below[rows] + _coloured(canvas, rows, room.above[rows][..., None] * tint)
        return out
    wanted = _wanted(canvas, lamp)
    glints = canvas.grooves.glint(*wanted)
    for rows in bands(h):
        _lamplit(out, canvas, room, lamp, rows, (wanted[0][rows], wanted[1][rows], glints[rows]))
    return out


def _coloured(canvas: Canvas, rows: slice, mirrored_light: Floats) -> Any:
    if canvas.film_um is None or canvas.film_share is None:
        return mirrored_light
    cos = _facing(canvas, rows).cos
    return mirrored_light * interference(canvas.film_um[rows], canvas.film_share[rows], cos)


def _towards(canvas: Canvas, lamp: Lamp, rows: slice) -> tuple[Any, Any, Any, Any]:
    """Unit vector from each place to the lamp, and its distance in mm."""
    lx, ly = F32(lamp.place[0]) - canvas.camera.x[rows], F32(lamp.place[1]) - canvas.camera.y[rows]
    lz = F32(lamp.place[2])
    distance = np.sqrt(lx * lx + ly * ly + lz * lz)
    return lx / distance, ly / distance, lz / distance, distance


def _wanted(canvas: Canvas, lamp: Lamp) -> tuple[Floats, Floats]:
    """The slope a facet must have, against the surface it lies in, to throw the lamp into the eye; (h, w) each."""
    dx, dy = np.empty_like(canvas.nx), np.empty_like(canvas.ny)
    for rows in bands(len(dx)):
        lx, ly, lz, _distance = _towards(canvas, lamp, rows)
        vx, vy, vz, _far = canvas.camera.view(rows)
        up = 1 / (lz + vz)
        dx[rows] = (lx + vx) * up - canvas.nx[rows]
        dy[rows] = (ly + vy) * up - canvas.ny[rows]
    return dx, dy


def _lamplit(
    out: Floats, canvas: Canvas, room: Still, lamp: Lamp, rows: slice, marks: tuple[Floats, Floats, Floats]
) -> None:
    dx, dy, glints = marks
    facing = _facing(canvas, rows)
    lx, ly, lz, distance = _towards(canvas, lamp, rows)
    nx, ny, nz = facing.normal
    vx, vy, vz = facing.view
    strength = lamp.beam(lx, ly, lz, distance)
    falling = strength * np.clip(nx * lx + ny * ly + nz * lz, 0, 1)
    share = fresnel(np.sqrt(np.clip((1 + lx * vx + ly * vy + lz * vz) / 2, 0, 1)), canvas.scene.index)
    place = canvas.camera.x[rows], canvas.camera.y[rows]
    bright, left = lamp.face(place, facing.ray, canvas.alpha[rows])
    image = canvas.coat[rows] * bright * F32(USUAL_MM**2 / (math.pi * FACE_MM**2))
    square = dx * dx + dy * dy
    a2 = HALO_WIDTH * HALO_WIDTH
    wide = canvas.halo[rows] * (a2 / _PI) / np.square(square + a2)
    glints = glints + canvas.fog[rows] * _all_ways(square)
    scattered = strength * (wide + glints * canvas.coat[rows]) / (4 * facing.cos)
    open_ = 1 - canvas.dark[rows]
    cold = np.array(COLD, F32)
    above = (share * (image + scattered) * open_)[..., None] * cold
    above += (room.above[rows] * left)[..., None] * np.array(TINTS[canvas.light], F32)
    below = canvas.albedo[rows] * (falling * (1 - share) * open_ * (1 / _PI))[..., None] * cold
    out[rows] = room.below[rows] + below + _coloured(canvas, rows, above)
    if canvas.flake is not None:
        out[rows] += _sparkle(canvas, rows, (dx, dy, square), strength * falling)[..., None] * canvas.albedo[rows]


def _all_ways(square: Floats) -> Any:
    """The density of slopes of marks in all directions at a wanted slope, given by its square:
    their mean over directions.
    """
    near, far = F32(FOG_LOBE[0] ** 2), F32(-0.5 / FOG_LOBE[1] ** 2)
    return np.exp(square * far) / (F32((2 * math.pi) ** 1.5 * FOG_LOBE[1]) * np.sqrt(square + near))


def _sparkle(canvas: Canvas, rows: slice, wanted: tuple[Floats, Floats, Floats], light: Floats) -> Any:
    """What metal flakes below the coat throw back."""
    assert canvas.flake is not None
    dx, dy, square = wanted
    across, down, size = canvas.flake[:, rows]
    off = np.square(dx * F32(0.66) - across) + np.square(dy * F32(0.66) - down)
    sheen = F32(0.35) * np.exp(square * F32(-1 / (2 * 0.30**2)))
    glitter = F32(0.9) * size * np.exp(off * F32(-1 / (2 * 0.03**2)))
    return F32(0.6) * light * canvas.coat[rows] * (sheen + glitter)
