"""The surface of a panel at the resolution of a picture: what each kind of defect changes when it is laid."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.random import Generator

from courses.pictures.arrays import F32, Floats, lerp, soft
from courses.pictures.camera import PANEL, Camera
from courses.pictures.colour import to_linear
from courses.pictures.grooves import Grooves
from courses.pictures.noise import field
from courses.pictures.scene import Scene

__all__ = ["CURVATURE", "Canvas"]

CURVATURE = {"flat": (5200.0, 2600.0), "gentle": (1500.0, 850.0)}
"""Radius of the panel across and down, mm; even a flat one is a little convex, as moulded panels are."""
OIL_UM = 1.1
"""How high oil stands in marks until it is wiped off: enough for those of a wash and of a pad. Our own choice."""
_WAVES, _DUST, _LINT, _LINES, _FLAKE = 3, 50, 51, 52, 60


class Canvas:
    """What light meets on a panel: slopes, colour, gloss, films and fine marks, one value for each pixel.

    ``nx`` and ``ny`` are slopes (the normal is (nx, ny, 1)), ``albedo`` linear colour, ``alpha`` the Beckmann width
    of the gloss, ``coat`` the share that is still mirror-like, ``halo`` the share that scatters in a wide lobe,
    ``fog`` the cover of fine marks in all directions, ``dark`` the share that
    swallows light, ``removed_um`` what was taken off. A kind changes these in place.
    """

    def __init__(self, scene: Scene, light: str, camera: Camera) -> None:
        """A clean panel: its curve, the waviness of its making, a little dust, lint and a few fine lines of wear."""
        self.scene, self.light, self.camera = scene, light, camera
        self.rng: Generator = np.random.default_rng([scene.seed, _DUST])
        shape = camera.x.shape
        self.film_um: Floats | None = None
        self.film_share: Floats | None = None
        self.coat = np.ones(shape, F32)
        self.halo = np.full(shape, 0.0022, F32)
        self.dark = np.zeros(shape, F32)
        self.fog = np.zeros(shape, F32)
        self.alpha = np.full(shape, 0.0080 if scene.gel else 0.0042, F32)
        self.albedo = np.empty((*shape, 3), F32)
        mottle = 1 + (0.020 if scene.gel else 0.008) * self._noise(8, 300, 0)
        self.albedo[:] = to_linear(scene.rgb) * mottle[..., None]
        self._shape()
        self.removed_um = self._removed()
        self.grooves = Grooves(camera, self.removed_um if scene.removed_um else None)
        self.filled_um = OIL_UM if scene.oils else 0.0
        self.flake = self._flaked()

    def _noise(self, lo_mm: float, hi_mm: float, stream: int) -> Floats:
        return field([self.scene.seed, 1, stream], lo_mm, hi_mm).on(self.camera)

    def _shape(self) -> None:
        across, down = CURVATURE[self.scene.curve]
        camera, gel = self.camera, self.scene.gel
        long = F32(0.0025 if gel else 0.0010)
        fine = F32(0.0016 if gel else 0.0008)
        right, low = field([self.scene.seed, 1, _WAVES], 5.0, 30.0, slope=0.3).slopes()
        self.nx = (
            (camera.x - F32(PANEL[0] / 2)) / F32(across) + long * self._noise(60, 400, 1) + fine * right.on(camera)
        )
        self.ny = (camera.y - F32(PANEL[1] / 2)) / F32(down) + long * self._noise(60, 400, 2) + fine * low.on(camera)

    def _removed(self) -> Floats:
        removed = np.full(self.camera.x.shape, self.scene.removed_um, F32)
        if self.scene.removed_um and self.scene.removed_right_of is not None:
            u, _v = self.camera.stand.to_picture(self.camera.x, self.camera.y)
            removed *= soft((u - self.scene.removed_right_of) * (self.camera.stand.width / 1.5))
        return removed

    def _flaked(self) -> Floats | None:
        """Slopes and strength of the metal flakes in silver paint, (3, h, w)."""
        if self.scene.colour != "silver" or self.scene.gel:
            return None
        rng = np.random.default_rng([self.scene.seed, _FLAKE])
        flakes = rng.standard_normal((3, *self.camera.x.shape), dtype=F32)
        flakes[:2] *= F32(0.16)
        flakes[2] = np.exp(F32(0.9) * flakes[2] - F32(0.3))
        return flakes

    def left(self, depth_um: float) -> Floats:
        """How much of a layer ``depth_um`` thick is still there at each pixel, 0 to 1."""
        if depth_um <= 0:
            return np.ones(self.camera.x.shape, F32)
        return np.asarray(np.clip(1 - self.removed_um * F32(1 / depth_um), 0, 1), F32)

    def fogged(self, cover: float, depth_um: float, amount: Floats) -> None:
        """Lay marks in all directions, too fine to be told apart:
        their ``cover`` where ``amount`` is 1, and their depth.
        """
        left = self.left(depth_um)
        if self.filled_um:
            left = left * F32(max(0.08, 1 - self.filled_um / depth_um))
        self.fog += F32(cover) * left * amount

    def roughen(self, amount: Floats | float) -> None:
        """Add roughness: a Beckmann width of ``amount``, independent of what is there."""
        self.alpha = np.sqrt(self.alpha * self.alpha + np.square(amount, dtype=F32))

    def stain(self, density: Sequence[float], amount: Floats) -> None:
        """Lay a clear stain: optical ``density`` (natural log) in red, green and blue where ``amount`` is 1."""
        for channel, value in enumerate(density):
            self.albedo[..., channel] *= np.exp(F32(-value) * amount)

    def cover(self, linear: Sequence[float] | Floats, amount: Floats) -> None:
        """Cover the colour with another (linear light) by ``amount``, 0 to 1."""
        self.albedo = lerp(self.albedo, np.asarray(linear, F32), amount[..., None])

    def film(self, thickness_um: Floats, share: Floats) -> None:
        """Lay a thin film in which light interferes: its thickness, and the share of the surface it covers."""
        self.film_um, self.film_share = thickness_um.astype(F32), share.astype(F32)

    def raise_um(self, height_um: Floats) -> None:
        """Raise the surface by a picture of heights; the slopes are taken from neighbouring pixels."""
        x, y = self.camera.x, self.camera.y
        down, across = np.gradient(height_um * F32(1e-3))
        rise = across / np.gradient(x, axis=1)
        # rows of pixels lie level on the panel, so only x shifts from one row to the next
        self.nx -= rise
        self.ny -= (down - rise * np.gradient(x, axis=0)) / np.gradient(y, axis=0)

    def wear(self) -> None:
        """Lay what every used panel has: a little dust, lint, a few fine lines. A blank one looks like plastic foil."""
        rng = np.random.default_rng([self.scene.seed, _DUST])
        stand, grooves = self.camera.stand, self.grooves
        n = 150
        x, y = stand.to_panel(*rng.random((2, n)))
        size = rng.lognormal(-1.75, 0.5, n)
        grooves.add(x, y, rng.uniform(0, np.pi, n), size, size, 0.5, 0.5, white=0.5)
        n = 6
        x, y = stand.to_panel(*rng.random((2, n)))
        radius, start = rng.uniform(2, 6, n), rng.uniform(0, 6.28, n)
        along = np.linspace(0, 1, 40)[None, :] * rng.uniform(0.4, 2.0, n)[:, None] + start[:, None]
        x, y = x[:, None] + radius[:, None] * np.cos(along), y[:, None] + radius[:, None] * np.sin(along)
        grooves.add(x, y, along + np.pi / 2, 0.2, 0.05, 0.4, 0.4, white=0.4)
