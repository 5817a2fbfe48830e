"""A quote whole: what was asked of a job, worked to area, hours, material, coating and price, and kept as worked.

What is kept is plain JSON, so that a table that is calibrated later doesn't change an offer that was made.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from types import MappingProxyType
from typing import Any

from courses.trade.errors import MissingInput
from courses.trade.estimate import Charge, Grade, Item, Job, Labour, charges, labour, materials, section_m2
from courses.trade.film import (
    FORMULAS,
    Hull,
    Packs,
    coating_by_film_ml,
    coating_by_rate_ml,
    hull_area_m2,
    of_factor,
    of_loss,
    whole_packs,
)
from courses.trade.minutes import Minutes
from courses.trade.ranges import Range
from courses.trade.units import rounded

MARGIN_PERCENT = Range(0.0, 30.0, "percent")
"""Margin on an area: guides ask for 10 to 20 %."""
REACH_M = 0.8
"""How high a section is where there is no freeboard to go by, m: practice."""

LEFT_OUT: Mapping[str, Mapping[str, str]] = MappingProxyType(
    {
        "slippery": MappingProxyType(
            {
                "nonskid": "Non-skid",
                "steps": "Steps",
                "platform": "Swim platform",
                "seats": "Seats",
                "wheel": "Wheel",
            }
        ),
        "solvent": MappingProxyType({"glazing": "Plastic glazing", "vinyl": "Vinyl"}),
        "alone": MappingProxyType(
            {"anodes": "Anodes", "transducers": "Transducers", "teak": "Teak", "metal": "Bare metal"}
        ),
    }
)
"""What an offer leaves out: nothing slippery on it, no solvent or ammonia on it, left alone. Practice."""
PLACES: Mapping[str, str] = MappingProxyType(
    {place: words for group in LEFT_OUT.values() for place, words in group.items()}
)
"""Every place an exclusion map may name."""


@dataclass(frozen=True, slots=True)
class Coat:
    """How the coating is planned: ``method`` C1 (rate) or C2 (film), ``loss`` L1 (share that goes) or L2 (factor)."""

    coats: int
    method: str = "C1"
    substrate: str = "gel_coat"
    dry_um: float | None = None
    solids_percent: float = 35.0
    loss: str = "L1"
    loss_percent: float = 30.0
    factor: float = 1.3
    pack_ml: float = 50.0

    @property
    def more(self) -> float:
        """What the loss multiplies by."""
        return of_loss(self.loss_percent) if self.loss == "L1" else of_factor(self.factor)

    def packs(self, area_m2: float) -> Packs | None:
        """Whole packs for an area, the need rounded to what is shown; None without a coat.

        >>> Coat(1, pack_ml=30.0).packs(14.16).count
        2
        """
        if not self.coats:
            return None
        if self.method == "C1":
            need = coating_by_rate_ml(area_m2, self.coats, self.substrate)
        elif self.dry_um is None:
            raise MissingInput("C2 goes by the film it shall leave; give it, such as 0.8 µm.", "dry_um")
        else:
            need = coating_by_film_ml(area_m2, self.coats, self.dry_um, self.solids_percent, self.more)
        return whole_packs(rounded(need, 1), self.pack_ml)


@dataclass(frozen=True, slots=True)
class Asked:
    """What a quote is asked for: a part of a boat by a ``formula``, the stages, the coat, what is priced apart."""

    formula: str
    hull: Hull
    coat: Coat
    left_out_m2: float = 0.0
    margin_percent: float = 0.0
    chemistries: int = 1
    grades: tuple[Grade, ...] = ()
    rotary: int = 0
    da_cut: int = 0
    da_finish: int = 0
    apart_h: float = 0.0
    rates: Mapping[str, float] = field(default_factory=dict)

    def job(self) -> Job:
        """The job: the area with its margin, worked in sections.

        >>> hull = Hull(loa_m=6.4, beam_m=2.45, freeboard_m=0.8)
        >>> round(Asked("T1", hull, Coat(1), margin_percent=10.0).job().area_m2, 2)
        15.58
        """
        bare = hull_area_m2(self.formula, self.hull, self.left_out_m2)
        margin = MARGIN_PERCENT.checked("margin_percent", self.margin_percent)
        high = self.hull.freeboard_m if self.formula == "T1" else None
        return Job(
            rounded(bare * (1 + margin / 100), 2),
            section_m2(high or REACH_M),
            self.chemistries,
            self.grades,
            self.rotary,
            self.da_cut,
            self.da_finish,
            self.coat.coats,
        )


@dataclass(frozen=True, slots=True)
class Quote:
    """A quote as it was worked: ``area_m2`` by ``formula``, rows of labour, items, packs, lines of the price."""

    formula: str
    area_m2: float
    labour: tuple[Labour, ...]
    items: tuple[Item, ...]
    packs: Packs | None
    charges: tuple[Charge, ...]

    @property
    def hours(self) -> float:
        """Hours of all rows, each as it is shown, to a tenth."""
        return rounded(sum(rounded(row.hours, 1) for row in self.labour), 1)

    @property
    def price(self) -> float:
        """What the lines of the price come to."""
        return rounded(sum(line.amount for line in self.charges), 2)

    @property
    def part(self) -> str:
        """The part of the boat, and its formula."""
        return FORMULAS[self.formula].words

    def estimated(self) -> dict[str, tuple[str, float, str]]:
        """What can be written beside it afterwards, by name: words, figure as shown, unit (empty: things counted).

        Hours row by row, discs, pads, coating.
        """
        rows = {row.name: (row.words, rounded(row.hours, 1), "h") for row in self.labour}
        counted = {
            item.name: (item.words, float(item.order), "")
            for item in self.items
            if item.name.startswith(("discs", "pads"))
        }
        coating = {"coating": ("Coating", self.packs.need_ml, "ml")} if self.packs else {}
        return {**rows, **counted, **coating}

    def as_json(self) -> dict[str, Any]:
        """Plain JSON from which `read_quote` makes it again."""
        return asdict(self)


def read_quote(kept: Mapping[str, Any]) -> Quote:
    """The quote that was kept as JSON.

    >>> empty = Quote("T1", 14.16, (), (), None, ())
    >>> read_quote(empty.as_json()) == empty
    True
    """
    packs = kept["packs"]
    return Quote(
        kept["formula"],
        kept["area_m2"],
        tuple(Labour(**row) for row in kept["labour"]),
        tuple(Item(**item) for item in kept["items"]),
        Packs(**packs) if packs else None,
        tuple(Charge(**line) for line in kept["charges"]),
    )


def quote_of(asked: Asked, minutes: Minutes) -> Quote:
    """A quote worked out by the table of ``minutes``; the first `TradeError` on the way names what was wrong.

    Sources: those of `courses.trade.film` and `courses.trade.estimate`.
    """
    job = asked.job()
    rows, items, packs = labour(job, minutes), materials(job), asked.coat.packs(job.area_m2)
    priced = charges(rows, items, packs, asked.rates, asked.apart_h)
    return Quote(asked.formula, job.area_m2, rows, items, packs, priced)
