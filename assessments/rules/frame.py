"""What a run looks at and what it can reckon with: events whole, and numbers within bounds."""

from __future__ import annotations

from typing import Any

RawEvent = tuple[int, Any, tuple[Any, ...]]
"""Number of the part, result, operands as they were."""

LARGEST = 1e300
"""What is larger, or no number at all, has run out of all bounds: it is unknown."""
