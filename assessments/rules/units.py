"""The algebra of units inside the checker. A unit is any text, compared literally.

Three cases: a unit (`um`), a pure number (what is left of `um / um`), and None: no unit was said, as of a literal,
which takes the other side's. Products and quotients are counted in powers; `degc` is a point on a scale, so that the
difference of two points is in `K` and two points cannot be added.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from functools import lru_cache

POINTS = frozenset({"degc", "degC"})
_SHOP = "degc degC K rh um mm m m2 m3 ml l g mg kg min h s rpm n mps ppm mgm3 db mps2 hpa gkg ratio pct % GU"
KNOWN = frozenset(_SHOP.split(" "))
_SPELT_OUT: dict[str, dict[str, int]] = {
    "m2": {"m": 2},
    "m3": {"m": 3},
    "mps": {"m": 1, "s": -1},
    "mps2": {"m": 1, "s": -2},
    "mgm3": {"mg": 1, "m": -3},
    "gkg": {"g": 1, "kg": -1},
    "ratio": {},
    "1": {},
}
_PARTS = re.compile(r"([*/·]?)\s*([^*/·\s]+)")


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit as powers of its parts, with the text by which it was declared.

    >>> Unit.of("ml/m2").times(Unit.of("m2")) == Unit.of("ml")
    True
    """

    powers: tuple[tuple[str, int], ...]
    text: str = field(compare=False)

    @classmethod
    @lru_cache(maxsize=512)
    def of(cls, text: str) -> Unit:
        """Return the unit a schema declares, `ml/m2` and `um*um` counted in parts."""
        powers: dict[str, int] = {}
        for sign, part in _PARTS.findall(text):
            for name, power in _SPELT_OUT.get(part, {part: 1}).items():
                powers[name] = powers.get(name, 0) + (-power if sign == "/" else power)
        return cls(_ordered(powers), text)

    @property
    def is_point(self) -> bool:
        """Whether values in this unit are points on a scale, not amounts."""
        return self.text in POINTS and len(self.powers) == 1

    def times(self, other: Unit) -> Unit:
        """Return the unit of a product."""
        return self._joined(other, 1)

    def over(self, other: Unit) -> Unit:
        """Return the unit of a quotient."""
        return self._joined(other, -1)

    def _joined(self, other: Unit, sign: int) -> Unit:
        powers = dict(self.powers)
        for name, power in other.powers:
            powers[name] = powers.get(name, 0) + sign * power
        ordered = _ordered(powers)
        return Unit(ordered, _spelt(ordered))


NUMBER = Unit((), "a pure number")
KELVIN = Unit((("K", 1),), "K")


def _ordered(powers: dict[str, int]) -> tuple[tuple[str, int], ...]:
    return tuple(sorted((name, power) for name, power in powers.items() if power))


def _spelt(powers: tuple[tuple[str, int], ...]) -> str:
    """Return powers as text: `ml/m2`."""
    over = "*".join(_power(name, power) for name, power in powers if power > 0)
    under = "".join(f"/{_power(name, -power)}" for name, power in powers if power < 0)
    return (over or "1") + under if powers else NUMBER.text


def _power(name: str, power: int) -> str:
    return name if power == 1 else f"{name}{power}"


def product(left: Unit | None, right: Unit | None) -> Unit | None:
    """Return the unit of `left * right`; what says no unit counts as a number.

    >>> product(Unit.of("um"), None).text
    'um'
    """
    if left is None or right is None:
        return left or right
    return left.times(right)


def quotient(left: Unit | None, right: Unit | None) -> Unit | None:
    """Return the unit of `left / right`.

    >>> quotient(Unit.of("m"), Unit.of("h")).text
    'm/h'
    """
    if right is None:
        return left
    return (left or NUMBER).over(right)


def shared(left: Unit | None, right: Unit | None) -> tuple[Unit | None, str | None]:
    """Return the unit two compared values share and, where they don't, the reason as a sentence.

    >>> shared(Unit.of("um"), Unit.of("h"))[1]
    'This is in h, but the left side is in um.'
    """
    if left is None or right is None or left == right:
        return (left if left is not None else right), None
    return None, f"This is in {right.text}, but the left side is in {left.text}."


def added(left: Unit | None, right: Unit | None) -> tuple[Unit | None, str | None]:
    """Return the unit of `left + right` and a reason where there is none.

    >>> added(Unit.of("degc"), Unit.of("K"))[0].text
    'degc'
    """
    if _both_points(left, right):
        return None, "Two temperatures can't be added; a temperature and a difference in K can."
    return _shifted(left, right) or _shifted(right, left) or shared(left, right)


def subtracted(left: Unit | None, right: Unit | None) -> tuple[Unit | None, str | None]:
    """Return the unit of `left - right` and a reason where there is none.

    >>> subtracted(Unit.of("degc"), Unit.of("degc"))[0].text
    'K'
    """
    if _both_points(left, right) and left == right:
        return KELVIN, None
    if right is not None and right.is_point and left == KELVIN:
        return None, "A temperature can't be taken from a difference in K; write the temperature first."
    if left is None and right is not None and right.is_point:
        return KELVIN, None
    return _shifted(left, right) or shared(left, right)


def _both_points(left: Unit | None, right: Unit | None) -> bool:
    return left is not None and right is not None and left.is_point and right.is_point


def _shifted(point: Unit | None, by: Unit | None) -> tuple[Unit, None] | None:
    """Return the point's unit when a difference (in K, or a literal) moves it."""
    if point is not None and point.is_point and (by is None or by == KELVIN):
        return point, None
    return None


def difference(unit: Unit | None) -> Unit | None:
    """Return the unit in which two values of this unit differ.

    >>> difference(Unit.of("degc")).text
    'K'
    """
    return KELVIN if unit is not None and unit.is_point else unit
