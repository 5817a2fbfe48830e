"""What a scenario asks: each task with its kind, and the kind of value an answer to it is."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Final, TypeVar

from assessments.scenarios.fields import Field, FieldKind, Option
from assessments.scenarios.planned import ALL, plan_columns
from assessments.scenarios.wording import Paragraph
from courses.pictures import CELLS

__all__ = ["ALL", "PARTS", "TASK_SHAPES", "Act", "Carry", "Reading", "Row", "Task", "TaskShape"]


@dataclass(frozen=True, slots=True)
class TaskShape:
    """What a kind of task needs in its file, what else it may have, and the kind of value an answer to it is.

    ``needs`` and ``may`` name attributes of a task.
    """

    value: FieldKind
    needs: tuple[str, ...] = ()
    may: tuple[str, ...] = ()


TASK_SHAPES: Final[Mapping[str, TaskShape]] = MappingProxyType(
    {
        "quantity": TaskShape("quantity", needs=("unit",)),
        "choice": TaskShape("choice", needs=("options",)),
        "many": TaskShape("list", needs=("options",)),
        "yes_no": TaskShape("yes_no"),
        "text": TaskShape("text", needs=("model",)),
        "ask": TaskShape("list", needs=("readings",)),
        "order": TaskShape("rows", needs=("acts",), may=("carries", "spots", "laid")),
        "plan": TaskShape("rows", needs=("ops",), may=("options",)),
        "rows": TaskShape("rows", needs=("rows", "columns")),
        "zones": TaskShape("list", needs=("picture",), may=("options", "verdicts")),
    }
)
"""The kinds of task that can be set; ``assessments.answers`` holds a parser for each of them."""

PARTS: Final = (
    *("unit", "options", "model", "readings", "acts", "carries", "spots", "laid", "ops", "rows", "columns"),
    *("picture", "verdicts"),
)
"""What a task of one kind has and one of another hasn't."""


@dataclass(frozen=True, slots=True)
class Reading:
    """A reading that can be asked for: what it is called, the minutes it costs, and what is told once it was asked."""

    id: str
    words: str
    minutes: int
    tells: Paragraph


@dataclass(frozen=True, slots=True)
class Act:
    """Something that can be done in an order: its family of work, and the names of what it carries.

    ``op`` is the step of a plan that it tries where the order is one of test spots.
    """

    id: str
    words: str
    family: str
    carries: tuple[str, ...] = ()
    op: str = ""


Named = TypeVar("Named", Reading, Act)


@dataclass(frozen=True, slots=True)
class Carry:
    """What an act may carry, such as its zone: the options, and the one that holds where none is said."""

    name: str
    label: str
    options: tuple[Option, ...]
    default: str


@dataclass(frozen=True, slots=True)
class Row:
    """One thing that a task of rows lists: its number, and the sentences that tell what it is."""

    n: int
    tells: Paragraph


@dataclass(frozen=True, slots=True)
class Task:
    """One question: its kind says how it is answered; ``low`` and ``high`` are what physics allows, in its unit.

    ``ops`` are the steps that a plan may be made of, ``options`` its zones. An order of ``spots`` is one of trials:
    each shows at once what it did and can't be taken back; ``laid`` are those that stood in the log before.
    """

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
    readings: tuple[Reading, ...] = ()
    acts: tuple[Act, ...] = ()
    carries: tuple[Carry, ...] = ()
    spots: bool = False
    laid: tuple[Mapping[str, str], ...] = ()
    ops: tuple[str, ...] = ()
    most: int = 12
    rows: tuple[Row, ...] = ()
    columns: tuple[Field, ...] = ()
    picture: str = ""
    verdicts: bool = False

    @property
    def final(self) -> bool:
        """Whether what was answered stays answered, because it told something: a reading, a test spot."""
        return self.kind == "ask" or self.spots

    @property
    def option_ids(self) -> tuple[str, ...]:
        """The ids that may be chosen, in the order shown: options, or readings, or cells of the picture."""
        return tuple(option.id for option in self.choices)

    @property
    def choices(self) -> tuple[Option, ...]:
        """What may be chosen: the options of a task, its readings, or the cells of its picture."""
        if self.kind == "zones":
            return tuple(Option(cell, cell) for cell in CELLS)
        return self.options or tuple(Option(one.id, one.words) for one in self.readings)

    def reading(self, reading_id: str) -> Reading:
        """Return the reading of that id; KeyError where there is none."""
        return _named(self.readings, reading_id)

    def act(self, op: str) -> Act:
        """Return the act of that id; KeyError where there is none."""
        return _named(self.acts, op)

    def as_field(self) -> Field:
        """Return the field that the answer, and the key, of this task must fit."""
        kind = TASK_SHAPES[self.kind].value
        if self.verdicts or kind == "rows":
            return Field(self.id, "rows", self.title, columns=self._columns(), most=max(self.most, len(self.rows)))
        if kind == "list":
            one = Field(self.id, "choice", self.title, options=self.choices)
            return Field(self.id, "list", self.title, items=one, most=max(20, len(self.choices)))
        return Field(self.id, kind, self.title, self.unit, self.decimals, self.options)

    def _columns(self) -> tuple[Field, ...]:
        """Return the columns of an answer that is rows: acts, things listed, or groups of cells."""
        if self.kind == "plan":
            return plan_columns(self.ops, self.options)
        if self.kind == "order":
            op = Field("op", "choice", options=tuple(Option(act.id, act.words) for act in self.acts))
            return op, *(
                Field(one.name, "choice", one.label, options=one.options, optional=True) for one in self.carries
            )
        if self.kind == "rows":
            return Field("n", "whole"), *(replace(column, optional=True) for column in self.columns)
        cell = Field("cells", "choice", options=self.choices)
        verdict = Field("verdict", "choice", options=self.options, optional=True)
        return Field("cells", "list", items=cell, most=len(CELLS)), verdict


def _named(parts: tuple[Named, ...], name: str) -> Named:
    found = next((part for part in parts if part.id == name), None)
    if found is None:
        raise KeyError(name)
    return found
