"""What a sum is made of: typed inputs with unit and range, outputs, notes that speak any person's units, a source."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from courses.trade.errors import ImpossibleChoice, MissingInput, TradeError, UnitError, UnknownInput, offer
from courses.trade.ranges import METRIC, Range
from courses.trade.units import Preferences, example, parse_quantity, shown

Value = float | str | tuple[float, ...] | tuple[Mapping[str, "Value"], ...] | None
"""What an input holds once read: one number in its base unit or several, a choice, rows of a table, or nothing."""


@dataclass(frozen=True, slots=True)
class Input:
    """One input: a quantity in ``unit`` from ``low`` to ``high``, one of ``choices``, or rows with ``columns``.

    ``words`` are what a reader sees of the ``choices``, in their order, where that differs.
    With ``count`` it is a list of so many quantities, at least and at most: readings, written one after another.
    Without ``default`` it has to be given, unless it is ``optional``: then leaving it out has a meaning of its own,
    which its title tells. A ``model`` length is one of our training model: micrometres for whoever reads it.
    """

    name: str
    title: str
    unit: str = ""
    low: float | None = None
    high: float | None = None
    default: float | str | None = None
    choices: tuple[str, ...] = ()
    words: tuple[str, ...] = ()
    columns: tuple[Input, ...] = ()
    optional: bool = False
    count: tuple[int, int] | None = None
    model: bool = False

    @classmethod
    def over(cls, span: Range, name: str, title: str, default: float | None = None, optional: bool = False) -> Input:
        """A quantity over the range for which its formula holds.

        >>> Input.over(Range(1.0, 100.0, "rh"), "air_rh", "Humidity of the air").unit
        'rh'
        """
        return cls(name, title, span.unit, span.low, span.high, default, optional=optional)

    @property
    def needed(self) -> bool:
        """Whether it has to be given."""
        return self.default is None and not self.optional

    def prefs_for(self, prefs: Preferences) -> Preferences:
        """The units in which a person with these ``prefs`` types and reads it.

        >>> Input("depth_um", "Depth", "um", model=True).prefs_for(Preferences.us()).film
        'um'
        """
        return METRIC if self.model else prefs

    @property
    def options(self) -> Mapping[str, str]:
        """What a reader sees of each choice.

        >>> Input("machine", "Machine", choices=("da", "hand"), words=("Dual action", "By hand")).options["da"]
        'Dual action'
        """
        return dict(zip(self.choices, self.words or self.choices, strict=True))

    def read(self, given: object, prefs: Preferences | None = None) -> Value:
        """``given`` (a number, text with or without unit, a choice, a list of rows) as the sum's value.

        None and blank text mean left out. With ``prefs`` a bare number in text is in that person's unit, and refusals
        speak it. Raises a `TradeError` that names this input.

        >>> Input("film_um", "Film", "um", 0.0, 1000.0).read("5 mil")
        127.0
        """
        if given is None or (isinstance(given, str) and not given.strip()):
            return self._left_out()
        prefs = self.prefs_for(prefs) if prefs else None
        if self.columns:
            return self._rows(given, prefs)
        if self.count:
            return self._several(given, self.count, prefs)
        return self._chosen(given) if self.choices else self._quantity(given, prefs)

    def _left_out(self) -> Value:
        if self.needed:
            raise MissingInput(f"{self.title} is missing; give {self._example()}.", self.name)
        return self.default

    def _example(self) -> str:
        if self.columns:
            return f"rows such as [{self._blank_row()}]"
        if self.count:
            return "readings such as 92 95 90 94 96"
        return f"one of {', '.join(self.choices)}" if self.choices else f"a value such as {example(self.unit)}"

    def _quantity(self, given: object, prefs: Preferences | None) -> float:
        if not isinstance(given, str | int | float):
            raise UnitError(f"{str(given)[:40]!r} is no number; give one value.", self.name)
        typed_in = prefs.unit_for(self.unit).code if prefs else None
        try:
            value = parse_quantity(given, self.unit, typed_in)
        except UnitError as wrong:
            raise UnitError(wrong.sentence, self.name) from None
        if self.low is None or self.high is None:
            return value
        return Range(self.low, self.high, self.unit).checked(self.name, value, prefs or METRIC)

    def _several(self, given: object, count: tuple[int, int], prefs: Preferences | None) -> tuple[float, ...]:
        numbers = split_list(given) if isinstance(given, str) else given
        if not isinstance(numbers, list | tuple):
            raise UnitError(f"{str(given)[:40]!r} is no list; write {self._example()}.", self.name)
        least, most = count
        if not least <= len(numbers) <= most:
            raise ImpossibleChoice(f"Give {least} to {most} readings; this holds {len(numbers)}.", self.name)
        return tuple(self._quantity(number, prefs) for number in numbers)

    def _chosen(self, given: object) -> str:
        if isinstance(given, str) and given in self.choices:
            return given
        near = offer(str(given), self.choices)
        raise ImpossibleChoice(f"{str(given)[:40]!r} is none of the choices; {near}", self.name)

    def _rows(self, given: object, prefs: Preferences | None) -> tuple[Mapping[str, Value], ...]:
        if not isinstance(given, list | tuple) or not all(isinstance(row, Mapping) for row in given):
            raise ImpossibleChoice(f"{str(given)[:40]!r} is no list of rows; write [{self._blank_row()}].", self.name)
        read = []
        for number, row in enumerate(given, start=1):
            try:
                read.append(read_inputs(self.columns, row, prefs))
            except TradeError as wrong:
                raise type(wrong)(wrong.sentence, f"{self.name}, row {number}, {wrong.input}") from None
        return tuple(read)

    def _blank_row(self) -> str:
        return "{" + ", ".join(f'"{column.name}": …' for column in self.columns) + "}"

    def listed(self) -> dict[str, object]:
        """This input as ``sum --list --json`` tells it."""
        return {
            "name": self.name,
            "unit": self.unit or None,
            "min": self.low,
            "max": self.high,
            "default": self.default,
            "choices": list(self.choices) or None,
            "columns": [column.listed() for column in self.columns] or None,
            **({"count": list(self.count)} if self.count else {}),
        }


def split_list(text: str) -> list[str]:
    """The numbers of a list as people write them: apart by spaces, semicolons or, without either, commas.

    >>> split_list("92 95,5; 90"), split_list("[92, 95, 90]"), split_list("92,95,90")
    (['92', '95,5', '90'], ['92', '95', '90'], ['92', '95', '90'])
    """
    parts = [part.rstrip(",") for part in text.strip("[] ").replace(";", " ").split()]
    return parts[0].split(",") if len(parts) == 1 and parts[0].count(",") > 1 else parts


def read_inputs(
    inputs: tuple[Input, ...], given: Mapping[str, object], prefs: Preferences | None = None
) -> dict[str, Value]:
    """Every one of ``inputs`` read from ``given``; the first `TradeError` on the way is raised.

    >>> read_inputs((Input("air_rh", "Humidity of the air", "rh", 1.0, 100.0),), {"air_rh": "65 %"})
    {'air_rh': 65.0}
    """
    known = [wanted.name for wanted in inputs]
    for name in given:
        if name not in known:
            raise UnknownInput(f"There is no such input; {offer(str(name), known)}", str(name))
    return {wanted.name: wanted.read(given.get(wanted.name), prefs) for wanted in inputs}


@dataclass(frozen=True, slots=True)
class Output:
    """One figure that a sum gives, rounded to ``decimals`` in its base ``unit``.

    ``difference_of`` names the two figures (inputs or outputs) it is the difference of, so that a page can show the
    difference of the two numbers it shows. ``page_decimals``: how many a page shows where the unit's own are too few.
    A ``model`` length is one of our training model, and said to be.
    """

    name: str
    title: str
    unit: str
    decimals: int
    difference_of: tuple[str, str] | None = None
    page_decimals: int | None = None
    model: bool = False


@dataclass(frozen=True, slots=True)
class Quantity:
    """A ``value`` in a base ``unit``, to be said in the reader's; of a ``model`` length in model micrometres."""

    value: float
    unit: str
    decimals: int | None = None
    model: bool = False

    def said(self, prefs: Preferences = METRIC) -> str:
        """The quantity in the reader's unit.

        >>> Quantity(3.0, "K").said(Preferences.us()), Quantity(3.0, "um", 1, model=True).said(Preferences.us())
        ('5.4\\xa0°F', '3.0\\xa0model\\xa0µm')
        """
        if self.model:
            return shown(self.value, self.unit, METRIC, self.decimals).replace("µm", "model\u00a0µm")
        return shown(self.value, self.unit, prefs, self.decimals)


@dataclass(frozen=True, slots=True)
class Note:
    """A sentence with places in braces for ``quantities``, said in any person's units; as ``str`` in metric ones.

    >>> str(Note("Off by {t}.", (("t", Quantity(0.5, "K")),)))
    'Off by 0.5\\xa0K.'
    """

    text: str
    quantities: tuple[tuple[str, Quantity], ...] = ()

    def said(self, prefs: Preferences = METRIC) -> str:
        """The sentence with its quantities in the reader's units."""
        return self.text.format_map({name: quantity.said(prefs) for name, quantity in self.quantities})

    def with_quantity(self, name: str, quantity: Quantity) -> Note:
        """The same sentence with one more quantity filled in.

        >>> Note("About {doubt}.").with_quantity("doubt", Quantity(1.2, "K")).said()
        'About 1.2\\xa0K.'
        """
        return Note(self.text, (*self.quantities, (name, quantity)))

    def __str__(self) -> str:
        return self.said()


@dataclass(frozen=True, slots=True)
class Worked:
    """What a sum's formula hands back: a value for every output by name, the doubt of the first, and notes."""

    values: Mapping[str, float]
    doubt: float
    notes: tuple[Note, ...] = ()


@dataclass(frozen=True, slots=True)
class Sum:
    """A calculator, declared once.

    ``formula`` is plain text; ``source`` a key of the list of sources; ``uncertainty`` a note in which ``{doubt}`` is
    the computed doubt of the first output; ``work`` takes the inputs by name, already read and inside their ranges.
    """

    name: str
    title: str
    about: str
    inputs: tuple[Input, ...]
    outputs: tuple[Output, ...]
    formula: str
    source: str
    mark: str
    uncertainty: Note
    work: Callable[..., Worked]

    def listed(self) -> dict[str, object]:
        """This sum as ``sum --list --json`` tells it."""
        return {
            "name": self.name,
            "title": self.title,
            "inputs": [wanted.listed() for wanted in self.inputs],
            "output": {"unit": self.outputs[0].unit},
            "also": [{"name": output.name, "unit": output.unit} for output in self.outputs[1:]],
        }
