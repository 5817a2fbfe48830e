"""The trade's formulas as words of the rule language: signature, units, cost.

A value out of a formula's range makes the answer unknown, never an error.
"""

from collections.abc import Callable
from typing import Final

from assessments.rules import Function, num
from courses.trade.air import (
    dew_margin_k,
    dew_point_degc,
    infrared_reading_degc,
    surface_rh,
    water_content_gkg,
)
from courses.trade.errors import OutOfRange


def _or_unknown(formula: Callable[..., float]) -> Callable[..., float | None]:
    def worked(*values: float) -> float | None:
        try:
            return formula(*values)
        except OutOfRange:
            return None

    return worked


FUNCTIONS: Final = (
    Function("dew_point", (num("degc"), num("rh")), num("degc"), 10, _or_unknown(dew_point_degc)),
    Function("dew_margin", (num("degc"), num("rh"), num("degc")), num("K"), 10, _or_unknown(dew_margin_k)),
    Function("surface_rh", (num("degc"), num("rh"), num("degc")), num("rh"), 10, _or_unknown(surface_rh)),
    Function("water_content", (num("degc"), num("rh"), num("hpa")), num("gkg"), 10, _or_unknown(water_content_gkg)),
    Function(
        "infrared_reading",
        (num("degc"), num("degc"), num("ratio"), num("ratio")),
        num("degc"),
        500,
        _or_unknown(infrared_reading_degc),
    ),
)
"""What every rule may call, named and ordered as the sums of the same names."""
