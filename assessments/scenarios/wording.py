"""Sentences of a scenario file: told where their conditions hold, with values in their slots."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType


@dataclass(frozen=True, slots=True)
class Sentence:
    """One sentence with ``{slots}``, told only where its conditions hold.

    ``given`` and ``missing`` name a value that must, or mustn't, be there; ``where`` names values and what they may be.
    Of a reading, ``asked`` and ``not_asked`` name others that must, or mustn't, have been asked for as well.
    A slot is a field's name, or a fixed quantity such as ``{6.40 m}``; both are shown in the reader's units.
    """

    text: str
    given: str = ""
    missing: str = ""
    where: Mapping[str, tuple[str, ...]] = field(default_factory=lambda: MappingProxyType({}))
    asked: tuple[str, ...] = ()
    not_asked: tuple[str, ...] = ()


Paragraph = tuple[Sentence, ...]
