"""Panels and plans by chance, for properties that hold on every one of them."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from courses.trade.abrasives import D50_UM
from tests.courses.pictures.trade import catalogue

POLISH_PADS = ("wool", "microfibre", "foam_cut", "foam_finish")
COMPOUNDS = ("heavy", "medium", "fine", "ultrafine")
QUIET = (
    *("prerinse", "wash", "alkaline", "acid", "iron", "rinse", "flush_prove", "dry", "tape", "untape"),
    *("test_spot", "wipe", "inspect", "wait", "cure_test", "record", "tell", "refer"),
)

sanding = st.fixed_dictionaries(
    {"op": st.just("sand"), "grade": st.sampled_from([one for one in D50_UM if int(one[1:]) >= 320])},
    optional={
        "passes": st.integers(1, 6),
        "pad": st.sampled_from(("disc", "disc_soft")),
        "force_n": st.floats(10, 60),
        "arm_m_s": st.floats(0.05, 0.3),
        "overlap": st.floats(0.0, 0.7),
        "disc": st.sampled_from(("fresh", "used", 0.8, 2.0)),
    },
)
polishing = st.fixed_dictionaries(
    {
        "op": st.sampled_from(("cut", "refine", "finish")),
        "machine": st.sampled_from(("rotary", "da", "hand")),
        "pad": st.sampled_from(POLISH_PADS),
        "compound": st.sampled_from(COMPOUNDS),
    },
    optional={
        "sets": st.sampled_from((1, 2, 3, "until_clear")),
        "force_n": st.floats(10, 60),
        "arm_m_s": st.floats(0.03, 0.2),
    },
)
abrasive: st.SearchStrategy[dict[str, Any]] = st.one_of(sanding, polishing)
quiet = st.fixed_dictionaries({"op": st.sampled_from(QUIET)})
plans = st.lists(st.one_of(abrasive, quiet), max_size=8)

defect = st.one_of(
    st.fixed_dictionaries({"kind": st.just("swirl"), "depth_um": st.floats(0.3, 1.9)}),
    st.fixed_dictionaries({"kind": st.just("scratch"), "depth_um": st.floats(3, 20)}),
    st.fixed_dictionaries({"kind": st.just("water_spots_etched"), "depth_um": st.floats(0.6, 10)}),
    st.fixed_dictionaries({"kind": st.just("decal_ghost"), "depth_um": st.floats(1, 12)}),
    st.fixed_dictionaries({"kind": st.sampled_from(sorted(catalogue().kinds))}),
)
zone = st.fixed_dictionaries(
    {"name": st.sampled_from(("bow", "stern"))},
    optional={
        "film_um": st.floats(30, 600),
        "edge_film_um": st.floats(20, 400),
        "edge": st.booleans(),
        "idle": st.booleans(),
        "cure": st.floats(0.3, 1.0),
        "agreed": st.fixed_dictionaries({"may_stay": st.lists(st.sampled_from(("swirl", "oxidation", "scratch")))}),
        "defects": st.lists(defect, max_size=2),
    },
)
surfaces: st.SearchStrategy[dict[str, Any]] = st.fixed_dictionaries(
    {"substrate": st.sampled_from(("gel_coat", "clear_coat", "topcoat_2k")), "film_um": st.floats(30, 600)},
    optional={
        "oxidation_um": st.floats(0.5, 20),
        "tail_um": st.floats(0.1, 6),
        "trail_um": st.floats(0.0, 0.4),
        "defects": st.lists(defect, max_size=3),
        "soiled": st.booleans(),
        "hardness": st.sampled_from((0.7, 1.0, 1.3)),
        "edge_film_um": st.floats(20, 400),
        "zones": st.lists(zone, max_size=2, unique_by=lambda one: one["name"]),
    },
)
