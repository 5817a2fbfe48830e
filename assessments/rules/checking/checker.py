"""Reads a rule against a schema: names, kinds, choices, units, what may be missing, and the worst it can cost."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from assessments.rules.checking.asking import spots
from assessments.rules.checking.backing import Ask, Claim, asked
from assessments.rules.checking.habits import claims
from assessments.rules.checking.language import parse
from assessments.rules.checking.reader import PartReader
from assessments.rules.checking.sheet import Sheet
from assessments.rules.checking.words import RESERVED
from assessments.rules.faults import Fault
from assessments.rules.functions import Function, by_name
from assessments.rules.kinds import Schema
from assessments.rules.nodes import Node, Path

MAX_COST = 60_000
_WANTED = {"bool": ("bool",), "num": ("num", "int")}


@dataclass(frozen=True, slots=True)
class Checked:
    """A rule that was read: its tree when nothing is wrong, and everything that was found.

    `cost` is the worst case in steps, `reads` the paths it reads, with `[]` for an item of a list. `claims` are what it
    takes for granted: what it `speaks_of` settles its own, what it `backs` (asks for in any case) all of a book.
    """

    text: str
    root: Node | None
    nodes: tuple[Node, ...]
    errors: tuple[Fault, ...]
    warnings: tuple[Fault, ...]
    cost: int
    reads: frozenset[Path]
    claims: tuple[Claim, ...] = ()
    backs: frozenset[Ask] = frozenset()
    speaks_of: frozenset[Ask] = frozenset()

    @property
    def ok(self) -> bool:
        """Whether the rule may be used."""
        return self.root is not None

    def said(self, node: Node) -> str:
        """Return the text of one part."""
        return self.text[node.start : node.end]


def check(text: object, schema: Schema, functions: Iterable[Function] = (), wants: str = "bool") -> Checked:
    """Return what is to be known of one rule; a bad rule is an answer, never an exception.

    `wants` is `bool` for a test, `num` for a share, `any` for a value expression.

    >>> from assessments.rules.kinds import num, record
    >>> schema = Schema({"answer": record({"te": num("h", opt=True)})})
    >>> check("answer.te > 3", schema).ok
    True
    >>> check("answer.tee > 3", schema).errors[0].message
    "There is no field 'tee'; did you mean 'te'?"
    """
    parsed = parse(text)
    lent_functions = by_name(functions, RESERVED)
    if isinstance(parsed, Fault):
        return Checked(str(text)[:1000], None, (), (parsed,), (), 0, frozenset())
    sheet = Sheet(parsed, schema, lent_functions)
    root = PartReader(sheet).read(parsed.tree)
    _check_whole(sheet, root, wants)
    seen = spots(parsed.tree)
    made, found = claims(parsed, seen), asked(seen)
    for claim in made:
        if not claim.settled(found.named):
            sheet.warn(claim.start, claim.end, claim.warning)
    return Checked(
        parsed.text,
        None if sheet.faults else root,
        tuple(sheet.nodes),
        tuple(sheet.faults),
        tuple(sheet.warnings),
        sheet.cost,
        frozenset(sheet.reads),
        made,
        found.firm,
        found.named,
    )


def _check_whole(sheet: Sheet, root: Node, wants: str) -> None:
    whole = len(sheet.parsed.text)
    if root.sort.kind and wants in _WANTED and root.sort.name not in _WANTED[wants]:
        wanted = "yes/no" if wants == "bool" else "a number"
        sheet.fault(root.start, root.end, f"The rule has to give {wanted}; it gives {root.sort.kind.spoken}.")
    if sheet.cost > MAX_COST:
        said = (
            f"The rule can cost {sheet.cost} steps on full lists, {MAX_COST} are allowed; walk fewer or shorter lists."
        )
        sheet.fault(0, whole, said)
