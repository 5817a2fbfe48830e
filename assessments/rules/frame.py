"""What a run looks at and what it can reckon with: events whole, and numbers within bounds."""

from __future__ import annotations

import math
from typing import Any

RawEvent = tuple[int, Any, tuple[Any, ...]]
"""Number of the part, result, operands as they were."""

LARGEST = 1e300


def finite(value: float) -> float | None:
    """Return a number that can be reckoned with further, None for one that has run out of all bounds.

    >>> finite(2.5), finite(float("inf")), finite(10**400)
    (2.5, None, None)
    """
    return value if abs(value) <= LARGEST and math.isfinite(value) else None
