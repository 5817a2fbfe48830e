"""Every sum by name, in the order of the list, and the one way to work one out."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from courses.trade.errors import TradeError, UnknownSum, offer
from courses.trade.sums.air import AIR_SUMS
from courses.trade.sums.cutting import CUTTING_SUMS
from courses.trade.sums.film import FILM_SUMS
from courses.trade.sums.finishing import FINISHING_SUMS
from courses.trade.sums.gauging import GAUGING_SUMS
from courses.trade.sums.gloss import GLOSS_SUMS
from courses.trade.sums.grades import GRADE_SUMS
from courses.trade.sums.heat import HEAT_SUMS
from courses.trade.sums.leftover import LEFTOVER_SUMS
from courses.trade.sums.result import Result
from courses.trade.sums.sanding import SANDING_SUMS
from courses.trade.sums.shape import Sum, read_inputs
from courses.trade.sums.speeds import SPEED_SUMS
from courses.trade.units import Preferences

_ABRADING = (*GRADE_SUMS, *SPEED_SUMS, *CUTTING_SUMS, *SANDING_SUMS, *FINISHING_SUMS, *HEAT_SUMS, *LEFTOVER_SUMS)

SUMS: Mapping[str, Sum] = MappingProxyType(
    {declared.name: declared for declared in (*AIR_SUMS, *GAUGING_SUMS, *GLOSS_SUMS, *_ABRADING, *FILM_SUMS)}
)
"""The register, topic after topic."""


def sum_named(name: str) -> Sum:
    """The sum called ``name``; `UnknownSum` offers the nearest names.

    >>> sum_named("dew_pont")
    Traceback (most recent call last):
    courses.trade.errors.UnknownSum: There is no sum 'dew_pont'; did you mean dew_point?
    """
    if name in SUMS:
        return SUMS[name]
    raise UnknownSum(f"There is no sum {name!r}; {offer(name, SUMS)}")


def work_out(name: str, inputs: Mapping[str, object], prefs: Preferences | None = None) -> Result:
    """The sum ``name`` for ``inputs``: numbers in base units, or text such as ``"54 °F"``.

    With ``prefs``, text without a unit is in that person's unit and refusals speak it: what a page hands in. Raises
    the `TradeError` that names the first input that is missing, unknown, unreadable or outside its range.

    >>> work_out("dew_point", {"air_degc": "68 °F", "air_rh": 50}).value
    9.26
    """
    asked = sum_named(name)
    read = read_inputs(asked.inputs, inputs, prefs)
    return Result.of(asked, read, asked.work(**read))


def refusals(name: str, inputs: Mapping[str, object], prefs: Preferences | None = None) -> dict[str, str]:
    """What is wrong with each input of the sum ``name``, by input: what a form shows beside its fields; empty if none.

    >>> refusals("dew_point", {"air_degc": "warm", "air_rh": 140})["air_rh"]
    '140\xa0% lies outside 1\xa0% to 100\xa0%; give a value within.'
    """
    found = {}
    for wanted in sum_named(name).inputs:
        try:
            wanted.read(inputs.get(wanted.name), prefs)
        except TradeError as wrong:
            found[wanted.name] = wrong.sentence
    return found


def listing() -> list[dict[str, object]]:
    """Every sum as ``sum --list --json`` tells it.

    >>> listing()[0]["name"]
    'dew_point'
    """
    return [declared.listed() for declared in SUMS.values()]
