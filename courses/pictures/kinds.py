"""Every kind of defect that can be pictured, and the three functions that make it."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any, Final

from courses.pictures.crosshatch import CROSSHATCH
from courses.pictures.film_ghosts import DECAL_GHOST
from courses.pictures.film_haze import HAZE
from courses.pictures.film_high_spots import HIGH_SPOT
from courses.pictures.film_lime import BIRD_LIME
from courses.pictures.film_oxidation import FADING, OXIDATION
from courses.pictures.film_residue import RESIDUE
from courses.pictures.film_scum import SCUM_LINE
from courses.pictures.film_spots import WATER_SPOTS_ETCHED, WATER_SPOTS_MINERAL
from courses.pictures.film_stains import RUST_STAIN, TANNIN_STAIN
from courses.pictures.holograms import HOLOGRAM
from courses.pictures.kind import Kind
from courses.pictures.marring import DA_HAZE
from courses.pictures.pigtails import PIGTAIL
from courses.pictures.relief_blisters import BLISTERS
from courses.pictures.relief_burn_through import BURN_THROUGH
from courses.pictures.relief_chip import CHIP
from courses.pictures.relief_cracks import CRACK_PARALLEL, CRACK_RING, CRACK_STAR
from courses.pictures.relief_die_back import DIE_BACK
from courses.pictures.relief_orange_peel import ORANGE_PEEL
from courses.pictures.relief_run import RUN
from courses.pictures.sanding import SANDING_MARKS
from courses.pictures.scratches import SCRATCH
from courses.pictures.swirls import SWIRL

__all__ = ["KINDS", "kind_of"]

KINDS: Final[Mapping[str, Kind[Any]]] = MappingProxyType(
    {
        "swirl": SWIRL,
        "hologram": HOLOGRAM,
        "da_haze": DA_HAZE,
        "pigtail": PIGTAIL,
        "crosshatch": CROSSHATCH,
        "sanding_marks": SANDING_MARKS,
        "scratch": SCRATCH,
        "oxidation": OXIDATION,
        "fading": FADING,
        "haze": HAZE,
        "decal_ghost": DECAL_GHOST,
        "water_spots_mineral": WATER_SPOTS_MINERAL,
        "water_spots_etched": WATER_SPOTS_ETCHED,
        "scum_line": SCUM_LINE,
        "tannin_stain": TANNIN_STAIN,
        "rust_stain": RUST_STAIN,
        "bird_lime": BIRD_LIME,
        "residue": RESIDUE,
        "high_spot": HIGH_SPOT,
        "burn_through": BURN_THROUGH,
        "crack_star": CRACK_STAR,
        "crack_ring": CRACK_RING,
        "crack_parallel": CRACK_PARALLEL,
        "blisters": BLISTERS,
        "chip": CHIP,
        "orange_peel": ORANGE_PEEL,
        "die_back": DIE_BACK,
        "run": RUN,
    }
)
"""Kind by its code; a kind's row is added where its module is."""


def kind_of(code: str) -> Kind[Any]:
    """The kind called ``code``; every code of the catalogue has one."""
    return KINDS[code]
