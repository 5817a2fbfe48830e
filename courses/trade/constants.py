"""The constants of the surface model: one shipped table, each figure with its mark and the key of its source."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, fields, replace
from functools import lru_cache
from types import MappingProxyType
from typing import Any, Final, TypeVar

from courses.trade.errors import ImpossibleChoice, OutOfRange, offer
from courses.trade.laws import Cure, Disc, Film, Gates, Grit, Heat, Machine, Optics, Pad, Role, Sanding, Score
from courses.trade.sources import MARKS
from courses.trade.tables import Entry, tables_in

__all__ = ["FITTED", "ROLES", "Constants", "Machine", "Pad", "Role", "read_constants"]

Group = TypeVar("Group")

ROLES: Final = (
    *("scratch", "pit", "texture", "trail", "layer", "deposit", "stain", "residue", "proud", "skin", "colour"),
    "through",
)
"""What a kind of defect may be to the model."""


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
