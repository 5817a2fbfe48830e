"""The constants of the surface model: one shipped table, each figure with its mark and the key of its source."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, fields, replace
from functools import lru_cache
from types import MappingProxyType
from typing import Any, Final, TypeVar

from courses.trade.errors import ImpossibleChoice, OutOfRange, offer
from courses.trade.sources import MARKS
from courses.trade.tables import Entry, tables_in

__all__ = ["FITTED", "ROLES", "Constants", "Machine", "Pad", "Role", "read_constants"]

Group = TypeVar("Group")

ROLES: Final = (
    *("scratch", "pit", "texture", "trail", "layer", "deposit", "stain", "residue", "proud", "skin", "colour"),
    "through",
)
"""What a kind of defect may be to the model."""


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


@dataclass(frozen=True, slots=True, eq=False)
class Constants:
    """All of them, compared by identity. ``marks``: mark and source key by the dotted name of the figure.

    ``preston``: k (1/Pa) of each pad with each compound. ``minutes``: a square metre, by op.
    """

    sanding: Sanding
    preston: Mapping[tuple[str, str], float]
    grain_um: Mapping[str, float]
    pads: Mapping[str, Pad]
    machines: Mapping[str, Machine]
    film: Film
    disc: Disc
    grit: Grit
    heat: Heat
    gates: Gates
    cure: Cure
    optics: Optics
    minutes: Mapping[str, float]
    compound_g_m2: float
    score: Score
    kinds: Mapping[str, Role]
    marks: Mapping[str, tuple[str, str]]

    def varied(self, name: str, factor: float) -> Constants:
        """These constants with the fitted one called ``name`` multiplied by ``factor``; the same object each time.

        ``name`` is one of `FITTED` (`ImpossibleChoice` offers the nearest), ``factor`` 0.1 to 10 (`OutOfRange`).
        Where it means several figures (each pad's eta), all move together; no pad gains more depth than film.
        """
        if name not in FITTED:
            raise ImpossibleChoice(f"No constant is called {name[:40]!r}; {offer(name[:40], FITTED)}", "name")
        if not 0.1 <= factor <= 10.0:
            raise OutOfRange(f"A constant may be multiplied by 0.1 to 10, not by {factor:g}.", "factor")
        return _varied(self, name, factor)

    def k_of(self, pad: str, compound: str) -> float:
        """Preston's k, 1/Pa, of a ``pad`` with a ``compound``; `ImpossibleChoice` where one is unknown."""
        if (pad, compound) not in self.preston:
            known = [" with ".join(pair) for pair in self.preston]
            wrong = f"{pad[:40]} with {compound[:40]}"
            raise ImpossibleChoice(f"No compound is worked with {wrong}; {offer(wrong, known)}", "compound")
        return self.preston[pad, compound]


FITTED: Final = (
    *("preston_k", "sanding_k", "rz_scale", "eta", "stray", "pad_c", "hologram", "rq_per_rz", "visible", "edge_gain"),
    "cooling",
)
"""The names `Constants.varied` takes: what a verdict that is asked of anybody has to withstand by ± 30 %."""
_OF_PADS: Final = {"eta": "eta", "stray": "stray", "pad_c": "rest", "hologram": "trail_um", "cooling": "heat_share"}


@lru_cache(maxsize=256)
def _varied(constants: Constants, name: str, factor: float) -> Constants:
    if name in _OF_PADS:
        return replace(constants, pads=_pads_with(constants.pads, _OF_PADS[name], factor))
    if name == "preston_k":
        return replace(constants, preston={pair: k * factor for pair, k in constants.preston.items()})
    group, field = {
        "sanding_k": ("sanding", "k"),
        "rz_scale": ("sanding", "rz_um"),
        "rq_per_rz": ("optics", "rq_per_rz"),
        "visible": ("gates", "visible_um"),
        "edge_gain": ("film", "edge_gain"),
    }[name]
    found = getattr(constants, group)
    moved: dict[str, Any] = {group: replace(found, **{field: getattr(found, field) * factor})}
    return replace(constants, **moved)


def _pads_with(pads: Mapping[str, Pad], field: str, factor: float) -> Mapping[str, Pad]:
    highest = 1.0 if field == "eta" else 1e9
    moved = {code: replace(pad, **{field: min(highest, getattr(pad, field) * factor)}) for code, pad in pads.items()}
    return MappingProxyType(moved)


def read_constants(text: str, file: str, sources: Collection[str]) -> Constants:
    """The constants of a TOML ``text``; `TableRefused` names ``file``, line and key. ``sources``: keys it may cite."""
    tables = {key: Entry.at(key, value, text, file) for key, value in tables_in(text, file).items()}
    whole = Entry({}, file)

    def table(name: str) -> Entry:
        if name not in tables:
            raise whole.refused(f"There is no table [{name}].")
        return tables[name]

    groups = {name: _group(kind, table(name)) for name, kind in _GROUPS.items()}
    return Constants(
        **groups,
        preston=_preston(table("preston")),
        grain_um=_numbers(table("grain_um")),
        pads=_rows(Pad, table("pads")),
        machines=_rows(Machine, table("machines")),
        minutes=_numbers(table("minutes")),
        compound_g_m2=table("materials").number("compound_g_m2"),
        kinds=_kinds(table("kinds")),
        marks=MappingProxyType(
            dict(pair for name, one in tables.items() for pair in _marks(name, one, tuple(sources)))
        ),
    )


_GROUPS: Final[Mapping[str, type]] = {
    "sanding": Sanding,
    "film": Film,
    "disc": Disc,
    "grit": Grit,
    "heat": Heat,
    "gates": Gates,
    "cure": Cure,
    "optics": Optics,
    "score": Score,
}


def _group(kind: type[Group], entry: Entry) -> Any:
    """The figures of one table as the value object of that name; a text field is `called`."""
    names = [one.name for one in fields(kind)]  # type: ignore[arg-type]
    entry.only(*names, "from")
    return kind(**{name: entry.text(name) if name == "called" else entry.number(name) for name in names})


def _rows(kind: type[Group], entry: Entry) -> Mapping[str, Group]:
    return MappingProxyType({name: _group(kind, entry.table(name)) for name in entry.values if name != "from"})


def _numbers(entry: Entry) -> Mapping[str, float]:
    return MappingProxyType({name: entry.number(name) for name in entry.values if name != "from"})


def _preston(entry: Entry) -> Mapping[tuple[str, str], float]:
    pads = {pad: _numbers(entry.table(pad)) for pad in entry.values if pad != "from"}
    return MappingProxyType({(pad, compound): k for pad, row in pads.items() for compound, k in row.items()})


def _kinds(entry: Entry) -> Mapping[str, Role]:
    return MappingProxyType({code: _kind(entry.table(code)) for code in entry.values if code != "from"})


def _kind(entry: Entry) -> Role:
    entry.only("role", "by", "weight", "cover", "spread")
    given = {name: entry.number(name) for name in ("weight", "cover", "spread") if name in entry.values}
    by = entry.texts("by", ("alkaline", "acid", "iron")) if "by" in entry.values else ()
    return Role(entry.text("role", ROLES), by, **given)


def _marks(name: str, entry: Entry, sources: tuple[str, ...]) -> Iterator[tuple[str, tuple[str, str]]]:
    """Each figure of a table by its dotted name, with mark and source; every figure has exactly one line."""
    found = entry.values.get("from")
    said = found.get("of_all") if isinstance(found, dict) else found
    if not isinstance(said, list):
        raise entry.refused("Its sources are missing; write from = [{ mark = …, source = … }].")
    lines = [Entry(line, f"{entry.where}.from").only("mark", "source", "of") for line in said]
    named = {one: line for line in lines if "of" in line.values for one in line.texts("of")}
    rest = [line for line in lines if "of" not in line.values]
    for figure in _figures(entry):
        line = named.get(figure.rpartition(".")[2]) or (rest[0] if rest else None)
        if line is None:
            raise entry.refused(f"No line of from speaks for {figure}.")
        yield f"{name}.{figure}", (line.text("mark", tuple(MARKS)), line.text("source", sources))


def _figures(entry: Entry, before: str = "") -> Iterator[str]:
    for name, value in entry.values.items():
        if name == "from":
            continue
        if isinstance(value, dict):
            yield from _figures(entry.table(name), f"{before}{name}.")
        elif isinstance(value, int | float):
            yield before + name
