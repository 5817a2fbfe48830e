"""The sum of gauge readings: two sets, what has gone between them, and how far that may be off."""

from __future__ import annotations

from courses.trade import gauging
from courses.trade.sums.shape import Input, Note, Output, Quantity, Sum, Worked
from courses.trade.units import rounded

_READING = gauging.READING_UM

_BEFORE = Output("mean_before_um", "Mean before", "um", 2)
_AFTER = Output("mean_after_um", "Mean after", "um", 2)

_DRIFT = Note(
    "A hand-held gauge drifts by {low} to {high} besides: set the zero again before each set.",
    tuple((name, Quantity(drift, "um", 0)) for name, drift in zip(("low", "high"), gauging.DRIFT_UM, strict=True)),
)
_AS_LARGE = Note("The doubt is as large as the figure: say unknown, and read the same places again.")


def _gauge_statistics(zero_um: float, before_um: tuple[float, ...], after_um: tuple[float, ...]) -> Worked:
    removed, doubt = gauging.removed_um(before_um, after_um), gauging.doubt_um(before_um, after_um)
    return Worked(
        {
            "removed_um": removed,
            _BEFORE.name: gauging.mean_um(before_um, zero_um),
            _AFTER.name: gauging.mean_um(after_um, zero_um),
            "spread_before_um": gauging.spread_um(before_um),
            "spread_after_um": gauging.spread_um(after_um),
            "doubt_um": doubt,
        },
        doubt,
        (*_same_places(before_um, after_um), *((_AS_LARGE,) if _hides(removed, doubt) else ()), _DRIFT),
    )


def _hides(removed: float, doubt: float) -> bool:
    return rounded(doubt, 1) >= abs(rounded(removed, 1))


def _same_places(before_um: tuple[float, ...], after_um: tuple[float, ...]) -> tuple[Note, ...]:
    if len(before_um) != len(after_um):
        return ()
    doubt = Quantity(gauging.same_places_doubt_um(before_um, after_um), "um", 1)
    return (
        Note("If both sets were read at the same places, in the same order, it is ±{paired}.", (("paired", doubt),)),
    )


GAUGING_SUMS = (
    Sum(
        "gauge_statistics",
        "What the gauge says has gone",
        "Mean and spread of the readings before and after, what was removed between them, and how far that may be off.",
        (
            Input.over(gauging.ZERO_UM, "zero_um", "Reading on the bare plate", 0.0),
            Input("before_um", "Readings before", "um", _READING.low, _READING.high, count=gauging.READINGS),
            Input("after_um", "Readings after", "um", _READING.low, _READING.high, count=gauging.READINGS),
        ),
        (
            Output("removed_um", "Removed", "um", 2, (_BEFORE.name, _AFTER.name)),
            _BEFORE,
            _AFTER,
            Output("spread_before_um", "Spread before", "um", 2),
            Output("spread_after_um", "Spread after", "um", 2),
            Output("doubt_um", "Doubt of what was removed", "um", 1),
        ),
        "removed = x̄₁ − x̄₂, doubt = t·√(s²·(1 ÷ n₁ + 1 ÷ n₂)), s² pooled; of five and five 2.3·√((s₁² + s₂²) ÷ 5)",
        "students-t",
        "calc",
        Note("From these readings alone, 95 times in a hundred, what was removed is known to ±{doubt}."),
        _gauge_statistics,
    ),
)
