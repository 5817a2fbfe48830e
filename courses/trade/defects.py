"""Kinds of defects: how deep each is, what shows it, what may be done, and what somebody sees who names nothing."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from courses.trade.errors import OutOfRange
from courses.trade.sources import MARKS
from courses.trade.tables import Entry, tables_in

LIGHTS = ("diffuse", "point", "raking")
"""The three lights of the doors."""

VERDICTS = ("polish", "sand", "chemistry", "leave", "refer")
"""What may be done about a defect."""

STANDS = ("below", "proud", "level")
"""Where a defect lies against the sound film round it."""

_FIELDS = (
    *("called", "cause", "depth_um", "through", "mark", "source", "stands", "thin", "verdict", "deep"),
    *("best", "weak", "hidden", "never", "seen"),
)
_TINY_UM = 1e-6


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of defect, as ``fixtures/trade/defects.toml`` tells it.

    ``depths_um`` at severity 0, ½ and 1: empty where the kind goes through the film, three zeros where it has no depth
    of its own. ``thin``: lines and small scattered marks that fill little of a cell. ``deep``: from how many
    micrometres another verdict holds, and which. ``seen``: what is noted in each light, ``moved`` when the lamp moves;
    ``never``: the words no observation may hold.
    """

    code: str
    called: str
    cause: str
    depths_um: tuple[float, ...]
    mark: str
    source: str
    stands: str
    thin: bool
    verdict: str
    deep: tuple[float, str] | None
    best: str
    weak: tuple[str, ...]
    hidden: tuple[str, ...]
    never: tuple[str, ...]
    seen: Mapping[str, str]
    moved: str

    @property
    def through(self) -> bool:
        """Whether it goes through the whole film."""
        return not self.depths_um

    @property
    def graded(self) -> bool:
        """Whether its depth follows from its severity, and the other way round."""
        return not self.through and self.depths_um[0] < self.depths_um[2]

    def depth_um(self, severity: float, film_um: float) -> float:
        """Depth (of a proud kind, height) in micrometres at a ``severity`` from 0 to 1: two straight lines.

        A kind that goes through is as deep as the film. `OutOfRange` beyond 0 to 1. Source: that of the kind.
        """
        if not 0.0 <= severity <= 1.0:
            raise OutOfRange(f"Severity {severity:g} lies outside 0 to 1; give a value within.", "severity")
        if self.through:
            return film_um
        low, middle, high = self.depths_um
        return low + (middle - low) * severity * 2 if severity <= 0.5 else middle + (high - middle) * (severity * 2 - 1)

    def severity(self, depth_um: float) -> float:
        """The severity, 0 to 1, at which the kind is ``depth_um`` deep: `depth_um` turned round.

        `OutOfRange` where the kind is never as deep, or has no depth of its own.
        """
        if not self.graded:
            why = "they go through the film" if self.through else "they have none of their own"
            raise OutOfRange(f"A depth says nothing of {self.called}: {why}; give the severity, 0 to 1.", "depth_um")
        low, middle, high = self.depths_um
        if not low - _TINY_UM <= depth_um <= high + _TINY_UM:
            raise OutOfRange(
                f"{depth_um:g} µm is impossible for {self.called}; give {low:g} to {high:g} µm.", "depth_um"
            )
        share = (depth_um - low) / (middle - low) if depth_um <= middle else 1 + (depth_um - middle) / (high - middle)
        return min(1.0, max(0.0, share / 2))

    def verdict_at(self, depth_um: float) -> str:
        """One of `VERDICTS` for a mark of this kind that is ``depth_um`` deep."""
        return self.deep[1] if self.deep and depth_um >= self.deep[0] else self.verdict


def read_kinds(text: str, file: str, sources: Collection[str]) -> Mapping[str, Kind]:
    """Every kind of a TOML ``text`` by code, in its order; `TableRefused` names ``file``, line and kind.

    ``sources``: the keys a kind may cite.
    """
    tables = tables_in(text, file)
    return MappingProxyType(
        {code: _kind(code, Entry.at(code, value, text, file), tuple(sources)) for code, value in tables.items()}
    )


def _kind(code: str, entry: Entry, sources: tuple[str, ...]) -> Kind:
    entry.only(*_FIELDS)
    seen = entry.table("seen").only(*LIGHTS, "moved")
    kind = Kind(
        code,
        entry.text("called"),
        entry.text("cause"),
        _depths(entry),
        entry.text("mark", tuple(MARKS)),
        entry.text("source", sources),
        entry.text("stands", STANDS),
        entry.flag("thin"),
        entry.text("verdict", VERDICTS),
        _deep(entry),
        entry.text("best", LIGHTS),
        entry.texts("weak", LIGHTS),
        entry.texts("hidden", LIGHTS),
        entry.texts("never"),
        MappingProxyType({light: seen.text(light) for light in LIGHTS}),
        seen.text("moved"),
    )
    if sorted((kind.best, *kind.weak, *kind.hidden)) != sorted(LIGHTS):
        raise entry.refused("best, weak and hidden have to name each light once: diffuse, point, raking.")
    return kind


def _depths(entry: Entry) -> tuple[float, ...]:
    if entry.flag("through", False):
        return ()
    low, middle, high = entry.numbers("depth_um", 3)
    if not (0 <= low < middle < high or low == middle == high == 0):
        raise entry.refused("depth_um has to rise from severity 0 over 0.5 to 1, or be three zeros.")
    return low, middle, high


def _deep(entry: Entry) -> tuple[float, str] | None:
    if "deep" not in entry.values:
        return None
    deep = entry.table("deep").only("from_um", "verdict")
    return deep.number("from_um"), deep.text("verdict", VERDICTS)
