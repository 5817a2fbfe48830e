"""What a job takes: hours from the one table of minutes, discs, pads, what is poured, whole packs, and its price.

The table of minutes is the simulator's own and comes in as an argument, so that nobody plans by one table and quotes by
another. What is used up a square metre is common practice; a school that wrote *used beside estimated* knows better.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import chain
from math import ceil
from types import MappingProxyType

from courses.trade.errors import ImpossibleChoice, MissingInput, offer
from courses.trade.film import AREA_M2, Packs
from courses.trade.minutes import ROWS, Minutes
from courses.trade.ranges import Range
from courses.trade.units import rounded

PASSES: Mapping[str, int] = MappingProxyType({"rotary": 3, "da_cut": 6, "da_finish": 4})
"""Passes of a set: practice."""

SECTION_LENGTH_M = 1.8
"""How long a section of the topsides is, worked at its full height: practice, 1.2 to 2 m."""
DISC_M2 = 0.75
"""What a disc does before it is thrown away; it isn't carried over to the next section: practice, 0.5 to 1."""
PAD_M2: Mapping[str, float] = MappingProxyType({"rotary": 8.0, "da_cut": 6.5, "da_finish": 6.5})
"""What a pad does in a set: wool 6 to 10, foam 5 to 8: practice."""
SET_G_M2: Mapping[str, float] = MappingProxyType({"rotary": 27.5, "da_cut": 27.5, "da_finish": 15.0})
"""Compound, and of the finish polish, a set: practice, 20 to 35 and 10 to 20."""
SOAP_ML_M2, CHEMISTRY_ML_M2, WIPE_ML_M2 = 5.0, 12.0, 25.0
"""Concentrate of a wash, product of a decontamination, panel wipe: practice."""
TOWELS_M2, COAT_TOWEL_PAIR_M2, APPLICATOR_M2 = 5 / 2, 4.0, 5.0
"""What one towel wipes, a pair of towels levels, an applicator lays: practice."""
ORDERED_IN = 50.0
"""Grams and millilitres are ordered in steps of this many."""

SECTION_M2 = Range(0.05, 20.0, "m2")
SETS = Range(0.0, 8.0, "ratio")
APART_H = Range(0.0, 500.0, "h")
RATE = Range(0.0, 1e5, "ratio")

RATES: Mapping[str, str] = MappingProxyType(
    {
        "hour": "an hour of work",
        "disc": "a disc",
        "pad": "a pad",
        "kilogram": "a kilogram of compound or polish",
        "litre": "a litre of soap, chemistry or wipe",
        "cloth": "a towel or an applicator",
        "pack": "a pack of coating",
    }
)
"""What a school has a price for."""


@dataclass(frozen=True, slots=True)
class Grade:
    """A grade of abrasive and its passes, 1 to 20."""

    name: str
    passes: int

    def __post_init__(self) -> None:
        """Refuse passes that nobody makes."""
        Range(1.0, 20.0, "ratio").checked("passes", self.passes)


@dataclass(frozen=True, slots=True)
class Job:
    """What is to be done to how much: ``area_m2`` worked in sections of ``section_m2``, and how often each stage comes.

    A wash, drying and inspecting always belong to it; tape, a test spot and washing off to whatever abrades. Sets run
    from 0 to 8. `OutOfRange` beyond.
    """

    area_m2: float
    section_m2: float
    chemistries: int = 1
    grades: tuple[Grade, ...] = ()
    rotary: int = 0
    da_cut: int = 0
    da_finish: int = 0
    coats: int = 0

    def __post_init__(self) -> None:
        """Refuse what no job is."""
        AREA_M2.checked("area_m2", self.area_m2)
        SECTION_M2.checked("section_m2", self.section_m2)
        for name in ("chemistries", "rotary", "da_cut", "da_finish", "coats"):
            SETS.checked(name, getattr(self, name))

    @property
    def abrades(self) -> bool:
        """Whether anything is taken off."""
        return bool(self.grades or self.polishes)

    @property
    def polishes(self) -> Mapping[str, int]:
        """How many sets of each kind of polishing there are; none that doesn't come."""
        sets = {name: getattr(self, name) for name in PASSES}
        return {name: count for name, count in sets.items() if count}

    @property
    def washes(self) -> int:
        """Washes with soap: before, and off again."""
        return 2 if self._washed_off else 1

    @property
    def wipes(self) -> int:
        """Wipes with solvent: after each set, and once before the coat."""
        return sum(self.polishes.values()) + (1 if self._washed_off else 0)

    @property
    def _washed_off(self) -> bool:
        return self.abrades or self.coats > 0


def section_m2(freeboard_m: float) -> float:
    """A section of the topsides, m²: 1.8 m long, as high as the side. Source: practice.

    >>> round(section_m2(0.8), 2)
    1.44
    """
    return SECTION_LENGTH_M * freeboard_m


@dataclass(frozen=True, slots=True)
class Labour:
    """A row of the labour: its ``name``, its ``words``, minutes a square metre, hours of the job."""

    name: str
    words: str
    min_m2: float
    hours: float

    @property
    def min_10_m2(self) -> float:
        """Minutes for ten square metres, as people are told them."""
        return 10 * self.min_m2


def labour(job: Job, minutes: Minutes) -> tuple[Labour, ...]:
    """The hours of a job, row by row in the order of work, by the table of ``minutes``.

    `MissingInput` where the table lacks a row. Source: model, and practice for drying, inspecting and coating.

    >>> minutes = dict.fromkeys(ROWS, 1.0)
    >>> [(row.name, row.min_m2) for row in labour(Job(60.0, 1.0, rotary=1), minutes)]
    [('wash', 4.0), ('tape', 2.0), ('rotary', 4.0), ('wash_off', 4.0)]
    """
    for name in ROWS:
        if name not in minutes:
            raise MissingInput("The table of minutes has no such row.", name)
    return tuple(Labour(name, words, each, each * job.area_m2 / 60) for name, words, each in _stages(job, minutes))


def _stages(job: Job, minutes: Minutes) -> Iterator[tuple[str, str, float]]:
    look = minutes["dry"] + minutes["inspect"]
    chemistry = job.chemistries * minutes["chem"]
    words = "Wash, chemistry, dry, inspect" if chemistry else "Wash, dry, inspect"
    yield "wash", words, minutes["wash"] + chemistry + look
    if job.abrades:
        yield "tape", "Tape and untape, test spot", minutes["tape"] + minutes["test_spot"]
    for grade in job.grades:
        words = f"{grade.name}, {grade.passes} {'pass' if grade.passes == 1 else 'passes'}, dry, inspect"
        yield f"sand_{grade.name.lower()}", words, grade.passes * minutes["sand"] + look
    for name, sets in job.polishes.items():
        each = PASSES[name] * minutes[name] + minutes["wipe"]
        yield name, _SET_WORDS[name] + (f", {sets} times" if sets > 1 else ""), sets * each
    if job.abrades or job.coats:
        yield "wash_off", "Wash off, dry, inspect, wipe", minutes["wash"] + look + minutes["wipe"]
    if job.coats:
        yield "coat", "Coat" if job.coats == 1 else f"Coat, {job.coats} layers", job.coats * minutes["coat"]


_SET_WORDS: Mapping[str, str] = MappingProxyType(
    {
        "rotary": "Rotary set, three passes, wipe",
        "da_cut": "Dual-action cut, six passes, wipe",
        "da_finish": "Dual-action finish, four passes, wipe",
    }
)


def hours_of(rows: tuple[Labour, ...]) -> float:
    """The hours of all rows together, not rounded.

    >>> hours_of((Labour("wash", "Wash", 6.0, 1.5), Labour("coat", "Coat", 2.0, 0.5)))
    2.0
    """
    return sum(row.hours for row in rows)


@dataclass(frozen=True, slots=True)
class Item:
    """Something used up: what the job takes (``need``), what is put on the order, and ``spare`` put on top of it.

    ``unit`` is ``g`` or ``ml``, or empty for things one counts.
    """

    name: str
    words: str
    need: float
    order: int
    spare: int = 0
    unit: str = ""

    @property
    def all(self) -> int:
        """What is ordered, spare included."""
        return self.order + self.spare


def discs(job: Job) -> int:
    """Discs of 150 mm: grades × sections × discs a section, each rounded up, without spares (E2). Source: practice.

    A disc isn't carried over to the next section, so this is more than the area alone asks.

    >>> discs(Job(14.16, 1.44, grades=(Grade("P1500", 4), Grade("P2000", 3))))
    40
    """
    return len(job.grades) * _up(job.area_m2 / job.section_m2) * _up(job.section_m2 / DISC_M2)


def materials(job: Job) -> tuple[Item, ...]:
    """Everything a job uses up but its coating (E2, E3): counts rounded up, what is poured to the next 50.

    Source: practice.

    >>> [(item.name, item.order, item.spare) for item in materials(Job(14.16, 1.44, rotary=1)) if not item.unit]
    [('pads_rotary', 2, 1), ('towels', 12, 0)]
    """
    items = chain(_discs(job), _pads(job), _poured(job), _cloths(job))
    return tuple(item for item in items if item.need > 0)


def _discs(job: Job) -> Iterator[Item]:
    yield Item("discs", "Discs", len(job.grades) * job.area_m2 / DISC_M2, discs(job), len(job.grades))


def _pads(job: Job) -> Iterator[Item]:
    words = {"rotary": "Wool pads", "da_cut": "Cutting pads, foam", "da_finish": "Finishing pads, foam"}
    for name, sets in job.polishes.items():
        need = sets * job.area_m2 / PAD_M2[name]
        yield Item(f"pads_{name}", words[name], need, _up(need), 1)


def _poured(job: Job) -> Iterator[Item]:
    sets = job.polishes
    cut = sum(sets.get(name, 0) * SET_G_M2[name] for name in ("rotary", "da_cut"))
    for name, words, each, unit in (
        ("compound", "Compound", cut, "g"),
        ("polish", "Polish", sets.get("da_finish", 0) * SET_G_M2["da_finish"], "g"),
        ("soap", "Soap, concentrate", job.washes * SOAP_ML_M2, "ml"),
        ("chemistry", "Decontamination", job.chemistries * CHEMISTRY_ML_M2, "ml"),
        ("wipe", "Panel wipe", job.wipes * WIPE_ML_M2, "ml"),
    ):
        need = each * job.area_m2
        yield Item(name, words, need, int(_up(need / ORDERED_IN) * ORDERED_IN), unit=unit)


def _cloths(job: Job) -> Iterator[Item]:
    each = job.area_m2 / TOWELS_M2
    yield Item("towels", "Towels for wiping", job.wipes * each, job.wipes * _up(each))
    for name, words, covers in (
        ("coat_towels", "Pairs of towels for the coat", COAT_TOWEL_PAIR_M2),
        ("applicators", "Applicators", APPLICATOR_M2),
    ):
        each = job.area_m2 / covers
        yield Item(name, words, job.coats * each, job.coats * _up(each))


def _up(number: float) -> int:
    """Rounded up, after taking the dust of binary fractions off."""
    return ceil(rounded(number, 6))


@dataclass(frozen=True, slots=True)
class Charge:
    """A line of a price: so much of something, what one of it costs, and what that comes to, to the hundredth."""

    name: str
    words: str
    quantity: float
    rate: float

    @property
    def amount(self) -> float:
        """Quantity times rate, rounded to the hundredth."""
        return rounded(self.quantity * self.rate, 2)


def charges(
    rows: tuple[Labour, ...],
    items: tuple[Item, ...],
    packs: Packs | None,
    rates: Mapping[str, float],
    apart_h: float = 0.0,
) -> tuple[Charge, ...]:
    """The price of a job, line by line, by a school's own ``rates`` (`RATES`); a line without a rate is left out.

    Hours are those shown, to a tenth; ``apart_h`` are those priced apart from the table: condition report, access,
    moving, setting up, air log. `ImpossibleChoice` for an unknown rate, `OutOfRange` for one below 0.

    >>> charges((Labour("wash", "Wash", 60.0, 2.04),), (), None, {"hour": 60.0}, apart_h=1.0)[0].amount
    180.0
    """
    for name, rate in rates.items():
        if name not in RATES:
            raise ImpossibleChoice(f"There is no rate {name!r}; {offer(name, RATES)}", name)
        RATE.checked(name, rate)
    hours = sum(rounded(row.hours, 1) for row in rows) + APART_H.checked("apart_h", apart_h)
    counted = {
        "hour": ("Work", hours),
        "disc": ("Discs", _ordered(items, "discs")),
        "pad": ("Pads", _ordered(items, *(f"pads_{name}" for name in PASSES))),
        "kilogram": ("Compound and polish", _ordered(items, "compound", "polish") / 1000),
        "litre": ("Soap, decontamination, panel wipe", _ordered(items, "soap", "chemistry", "wipe") / 1000),
        "cloth": ("Towels and applicators", _ordered(items, "towels", "applicators", "coat_towels", "coat_towels")),
        "pack": ("Coating", float(packs.count) if packs else 0.0),
    }
    return tuple(
        Charge(name, words, quantity, rates[name])
        for name, (words, quantity) in counted.items()
        if quantity and name in rates
    )


def _ordered(items: tuple[Item, ...], *names: str) -> float:
    """What is ordered of the named items; one named twice counts twice, as a pair does."""
    ordered = {item.name: item.all for item in items}
    return float(sum(ordered.get(name, 0) for name in names))


def out_by(estimated: float, used: float) -> float:
    """How far off an estimate was, in per cent of the estimate: more was used, the figure is positive.

    >>> out_by(4.0, 5.0), out_by(4.0, 3.0)
    (25.0, -25.0)
    """
    return 100 * (used - estimated) / estimated


def furthest_out(pairs: Mapping[str, tuple[float, float]]) -> str | None:
    """The name whose (estimated, used) lie furthest apart in per cent, the first of equals; None if nothing is off.

    >>> furthest_out({"wash": (2.0, 2.2), "rotary": (3.9, 2.5)})
    'rotary'
    """
    off = {name: abs(out_by(*pair)) for name, pair in pairs.items() if pair[0] > 0}
    return max(off, key=lambda name: off[name]) if off and max(off.values()) > 0 else None
