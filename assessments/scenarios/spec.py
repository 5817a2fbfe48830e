"""A scenario as it is written down: words, numbers and conditions, frozen, without a line of judgement.

The judgement stands in rule books, the arithmetic of a draw and its key in one small module per version
(:mod:`assessments.scenarios.register`). Everything here is read from a TOML file
by :mod:`assessments.scenarios.reader`.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType

from assessments.scenarios.chance import Chance, Span
from assessments.scenarios.errors import SpecRefused
from assessments.scenarios.fields import Field
from assessments.scenarios.planned import NEEDED_CUT, model_fields
from assessments.scenarios.shown import Shop, zone_fields
from assessments.scenarios.tasks import Task
from assessments.scenarios.wording import Paragraph

Drawable = Span | tuple[str, ...] | float


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
    ``unanswered`` takes answers away. Of an order, ``without`` takes acts out, ``before`` and ``after`` put acts in
    front and behind; of zones, ``half`` keeps every second cell and ``verdict`` gives all groups another one; of rows,
    ``rows`` writes over columns, in all of them or in those whose numbers stand under ``n``. ``not_met`` lists the
    rules that must come out not met: all of them where ``exactly``, among others otherwise.
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
    without: Mapping[str, tuple[str, ...]] = field(default_factory=lambda: MappingProxyType({}))
    before: Mapping[str, object] = field(default_factory=lambda: MappingProxyType({}))
    after: Mapping[str, object] = field(default_factory=lambda: MappingProxyType({}))
    verdict: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    half: Mapping[str, bool] = field(default_factory=lambda: MappingProxyType({}))
    rows: Mapping[str, Mapping[str, object]] = field(default_factory=lambda: MappingProxyType({}))
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
class Picture:
    """A picture of the scenario: the task it stands with, or none for the story.

    ``alt`` and ``caption`` give nothing away. ``after`` names the reading that has to be asked for before it is shown,
    ``zones`` the parts of it that rules call by name.
    """

    name: str
    alt: str
    caption: str = ""
    task: str = ""
    after: str = ""
    zones: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class ModelField:
    """A value worked from facts, key and answer; unknown while one of the tasks it ``rests`` on is unanswered."""

    field: Field
    rests: tuple[str, ...]


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
    pictures: tuple[Picture, ...] = ()
    model: tuple[ModelField, ...] = ()
    shop: Shop | None = field(default=None, compare=False, repr=False)

    @property
    def ref(self) -> str:
        """Code and version as the doors write them: ``COA-01@1``."""
        return f"{self.code}@{self.version}"

    @property
    def zone_names(self) -> tuple[str, ...]:
        """The zones that rules call by name, as the picture that is marked lists them."""
        zoned = self.the("zones")
        return next((one.zones for one in self.pictures if zoned and one.name == zoned.picture), ())

    @property
    def key_fields(self) -> tuple[Field, ...]:
        """The fields of the key: one for each task, then the numbers beside them."""
        zoned = self.the("zones")
        marked = zone_fields(zoned) if zoned else ()
        return tuple(task.as_field() for task in self.tasks) + self.beside + marked + self._cut_fields

    @property
    def model_fields(self) -> tuple[Field, ...]:
        """The fields worked from an answer: what a plan comes to, then those of the scenario's own."""
        planned = self.the("plan")
        return (*(model_fields(planned.options) if planned else ()), *(one.field for one in self.model))

    @property
    def _cut_fields(self) -> tuple[Field, ...]:
        """What the key holds of the panel that a plan is worked on."""
        return (NEEDED_CUT,) if self.the("plan") else ()

    def with_exemplars(self, own: Iterable[Exemplar]) -> "Scenario":
        """Return the scenario with a rule book's own exemplars: one of a known name takes that one's place."""
        brought = {one.name: one for one in own}
        known = {one.name: one for one in self.exemplars}
        return replace(self, exemplars=tuple((known | brought).values())) if brought else self

    def the(self, kind: str) -> Task | None:
        """Return the task of a kind that a scenario sets at most once, or None."""
        return next((task for task in self.tasks if task.kind == kind), None)

    def task(self, task_id: str) -> Task | None:
        """Return the task of that id, or None."""
        return next((task for task in self.tasks if task.id == task_id), None)
