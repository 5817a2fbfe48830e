"""The groups of figures that the constants of the surface model are made of, each with its units."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Sanding:
    """Wet sanding: k (1/Pa) and mean scratch depth of a grain of ``reference_um``, and the powers both follow."""

    reference_um: float
    k: float
    k_exponent: float
    rz_um: float
    rz_exponent: float


@dataclass(frozen=True, slots=True)
class Pad:
    """What stands between machine and film; the fields are explained in ``fixtures/trade/model.toml``."""

    called: str
    eta: float
    planing: float
    rest: float
    rz_share: float
    stray: float
    trail_um: float
    friction: float
    heat_share: float
    per_m2: float


@dataclass(frozen=True, slots=True)
class Machine:
    """What moves the pad: lengths in metres, speeds in rpm (orbits a minute of a dual action)."""

    called: str
    pad_m: float
    orbit_m: float
    spin_rpm: float
    hand_m_s: float


@dataclass(frozen=True, slots=True)
class Film:
    """How a film thins towards its edges and varies, and how long a pad is on it."""

    edge_gain: float
    edge_ratio: float
    edge_share: float
    on_panel: float
    rotary_limit_rpm: float
    spread_gel_coat: float
    spread_topcoat_2k: float
    spread_clear_coat: float


@dataclass(frozen=True, slots=True)
class Disc:
    """How a sanding disc wears with the area it has done, m²."""

    fresh_m2: float
    life_m2: float
    used_m2: float
    dull: float
    least: float
    patchy: float
    patch_share: float
    discs_per_pass_m2: float


@dataclass(frozen=True, slots=True)
class Grit:
    """Scratches that grit leaves when it is dragged under a pad."""

    extra_um: float
    gsd: float
    cover: float
    weight: float
    clay_um: float


@dataclass(frozen=True, slots=True)
class Heat:
    """What the film takes up, and where it softens, °C."""

    effusivity: float
    air_degc: float
    water_degc: float
    soft_gel_coat: float
    soft_topcoat_2k: float
    soft_clear_coat: float
    harder_degc: float
    softer_degc: float


@dataclass(frozen=True, slots=True)
class Gates:
    """Limits beyond which a plan is a harm or has to be done again."""

    burn: float
    refresh_um: float
    over_cut: float
    need_um: float
    need_of_budget: float
    heat_index: float
    visible_um: float
    stray_um: float
    cutting_um: float
    oxidised: float
    corrected: float
    open_share: float
    oil_fills_um: float
    cured: float


@dataclass(frozen=True, slots=True)
class Cure:
    """How fast a repair cures: rate in 1/h at a temperature, and its limits, °C."""

    rate_h: float
    rate_degc: float
    doubling_k: float
    least_degc: float
    most_degc: float


@dataclass(frozen=True, slots=True)
class Optics:
    """How scratches become the roughness that gloss sees; lengths in µm."""

    rq_per_rz: float
    stray_share: float
    corr_um: float
    corr_per_grain: float
    trail_corr_um: float
    chalk_rq_um: float
    chalk_corr_um: float
    most_scatter: float
    haze_of_marks: float
    haze_of_chalk: float


@dataclass(frozen=True, slots=True)
class Score:
    """Weights of the score, and what a fault costs."""

    correction: float
    finish: float
    marks: float
    habits: float
    economy: float
    harm: float
    damage: float
    undone: float
    oxidation_weight: float


@dataclass(frozen=True, slots=True)
class Role:
    """What a kind of defect is to the model: one of `ROLES`, with what stands for it where a surface says nothing.

    ``by``: the chemistries that take it off.
    """

    role: str
    by: tuple[str, ...] = ()
    weight: float = 1.0
    cover: float = 0.02
    spread: float = 1.3
