"""Materials and hours of a plan: the minutes of each step as bars, discs, pads and grams beside them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from courses.figures.drawing import (
    GLUE,
    Box,
    Drawing,
    Figure,
    FigureError,
    Mark,
    Table,
    Words,
    checked,
    one_decimal,
)
from courses.figures.lanes import TALL, WIDE, Named, Place, lanes, named
from courses.figures.scale import scale_from_nothing

MOST = 40
HOUR = 60.0


@dataclass(frozen=True, slots=True)
class Load:
    """What one step costs: minutes, sanding discs, pads, grams of compound."""

    words: str
    minutes: float
    discs: float = 0.0
    pads: float = 0.0
    grams: float = 0.0
    number: int = 0


@dataclass(frozen=True, slots=True)
class Cost:
    """A load as it is shown, each number to one decimal."""

    name: Named
    numbers: tuple[float, float, float, float]

    @property
    def minutes(self) -> float:
        """Its minutes.

        >>> Cost(Named("Wash"), (1.5, 0.0, 0.0, 0.0)).minutes
        1.5
        """
        return self.numbers[0]


def workload(loads: Sequence[Load], *, per: str = "for each square metre", name: str = "") -> Figure:
    """Draw what the steps of a plan cost in time, with their materials in the table; `per` says for how much of hull.

    Sums are sums of the numbers shown.

    >>> figure = workload([Load("Wash", 1.5), Load("P1000, 3 passes", 6.84, discs=1.2)])
    >>> figure.table.total
    ('In all', '8.3', '1.2', '0.0', '0.0')
    >>> figure.description
    '8.3 minutes in all for each square metre. P1000 takes longest: 6.8 minutes.'

    Raises `FigureError` for no step or more than 40, or a number that is negative or not finite.
    """
    if not 0 < len(loads) <= MOST:
        raise FigureError(f"A plan has 1 to {MOST} steps; these are {len(loads)}.")
    costs = tuple(_cost(load) for load in loads)
    sums = tuple(round(sum(column), 1) for column in zip(*(cost.numbers for cost in costs), strict=True))
    title = f"Minutes of each step, {per}"
    return Figure(
        title=f"{name}: {title[0].lower()}{title[1:]}" if name else title,
        description=_description(costs, sums[0], per),
        wide=_drawn(costs, WIDE),
        tall=_drawn(costs, TALL),
        table=Table(("Step", "Minutes", "Discs", "Pads", "Grams"), tuple(map(_row, costs)), _total(sums)),
    )


def _cost(load: Load) -> Cost:
    minutes, discs, pads, grams = (
        round(checked(number, f"A cost of “{load.words}”"), 1)
        for number in (load.minutes, load.discs, load.pads, load.grams)
    )
    return Cost(named(load.words, load.number), (minutes, discs, pads, grams))


def _description(costs: Sequence[Cost], minutes: float, per: str) -> str:
    longest = max(costs, key=lambda cost: cost.minutes)
    told = f"{one_decimal(minutes)} minutes in all {per}"
    if minutes > HOUR:
        told += f", that is {one_decimal(minutes / HOUR)} hours"
    return f"{told}. {longest.name.head} takes longest: {one_decimal(longest.minutes)} minutes."


def _drawn(costs: Sequence[Cost], place: Place) -> Drawing:
    scale = scale_from_nothing(max(cost.minutes for cost in costs))
    rows = lanes([cost.name for cost in costs], place, 4.0)
    marks, words = [], []
    for cost, lane in zip(costs, rows, strict=True):
        width = scale.share(cost.minutes) * lane.bar.width
        marks.append(Mark("film", Box(lane.bar.x, lane.bar.y, width, lane.bar.height)))
        said = f"{one_decimal(cost.minutes)}{GLUE}min"
        words += [*lane.words, Words(said, lane.bar.x + width + 8.0, lane.bar.y + 18.0, "tb")]
    return Drawing(place.width, rows[-1].foot + 12.0, tuple(marks), tuple(words))


def _row(cost: Cost) -> tuple[str, ...]:
    return (cost.name.whole, *map(one_decimal, cost.numbers))


def _total(sums: Sequence[float]) -> tuple[str, ...]:
    return ("In all", *map(one_decimal, sums))
