"""Functions a caller lends to the language, each with its signature, units and cost."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

from assessments.rules.kinds import SINGLE, Kind

Answer = float | int | bool | str | None


@dataclass(frozen=True, slots=True)
class Function:
    """A pure function that rules may call by name.

    `params` and `returns` are kinds with units; `cost` is its worst case in steps of the language. `call` gets plain
    values, never a missing one, and returns None where it has no answer. Whatever it raises makes the rule fail to
    judge, under this function's name.

    >>> from assessments.rules.kinds import num
    >>> Function("half", (num("um"),), num("um"), 1, lambda um: um / 2).signature
    'half(num um) gives num um'
    """

    name: str
    params: tuple[Kind, ...]
    returns: Kind
    cost: int
    call: Callable[..., Answer]

    def __post_init__(self) -> None:
        if not (self.name.isascii() and self.name.isidentifier()):
            raise ValueError(f"A rule can't write the function name {self.name!r}; use plain letters, digits and _.")
        if self.returns.name not in SINGLE:
            raise ValueError(f"{self.name}() gives {self.returns.spoken}; a function gives a single value.")
        if self.cost < 1:
            raise ValueError(f"{self.name}() costs {self.cost}; a cost is at least 1.")

    @property
    def signature(self) -> str:
        """The function as one line for people who write rules."""
        params = ", ".join(f"{kind.name} {kind.unit}" if kind.unit else kind.name for kind in self.params)
        unit = f" {self.returns.unit}" if self.returns.unit else ""
        return f"{self.name}({params}) gives {self.returns.name}{unit}"


def by_name(functions: Iterable[Function], taken: Iterable[str]) -> Mapping[str, Function]:
    """Return functions by name; ValueError when a name stands twice or is a word of the language.

    >>> by_name([], ["near"])
    {}
    """
    found: dict[str, Function] = {}
    words = set(taken)
    for function in functions:
        if function.name in found or function.name in words:
            raise ValueError(f"The function name {function.name!r} is taken.")
        found[function.name] = function
    return found
