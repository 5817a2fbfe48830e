"""A scenario as it is written down: words, numbers and conditions, frozen, without a line of judgement.

The judgement stands in rule books, the arithmetic of a draw and its key in one small module per version
(:mod:`assessments.scenarios.register`). Everything here is read from a TOML file
by :mod:`assessments.scenarios.reader`.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Final

from assessments.scenarios.chance import Chance, Span
from assessments.scenarios.errors import SpecRefused
from assessments.scenarios.fields import Field, FieldKind, Option

Drawable = Span | tuple[str, ...] | float


@dataclass(frozen=True, slots=True)
class TaskShape:
    """What a kind of task needs in its file, and the kind of value an answer to it is."""

    value: FieldKind
    unit: bool = False
    options: bool = False


TASK_SHAPES: Final[Mapping[str, TaskShape]] = MappingProxyType(
    {
        "quantity": TaskShape("quantity", unit=True),
        "choice": TaskShape("choice", options=True),
        "many": TaskShape("list", options=True),
        "yes_no": TaskShape("yes_no"),
        "text": TaskShape("text"),
    }
)
"""The kinds of task that can be set today; ``assessments.answers`` holds a parser for each of them."""


@dataclass(frozen=True, slots=True)
class Sentence:
    """One sentence with ``{slots}``, told only where its conditions hold.

    ``given`` and ``missing`` name a value that must, or mustn't, be there; ``where`` names values and what they may be.
    A slot is a field's name, or a fixed quantity such as ``{6.40 m}``; both are shown in the reader's units.
    """

    text: str
    given: str = ""
    missing: str = ""
    where: Mapping[str, tuple[str, ...]] = field(default_factory=lambda: MappingProxyType({}))


Paragraph = tuple[Sentence, ...]


@dataclass(frozen=True, slots=True)
class Task:
    """One question: its kind says how it is answered; ``low`` and ``high`` are what physics allows, in its unit."""

    id: str
    kind: str
    title: str
    ask: str
    hint: str = ""
    unit: str = ""
    decimals: int = 0
    low: float | None = None
    high: float | None = None
    options: tuple[Option, ...] = ()
    model: Paragraph = ()

    @property
    def option_ids(self) -> tuple[str, ...]:
        """The ids that may be chosen, in the order shown."""
        return tuple(option.id for option in self.options)

    def as_field(self) -> Field:
        """Return the field that the answer, and the key, of this task must fit."""
        kind = TASK_SHAPES[self.kind].value
        one = Field(self.id, "choice" if self.options else kind, self.title, options=self.options)
        if kind == "list":
            return Field(self.id, "list", self.title, items=one, most=max(20, len(self.options)))
        return Field(self.id, kind, self.title, self.unit, self.decimals, self.options)


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of draw: how often it comes, and the ranges, choices and limits that its function reads."""

    name: str
    weight: float
    values: Mapping[str, Drawable]

    def has(self, name: str) -> bool:
        """Whether this kind draws a value of that name."""
        return name in self.values

    def number(self, name: str) -> float:
        """Return a limit, or draw-free constant, of that name; raise SpecRefused where it isn't one."""
        value = self._value(name)
        if not isinstance(value, int | float):
            raise SpecRefused(f"kind '{self.name}': '{name}' should be one number.")
        return float(value)

    def span(self, name: str) -> Span:
        """Return the range of that name; raise SpecRefused where it isn't one."""
        value = self._value(name)
        if not isinstance(value, Span):
            raise SpecRefused(f"kind '{self.name}': '{name}' should be a range with from, to and step.")
        return value

    def between(self, chance: Chance, name: str) -> float:
        """Draw one step of the range of that name."""
        return chance.between(self.span(name))

    def pick(self, chance: Chance, name: str) -> str:
        """Draw one of the choices of that name; raise SpecRefused where it isn't a list of choices."""
        value = self._value(name)
        if not isinstance(value, tuple):
            raise SpecRefused(f"kind '{self.name}': '{name}' should be a list of choices.")
        return chance.pick(value)

    def _value(self, name: str) -> Drawable:
        if name not in self.values:
            raise SpecRefused(f"kind '{self.name}' has no '{name}'.")
        return self.values[name]


@dataclass(frozen=True, slots=True)
class ClearOf:
    """A limit that every draw keeps away from: ``holds`` is a rule over facts and key that is true of each."""

    limit: str
    holds: str


@dataclass(frozen=True, slots=True)
class Exemplar:
    """An answer with a known outcome, written as its difference from the key.

    ``when`` is a rule over facts and key that says in which draws it is tried. ``put`` sets values, ``work`` sets them
    by an expression over facts and key, ``add`` and ``drop`` change ticked options, ``tick_all`` ticks every one, and
    ``unanswered`` takes answers away. ``not_met`` lists the rules that must come out not met: all of them where
    ``exactly``, among others otherwise.
    """

    name: str
    outcomes: tuple[str, ...]
    when: str = ""
    not_met: tuple[str, ...] = ()
    exactly: bool = False
    safest: bool = False
    put: Mapping[str, object] = field(default_factory=lambda: MappingProxyType({}))
    work: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    add: Mapping[str, tuple[str, ...]] = field(default_factory=lambda: MappingProxyType({}))
    drop: Mapping[str, tuple[str, ...]] = field(default_factory=lambda: MappingProxyType({}))
    tick_all: tuple[str, ...] = ()
    unanswered: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class GaugeLine:
    """A value of the key that the verdict draws against its ``limit``; the drawing runs from ``low`` to ``high``.

    All three stand in the unit of the key's ``value``; ``sense`` says on which side of the limit it should be.
    ``given`` names a fact without which there is nothing to draw.
    """

    value: str
    limit: float
    low: float
    high: float
    sense: str
    caption: str
    given: str = ""


@dataclass(frozen=True, slots=True)
class Scenario:
    """One version of one scenario, whole. ``minutes`` is the time on a paper; practice isn't timed."""

    code: str
    version: int
    title: str
    about: str
    level: str
    elements: tuple[str, ...]
    lessons: tuple[str, ...]
    minutes: int
    jurisdictions: tuple[str, ...]
    story: tuple[Paragraph, ...]
    facts: tuple[Field, ...]
    tasks: tuple[Task, ...]
    beside: tuple[Field, ...]
    kinds: tuple[Kind, ...]
    clear_of: tuple[ClearOf, ...]
    exemplars: tuple[Exemplar, ...]
    gauges: tuple[GaugeLine, ...] = ()

    @property
    def ref(self) -> str:
        """Code and version as the doors write them: ``COA-01@1``."""
        return f"{self.code}@{self.version}"

    @property
    def key_fields(self) -> tuple[Field, ...]:
        """The fields of the key: one for each task, then the numbers beside them."""
        return tuple(task.as_field() for task in self.tasks) + self.beside

    def with_exemplars(self, own: Iterable[Exemplar]) -> "Scenario":
        """Return the scenario with a rule book's own exemplars: one of a known name takes that one's place."""
        brought = {one.name: one for one in own}
        known = {one.name: one for one in self.exemplars}
        return replace(self, exemplars=tuple((known | brought).values())) if brought else self

    def task(self, task_id: str) -> Task | None:
        """Return the task of that id, or None."""
        return next((task for task in self.tasks if task.id == task_id), None)
