"""What a look at a zone shows: marks that are still open, strays, trails, a veil; water and oils hide some of it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from courses.trade.constants import Constants
from courses.trade.surface.condition import Condition
from courses.trade.surface.marks import Marks

__all__ = ["UNNAMED", "answerable", "is_clear", "said_of_zones", "shown", "zone_words"]

UNNAMED: Final = ("main", "rest", "all")
"""Zones that no plan names: what isn't listed by itself."""


def answerable(condition: Condition) -> Iterator[Marks]:
    """The families of marks that abrasion can bring down, that weren't agreed to stay, and that weren't referred: a
    referral speaks for what is deeper than the budget.
    """
    zone = condition.zone
    for one in condition.marks:
        referred = condition.referred and one.deepest_um > zone.budget_um
        if one.ground and one.kind not in zone.may_stay and not referred:
            yield one


def is_clear(condition: Condition, own_tail_um: float, constants: Constants) -> bool:
    """Whether the wipe shows a zone clear: no mark that can be corrected is open over more than 5 %, no stray stands
    more than 0.2 µm above what this abrasive leaves.
    """
    gates = constants.gates
    if condition.tail_um > own_tail_um + gates.stray_um:
        return False
    if "oxidation" not in condition.zone.may_stay and condition.oxidised > gates.open_share:
        return False
    return all(condition.open_share(one) <= gates.open_share for one in answerable(condition))


def shown(condition: Condition, constants: Constants) -> Iterator[tuple[str, str]]:
    """Code and sentence of everything a look shows here that the finish doesn't allow. Nothing shows while it is wet;
    under oils no mark shows that they fill.
    """
    if condition.wet:
        yield "wet", "It is wet: nothing can be judged."
        return
    gates = constants.gates
    hidden = gates.oil_fills_um if condition.oils else 0.0
    if condition.tail_um > condition.own_tail_um + gates.stray_um and condition.tail_um > hidden:
        yield "strays", "Strays stand that the last abrasive didn't leave."
    if condition.trail_um > max(gates.visible_um, hidden):
        yield "trail", "Bands follow the path of the machine."
    if condition.oxidised > gates.oxidised:
        yield "oxidised", "A veil is left."
    for one in condition.marks:
        if condition.open_share(one) > gates.open_share and condition.left_um(one) >= hidden:
            yield one.kind, f"Still there: {one.called}."


def zone_words(zone: str) -> str:
    """A zone as a sentence begins.

    >>> zone_words("main"), zone_words("port_bow")
    ('The rest', 'The port bow')
    """
    return "The rest" if zone in UNNAMED else f"The {zone.replace('_', ' ')}"


def said_of_zones(found: Mapping[str, Sequence[str]], zones: int) -> tuple[str, ...]:
    """Each sentence of ``found`` once, by the zones it holds for; where that isn't all the ``zones`` looked at, with
    their names.

    >>> said_of_zones({"A veil is left.": ["edge"], "It is wet: nothing can be judged.": ["main", "edge"]}, 2)
    ('The edge: a veil is left.', 'It is wet: nothing can be judged.')
    """
    return tuple(
        sentence if len(names) == zones else f"{_together(names)}: {sentence[0].lower()}{sentence[1:]}"
        for sentence, names in found.items()
    )


def _together(zones: Sequence[str]) -> str:
    first, *others = [zone_words(zone) for zone in zones]
    return ", ".join([first, *(f"t{other[1:]}" for other in others)])
