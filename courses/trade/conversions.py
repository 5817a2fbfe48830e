"""One table of conversions, with the spellings by which people write each unit.

Every number inside the house is in a base unit of doors and rules (``degc um ml …``). Conversions are exact fractions,
so 5 mil is 127 µm to the last digit. The defining factors are those of the international yard and pound (1959) and of
the US gallon of 231 cubic inches.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType
from unicodedata import normalize


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: its ``code``, the ``symbol`` printed, its ``quantity`` and how many ``decimals`` a screen shows.

    ``number * factor + offset`` is the value in the first unit of the same quantity; ``names`` are further spellings.
    """

    code: str
    symbol: str
    quantity: str
    decimals: int
    factor: Fraction = Fraction(1)
    offset: Fraction = Fraction(0)
    names: tuple[str, ...] = ()

    def converted(self, number: Fraction, to: Unit) -> Fraction:
        """``number`` of this unit in the unit ``to`` of the same quantity.

        >>> UNITS["mil"].converted(Fraction(5), UNITS["um"])
        Fraction(127, 1)
        """
        return (number * self.factor + self.offset - to.offset) / to.factor


def _row(code: str, symbol: str, quantity: str, decimals: int, scale: str = "1", names: str = "") -> Unit:
    """A row of the table: ``scale`` is ``factor`` or ``factor + offset``, ``names`` are separated by commas."""
    factor, _, offset = scale.partition(" + ")
    spelled = tuple(name.strip() for name in names.split(",") if name.strip())
    return Unit(code, symbol, quantity, decimals, Fraction(factor), Fraction(offset or "0"), spelled)


def _table() -> Iterator[Unit]:
    yield _row("degc", "°C", "temperature", 1, names="c, deg c, celsius, degrees c, degrees celsius")
    fahrenheit = "f, deg f, fahrenheit, degrees f, degrees fahrenheit"
    yield _row("degf", "°F", "temperature", 1, "5/9 + -160/9", fahrenheit)
    yield _row("K", "K", "temperature difference", 1, names="°c, c, deg c, celsius, kelvin")
    yield _row("degf_step", "°F", "temperature difference", 1, "5/9", fahrenheit + ", f°")
    yield _row("rh", "%", "relative humidity", 0, names="% rh, rh, percent, per cent, pct")
    yield _row("um", "µm", "length", 1, names="um, micron, microns, micrometre, micrometres, micrometer, micrometers")
    yield _row("nm", "nm", "length", 0, "0.001", "nanometre, nanometres, nanometer, nanometers")
    yield _row("mil", "mil", "length", 2, "25.4", "mils, thou")
    yield _row("mm", "mm", "length", 1, "1000", "millimetre, millimetres, millimeter, millimeters")
    yield _row("cm", "cm", "length", 1, "10000")
    yield _row("m", "m", "length", 2, "1000000", "metre, metres, meter, meters")
    yield _row("inch", "in", "length", 2, "25400", 'inch, inches, ″, "')
    yield _row("ft", "ft", "length", 1, "304800", "foot, feet, ′, '")
    yield _row("m2", "m²", "area", 1, names="sq m, square metres, square meters")
    yield _row("cm2", "cm²", "area", 0, "0.0001", "sq cm")
    yield _row("ft2", "ft²", "area", 0, "0.09290304", "sq ft, square feet, square foot")
    yield _row("ml", "mL", "volume", 1, names="millilitre, millilitres, milliliter, milliliters, cc, cm³")
    yield _row("l", "L", "volume", 1, "1000", "litre, litres, liter, liters")
    yield _row("m3", "m³", "volume", 1, "1000000", "cu m, cubic metres, cubic meters")
    yield _row("fl_oz", "fl oz", "volume", 1, "29.5735295625", "us fl oz, fluid ounce, fluid ounces")
    yield _row("qt", "qt", "volume", 2, "946.352946", "quart, quarts, us qt")
    yield _row("gal", "gal", "volume", 2, "3785.411784", "us gal, gallon, gallons, gals")
    yield _row("ft3", "ft³", "volume", 0, "28316.846592", "cu ft, cubic feet, cubic foot")
    yield _row("g", "g", "mass", 0, names="gram, grams, gramme, grammes")
    yield _row("kg", "kg", "mass", 1, "1000", "kilogram, kilograms, kilo, kilos")
    yield _row("oz", "oz", "mass", 1, "28.349523125", "ounce, ounces")
    yield _row("lb", "lb", "mass", 1, "453.59237", "lbs, pound, pounds")
    yield _row("min", "min", "time", 0, names="mins, minute, minutes")
    yield _row("s", "s", "time", 0, "1/60", "sec, secs, second, seconds")
    yield _row("h", "h", "time", 1, "60", "hr, hrs, hour, hours")
    yield _row("d", "d", "time", 1, "1440", "day, days")
    yield _row("rpm", "rpm", "turning speed", 0, names="r/min, 1/min, min-1")
    yield _row("n", "N", "force", 0, names="newton, newtons")
    yield _row("kgf", "kgf", "force", 1, "9.80665", "kp")
    yield _row("lbf", "lbf", "force", 1, "4.4482216152605", "lb force")
    yield _row("mps", "m/s", "speed", 1, names="metres per second, meters per second")
    yield _row("kmh", "km/h", "speed", 0, "5/18", "kph")
    yield _row("mph", "mph", "speed", 0, "0.44704", "miles per hour")
    yield _row("fpm", "ft/min", "speed", 0, "0.00508", "fpm")
    yield _row("ppm", "ppm", "parts of the air", 0)
    yield _row("mgm3", "mg/m³", "mass in the air", 1, names="mg m-3")
    yield _row("db", "dB", "sound level", 0, names="db(a), dba")
    yield _row("mps2", "m/s²", "vibration", 1, names="m s-2")
    yield _row("hpa", "hPa", "pressure", 1, names="mbar, mb, hectopascal, hectopascals")
    yield _row("kpa", "kPa", "pressure", 1, "10")
    yield _row("inhg", "inHg", "pressure", 2, "33.8639", "in hg, inches of mercury")
    yield _row("gkg", "g/kg", "water in the air", 1, names="g per kg")
    yield _row("grlb", "gr/lb", "water in the air", 0, "1/7", "grains per pound, grains/lb, grains, gr")
    yield _row("deg", "°", "angle", 0, names="degree, degrees")
    yield _row("gu", "GU", "gloss", 1, names="gloss unit, gloss units")
    yield _row("ratio", "", "share of one", 2)
    yield _row("percent", "%", "share of one", 0, "1/100", "percent, per cent")


UNITS: Mapping[str, Unit] = MappingProxyType({unit.code: unit for unit in _table()})
"""Every unit by its code: the base units of the doors, and those that people may type or choose."""


def folded(text: str) -> str:
    """A spelling as the table compares it: one form of µ and ², no capitals, gaps or dots.

    >>> folded("FL. OZ."), folded("m²"), folded("° F")
    ('floz', 'm2', '°f')
    """
    plain = normalize("NFKC", text.replace("º", "°")).casefold()
    return "".join(plain.split()).replace(".", "")


def _spellings() -> dict[str, tuple[Unit, ...]]:
    meant: dict[str, tuple[Unit, ...]] = {}
    for unit in UNITS.values():
        for name in sorted({folded(name) for name in (unit.code, unit.symbol, *unit.names)} - {""}):
            meant[name] = (*meant.get(name, ()), unit)
    return meant


SPELLINGS: Mapping[str, tuple[Unit, ...]] = MappingProxyType(_spellings())
"""Every folded spelling with the units it may mean: ``°f`` is a temperature or a difference of two."""
