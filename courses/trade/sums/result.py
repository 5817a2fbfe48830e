"""What a sum answers: once for the door, in base units, and once for a person, in theirs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from courses.trade.ranges import METRIC
from courses.trade.sums.shape import Note, Output, Quantity, Sum, Value, Worked
from courses.trade.units import Preferences, rounded, shown, shown_plain, to_shown


@dataclass(frozen=True, slots=True)
class ShownLine:
    """One figure for a page: its ``name`` and ``title``, and ``text`` with the unit of the reader."""

    name: str
    title: str
    text: str


@dataclass(frozen=True, slots=True)
class ShownResult:
    """A result in one person's units, ready for a page."""

    title: str
    inputs: tuple[ShownLine, ...]
    output: ShownLine
    also: tuple[ShownLine, ...]
    formula: str
    source: str
    mark: str
    uncertainty: str
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Figure:
    """One figure of a result: what was declared of it, and its rounded ``value`` in the base unit."""

    declared: Output
    value: float

    @property
    def name(self) -> str:
        """The name of the figure."""
        return self.declared.name

    @property
    def title(self) -> str:
        """What the figure is called on a page."""
        return self.declared.title

    @property
    def unit(self) -> str:
        """The base unit."""
        return self.declared.unit


@dataclass(frozen=True, slots=True)
class Result:
    """The answer of one sum: inputs as read, figures rounded as declared, formula, source, doubt and notes.

    ``doubt`` is plus or minus on ``output``, in its unit; ``uncertainty`` says it in words.
    """

    sum: Sum
    inputs: Mapping[str, Value]
    output: Figure
    also: tuple[Figure, ...]
    doubt: float
    notes: tuple[Note, ...]

    @classmethod
    def of(cls, asked: Sum, inputs: Mapping[str, Value], worked: Worked) -> Result:
        """The result of what the formula of ``asked`` handed back, each figure rounded to its decimals."""
        figures = tuple(Figure(out, rounded(worked.values[out.name], out.decimals)) for out in asked.outputs)
        return cls(asked, inputs, figures[0], figures[1:], worked.doubt, worked.notes)

    @property
    def name(self) -> str:
        """The name of the sum."""
        return self.sum.name

    @property
    def title(self) -> str:
        """The title of the sum."""
        return self.sum.title

    @property
    def formula(self) -> str:
        """The formula in plain text."""
        return self.sum.formula

    @property
    def source(self) -> str:
        """The key of the source."""
        return self.sum.source

    @property
    def mark(self) -> str:
        """How the figure is known: `courses.trade.sources.MARKS`."""
        return self.sum.mark

    @property
    def value(self) -> float:
        """The first figure, rounded, in its base unit."""
        return self.output.value

    @property
    def uncertainty(self) -> Note:
        """How far the first figure may be off, and why."""
        first = self.output.declared
        doubt = Quantity(self.doubt, _step_of(first.unit), first.page_decimals or 1, first.model)
        return self.sum.uncertainty.with_quantity("doubt", doubt)

    def as_json(self) -> dict[str, object]:
        """The shape of the door ``sum``: base units, the uncertainty as the first note."""
        return {
            "name": self.name,
            "title": self.title,
            "inputs": dict(self.inputs),
            "output": {"value": self.value, "unit": self.output.unit},
            "also": [{"name": other.name, "value": other.value, "unit": other.unit} for other in self.also],
            "formula": self.formula,
            "source": self.source,
            "mark": self.mark,
            "notes": [str(self.uncertainty), *map(str, self.notes)],
        }

    def shown(self, prefs: Preferences) -> ShownResult:
        """The result in the units of ``prefs``: a screen's decimals, each difference that of the two numbers shown."""
        return ShownResult(
            self.title,
            tuple(self._input_lines(prefs)),
            self._line(self.output, prefs),
            tuple(self._line(other, prefs) for other in self.also),
            self.formula,
            self.source,
            self.mark,
            self.uncertainty.said(prefs),
            tuple(note.said(prefs) for note in self.notes),
        )

    def _input_lines(self, prefs: Preferences) -> list[ShownLine]:
        lines = []
        for wanted in self.sum.inputs:
            value = self.inputs[wanted.name]
            value = wanted.options.get(value, value) if isinstance(value, str) else value
            if text := _plain(value, wanted.unit, wanted.prefs_for(prefs)):
                lines.append(ShownLine(wanted.name, wanted.title, text))
        return lines

    def _line(self, figure: Figure, prefs: Preferences) -> ShownLine:
        declared = figure.declared
        text = Quantity(figure.value, figure.unit, declared.page_decimals, declared.model).said(prefs)
        if figure.declared.difference_of is not None:
            more, less = (self._number_shown(name, prefs) for name in figure.declared.difference_of)
            in_reader_unit = prefs.unit_for(figure.unit).code
            text = shown(more - less, in_reader_unit, METRIC)
        return ShownLine(figure.name, figure.title, text)

    def _number_shown(self, name: str, prefs: Preferences) -> float:
        units = {wanted.name: wanted.unit for wanted in self.sum.inputs}
        values: dict[str, object] = dict(self.inputs)
        for figure in (self.output, *self.also):
            units[figure.name], values[figure.name] = figure.unit, figure.value
        number, unit = values[name], units[name]
        assert isinstance(number, float), f"{name} is no quantity, so no difference can be taken from it"
        return rounded(to_shown(number, unit, prefs)[0], prefs.unit_for(unit).decimals)


def _plain(value: Value, unit: str, prefs: Preferences) -> str:
    """An input as it was given, in the reader's unit; of rows nothing, for they stand in the form."""
    if isinstance(value, str | float):
        return value if isinstance(value, str) else shown_plain(value, unit, prefs)
    return "; ".join(shown_plain(each, unit, prefs) for each in value or () if isinstance(each, float))


def _step_of(unit: str) -> str:
    """The unit of a doubt: a temperature is off by a difference of temperature."""
    return "K" if unit == "degc" else unit
