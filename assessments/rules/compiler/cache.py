"""Compiled books are kept: the same rules over the same schema with the same functions are compiled once."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import lru_cache

from assessments.rules.checking.checker import Checked
from assessments.rules.compiler.compiled import Compiled
from assessments.rules.functions import Function
from assessments.rules.kinds import Schema
from assessments.rules.rule import ENGINE_VERSION

MOST_BOOKS = 128
MOST_RULES = 512


@dataclass(frozen=True, slots=True)
class _Asked:
    """What makes code the same: the digest of what was said, and the very functions that are lent."""

    digest: str
    calls: tuple[int, ...]
    functions: tuple[Function, ...] = field(compare=False)
    parts: tuple[Checked, ...] = field(compare=False)


def compile_book(
    parts: Sequence[Checked], schema: Schema | None = None, functions: Sequence[Function] = ()
) -> Compiled:
    """Return the parts of a book as code; what was compiled before is given again.

    `schema` and `functions` are those the parts were checked with; without a schema nothing is kept. Raises Refused
    where a part has errors.
    """
    if schema is None:
        return Compiled(parts)
    lent = tuple(functions)
    return _kept(_Asked(digest(parts, schema, lent), tuple(id(each.call) for each in lent), lent, tuple(parts)))


def compile_rule(checked: Checked) -> Compiled:
    """Return one checked rule as code; the same object is compiled once. Raises Refused where it has errors."""
    return _alone(_Asked(str(id(checked)), (), (), (checked,)))


def digest(parts: Sequence[Checked], schema: Schema, functions: Sequence[Function]) -> str:
    """Return the SHA-256, in hex, of rules, schema, signatures and the version of the engine.

    >>> len(digest((), Schema({}), ()))
    64
    """
    lent = [[each.signature, repr(each.params), repr(each.returns), each.cost] for each in functions]
    said = [ENGINE_VERSION, [part.text for part in parts], repr(schema), lent]
    return hashlib.sha256(json.dumps(said).encode()).hexdigest()


@lru_cache(maxsize=MOST_BOOKS)
def _kept(asked: _Asked) -> Compiled:
    return Compiled(asked.parts, asked.digest)


@lru_cache(maxsize=MOST_RULES)
def _alone(asked: _Asked) -> Compiled:
    return Compiled(asked.parts, asked.digest)
