"""Film and quantities: wet and dry film, areas of a hull by named formulas, coating with its loss, whole packs.

Published guides for the area of one and the same hull differ by 15 to 20 %, so every area names its formula;
"loss 30 %" and "factor 1.3" differ by 9 %, so every quantity names its convention.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import ceil
from types import MappingProxyType

from courses.trade.errors import ImpossibleChoice, MissingInput, OutOfRange, offer
from courses.trade.ranges import Range
from courses.trade.units import rounded

LENGTH_M = Range(1.0, 60.0, "m")
BEAM_M = Range(0.4, 20.0, "m")
DEPTH_M = Range(0.05, 10.0, "m")
"""Draft to the base of the keel, and freeboard."""
LEFT_OUT_M2 = Range(0.0, 2000.0, "m2")
AREA_M2 = Range(0.01, 5000.0, "m2")
DRY_UM = Range(0.01, 1000.0, "um")
SOLIDS_PERCENT = Range(1.0, 100.0, "percent")
THINNER_PERCENT = Range(0.0, 200.0, "percent")
LOSS_PERCENT = Range(0.0, 90.0, "percent")
FACTOR = Range(1.0, 10.0, "ratio")
PACK_ML = Range(1.0, 20000.0, "ml")
NEED_ML = Range(0.0, 1e7, "ml")
COATS = (1, 5)

RATE_ML_M2: Mapping[str, float] = MappingProxyType({"gel_coat": 2.5, "clear_coat": 1.2})
"""Planning rate of a thin coating on a corrected surface, mL a square metre and coat: practice."""
FIRST_SECTION_ML = 3.0
"""What the dry applicator drinks before the first section: practice."""
NO_MATTER_ML = 0.005
"""Half of the last digit that a need is ever written to: no pack is opened for it."""
LITTLE_SLACK_PERCENT = 5.0
"""Below this one spill stops the job, so it is said aloud and one pack more is right too: our training model."""


@dataclass(frozen=True, slots=True)
class Hull:
    """A boat's main dimensions in metres; those a formula doesn't read may be missing.

    ``loa_m`` length over all, ``lwl_m`` length on the waterline, ``beam_m`` widest beam, ``draft_m`` to the base of the
    keel, ``freeboard_m`` mean height of the topsides. `OutOfRange` for what no boat here has, and for a waterline
    longer than the boat.

    >>> Hull(loa_m=6.4, beam_m=2.45, freeboard_m=0.8).beam_m
    2.45
    """

    loa_m: float | None = None
    lwl_m: float | None = None
    beam_m: float | None = None
    draft_m: float | None = None
    freeboard_m: float | None = None

    def __post_init__(self) -> None:
        """Refuse dimensions outside their ranges."""
        for name, span in _SPANS.items():
            value = getattr(self, name)
            if value is not None:
                span.checked(name, value)
        if self.loa_m is not None and self.lwl_m is not None and self.lwl_m > self.loa_m:
            raise OutOfRange("The waterline can't be longer than the boat; give both again.", "lwl_m")


_SPANS: Mapping[str, Range] = MappingProxyType(
    {"loa_m": LENGTH_M, "lwl_m": LENGTH_M, "beam_m": BEAM_M, "draft_m": DEPTH_M, "freeboard_m": DEPTH_M}
)

LETTERS: Mapping[str, str] = MappingProxyType(
    {"loa_m": "LOA", "lwl_m": "LWL", "beam_m": "B", "draft_m": "D", "freeboard_m": "F"}
)
"""What each dimension is called in a formula."""


@dataclass(frozen=True, slots=True)
class Formula:
    """A published formula for one part of a hull: its ``code``, the ``part``, the ``text``, what it ``reads``.

    Source of all: yacht-paint-guides.
    """

    code: str
    part: str
    text: str
    reads: tuple[str, ...]
    work: Callable[..., float]

    @property
    def words(self) -> str:
        """The formula as a person chooses it."""
        return f"{self.code} {self.part}: {self.text}"


def _under(share: float) -> Callable[[float, float, float], float]:
    return lambda lwl_m, beam_m, draft_m: share * lwl_m * (beam_m + draft_m)


_BELOW = ("lwl_m", "beam_m", "draft_m")

FORMULAS: Mapping[str, Formula] = MappingProxyType(
    {
        formula.code: formula
        for formula in (
            Formula(
                "T1",
                "topsides",
                "2 × (LOA + B) × F",
                ("loa_m", "beam_m", "freeboard_m"),
                lambda loa_m, beam_m, freeboard_m: 2 * (loa_m + beam_m) * freeboard_m,
            ),
            Formula("D1", "deck", "0.75 × LOA × B", ("loa_m", "beam_m"), lambda loa_m, beam_m: 0.75 * loa_m * beam_m),
            Formula("B1", "bottom of a motor boat", "LWL × (B + D)", _BELOW, _under(1.0)),
            Formula("B2", "bottom of a motor boat", "0.85 × LWL × (B + D)", _BELOW, _under(0.85)),
            Formula("B3", "bottom with a long or bilge keel", "0.75 × LWL × (B + D)", _BELOW, _under(0.75)),
            Formula("K1", "bottom with a fin keel", "0.50 × LWL × (B + D)", _BELOW, _under(0.5)),
            Formula("K2", "bottom with a fin keel", "0.60 × LWL × (B + D)", _BELOW, _under(0.6)),
        )
    }
)
"""The named formulas, topsides first. B3 stands in the guides between B2 and K2."""

RIVALS: Mapping[str, str] = MappingProxyType({"B1": "B2", "B2": "B1", "K1": "K2", "K2": "K1"})
"""For each formula the one that another guide gives for the same part."""


def hull_area_m2(formula: str, hull: Hull, left_out_m2: float = 0.0) -> float:
    """Area of one part of a hull by a named ``formula``, m², less what is left out (openings and what isn't touched).

    `ImpossibleChoice` for another name, `MissingInput` where a dimension it reads isn't given, `OutOfRange` where as
    much is left out as there is. The topsides formula takes the plan for a rectangle: about 14 % of reserve on a
    pointed bow. Source: yacht-paint-guides.

    >>> round(hull_area_m2("T1", Hull(loa_m=6.4, beam_m=2.45, freeboard_m=0.8)), 2)
    14.16
    """
    if formula not in FORMULAS:
        raise ImpossibleChoice(f"There is no formula {formula!r}; {offer(formula, FORMULAS)}", "formula")
    chosen = FORMULAS[formula]
    given = {name: getattr(hull, name) for name in chosen.reads}
    for name, value in given.items():
        if value is None:
            raise MissingInput(f"{formula} is {chosen.text}; give {LETTERS[name]}, in m or ft.", name)
    whole = chosen.work(**given)
    if LEFT_OUT_M2.checked("left_out_m2", left_out_m2) >= whole:
        raise OutOfRange(
            f"{left_out_m2:g} m² left out of {whole:.2f} m² leaves nothing; take some of it back.", "left_out_m2"
        )
    return whole - left_out_m2


def dry_film_um(wet_um: float, solids_percent: float) -> float:
    """Dry film of a wet one, µm: wet × volume solids ÷ 100. Solids 1 to 100 %. Source: paint-coverage-notes.

    >>> round(dry_film_um(93.0, 43.0), 1)
    40.0
    """
    return wet_um * SOLIDS_PERCENT.checked("solids_percent", solids_percent) / 100


def wet_film_um(dry_um: float, solids_percent: float) -> float:
    """Wet film to lay for a dry one, µm, 0.01 to 1000 dry. Source: paint-coverage-notes.

    >>> round(wet_film_um(40.0, 43.0), 1)
    93.0
    """
    return 100 * DRY_UM.checked("dry_um", dry_um) / SOLIDS_PERCENT.checked("solids_percent", solids_percent)


def thinned_solids_percent(solids_percent: float, thinner_percent: float) -> float:
    """Volume solids after so much thinner on a hundred parts of paint, both by volume, %. Source: paint-coverage-notes.

    >>> round(thinned_solids_percent(50.0, 10.0), 2)
    45.45
    """
    thinner = THINNER_PERCENT.checked("thinner_percent", thinner_percent)
    return SOLIDS_PERCENT.checked("solids_percent", solids_percent) / (1 + thinner / 100)


def spreading_rate_m2_l(solids_percent: float, dry_um: float, loss_percent: float = 0.0) -> float:
    """How many square metres a litre covers at a dry film: 10 × VS ÷ DFT × (1 − loss). Source: paint-coverage-notes.

    >>> round(spreading_rate_m2_l(43.0, 40.0), 2)
    10.75
    """
    kept = 1 - LOSS_PERCENT.checked("loss_percent", loss_percent) / 100
    solids = SOLIDS_PERCENT.checked("solids_percent", solids_percent)
    return 10 * solids / DRY_UM.checked("dry_um", dry_um) * kept


def of_loss(loss_percent: float) -> float:
    """What to multiply by for a loss of so many per cent of what is opened (convention L1): 1 ÷ (1 − loss).

    >>> round(of_loss(30.0), 3)
    1.429
    """
    return 1 / (1 - LOSS_PERCENT.checked("loss_percent", loss_percent) / 100)


def of_factor(factor: float) -> float:
    """What to multiply by for a consumption factor, 1 to 10 (convention L2): the factor itself.

    >>> of_factor(1.3)
    1.3
    """
    return FACTOR.checked("factor", factor)


def coating_by_rate_ml(area_m2: float, coats: float = 1, substrate: str = "gel_coat") -> float:
    """Thin coating for an area by the planning rate (C1), mL: rate × area × coats, and 3 mL for the first section.

    2.5 mL/m² on gel coat, 1.2 on clear coat. 1 to 5 coats, area up to 5000 m². Source: practice.

    >>> round(coating_by_rate_ml(14.16), 1)
    38.4
    """
    if substrate not in RATE_ML_M2:
        raise ImpossibleChoice(f"There is no rate on {substrate!r}; {offer(substrate, RATE_ML_M2)}", "substrate")
    return RATE_ML_M2[substrate] * AREA_M2.checked("area_m2", area_m2) * _coats(coats) + FIRST_SECTION_ML


def coating_by_film_ml(area_m2: float, coats: float, dry_um: float, solids_percent: float, more: float) -> float:
    """Coating for an area by the film it shall leave (C2), mL: area × coats × DFT ÷ (10 × VS) × 1000 × ``more``.

    ``more`` is what the loss makes of it: `of_loss` or `of_factor`, and which of the two is said beside the figure.
    Source: paint-coverage-notes.

    >>> round(coating_by_film_ml(14.16, 1, 0.8, 35.0, of_loss(30.0)), 1)
    46.2
    >>> round(coating_by_film_ml(14.16, 1, 0.8, 35.0, of_factor(1.3)), 1)
    42.1
    """
    area = AREA_M2.checked("area_m2", area_m2)
    return 1000 * area * _coats(coats) / spreading_rate_m2_l(solids_percent, dry_um) * FACTOR.checked("more", more)


def _coats(coats: float) -> int:
    least, most = COATS
    if isinstance(coats, bool) or coats != int(coats) or not least <= coats <= most:
        raise OutOfRange(f"{coats:g} coats can't be laid; give a whole number from {least} to {most}.", "coats")
    return int(coats)


@dataclass(frozen=True, slots=True)
class Packs:
    """Whole packs for a need: ``count`` of ``pack_ml`` each for ``need_ml``."""

    need_ml: float
    pack_ml: float
    count: int

    @property
    def bought_ml(self) -> float:
        """What the packs hold, mL."""
        return self.count * self.pack_ml

    @property
    def one_more(self) -> int:
        """One pack more than these."""
        return self.count + 1

    @property
    def spare_ml(self) -> float:
        """What is left over, mL."""
        return self.bought_ml - self.need_ml

    @property
    def slack_percent(self) -> float:
        """What is left over, in per cent of what the packs hold."""
        return 100 * self.spare_ml / self.bought_ml if self.count else 100.0

    @property
    def tight(self) -> bool:
        """Whether one spill stops the job: less than 5 % over, by the figure that is shown."""
        return rounded(self.slack_percent, 1) < LITTLE_SLACK_PERCENT


def whole_packs(need_ml: float, pack_ml: float) -> Packs:
    """So many packs as hold a need, rounded up; short by a two-hundredth of a millilitre still fits. Source: practice.

    >>> whole_packs(49.3, 50.0).count, whole_packs(49.3, 50.0).tight, whole_packs(38.4, 30.0).count
    (1, True, 2)
    """
    need = NEED_ML.checked("need_ml", need_ml)
    size = PACK_ML.checked("pack_ml", pack_ml)
    return Packs(need, size, max(0, ceil((need - NO_MATTER_ML) / size)))
