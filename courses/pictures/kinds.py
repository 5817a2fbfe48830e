"""Every kind of defect that can be pictured, and the three functions that make it."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any, Final

from courses.pictures.kind import Kind
from courses.pictures.swirls import SWIRL

__all__ = ["KINDS", "kind_of"]

KINDS: Final[Mapping[str, Kind[Any]]] = MappingProxyType(
    {
        "swirl": SWIRL,
    }
)
"""Kind by its code; a kind's row is added where its module is."""


def kind_of(code: str) -> Kind[Any]:
    """The kind called ``code``; every code of the catalogue has one."""
    return KINDS[code]
