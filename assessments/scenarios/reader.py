"""A scenario file from text to a frozen :class:`Scenario`, refused with file, line and key, near misses offered."""

import re
from collections.abc import Iterable
from types import MappingProxyType
from typing import Final, cast, get_args

from assessments.scenarios.chance import Span
from assessments.scenarios.errors import near_miss
from assessments.scenarios.fields import Field, FieldKind, Option
from assessments.scenarios.located import Table
from assessments.scenarios.spec import (
    TASK_SHAPES,
    ClearOf,
    Drawable,
    Exemplar,
    Kind,
    Paragraph,
    Scenario,
    Sentence,
    Task,
)
from assessments.scenarios.story import slots

LEVELS: Final = ("foundation", "working", "lead")
JURISDICTIONS: Final = ("us", "uk", "eu")
OUTCOMES: Final = ("satisfactory", "not_yet_satisfactory", "critical_fail", "cannot_certify")
UNITS: Final = tuple("degc K rh um mm m m2 m3 ml l g kg min h rpm n mps ppm mgm3 db mps2 hpa gkg ratio".split())
_CODE = re.compile(r"[A-Z]{3}-\d{2}")
_NAME = re.compile(r"[a-z][a-z0-9_]*")


def read_scenario(text: str, file: str) -> Scenario:
    """Return the scenario written in ``text``; raise SpecRefused naming ``file``, line and key.

    >>> read_scenario('code = "coa"', "x.toml")
    Traceback (most recent call last):
    assessments.scenarios.errors.SpecRefused: x.toml, line 1, code: 'coa' isn't a scenario code such as COA-01.
    """
    whole = Table.of(text, file)
    code = whole.text("code")
    if not _CODE.fullmatch(code):
        raise whole.refusal("code", f"'{code}' isn't a scenario code such as COA-01.")
    facts = _fields(whole, "facts")
    tasks = tuple(_task(table) for table in _some(whole, "tasks"))
    beside = _fields(whole, "beside")
    scenario = Scenario(
        code=code,
        version=whole.whole("version", least=1),
        title=whole.text("title"),
        level=whole.one_of("level", LEVELS),
        elements=whole.texts("elements"),
        lessons=whole.texts("lessons"),
        minutes=whole.whole("minutes", least=1),
        jurisdictions=_jurisdictions(whole),
        story=tuple(_paragraph(table) for table in _some(whole, "story")),
        facts=facts,
        tasks=tasks,
        beside=beside,
        kinds=_kinds(whole.table("draw")),
        clear_of=tuple(_clear_of(table) for table in whole.tables("clear_of")),
        exemplars=tuple(_exemplar(table, tasks) for table in _some(whole, "exemplars")),
    )
    whole.finish()
    _refuse_doubles(whole, scenario)
    _refuse_unknown_slots(whole, scenario)
    return scenario


def _some(table: Table, key: str) -> list[Table]:
    tables = table.tables(key)
    if not tables:
        raise table.refusal(key, f"at least one '[[{key}]]' is needed.")
    return tables


def _jurisdictions(whole: Table) -> tuple[str, ...]:
    named = whole.texts("jurisdictions", JURISDICTIONS)
    for name in named:
        if name not in JURISDICTIONS:
            raise whole.refusal("jurisdictions", f"'{name}' isn't one.{near_miss(name, JURISDICTIONS)}")
    return named


def _name(table: Table, key: str) -> str:
    name = table.text(key)
    if not _NAME.fullmatch(name):
        raise table.refusal(key, f"'{name}' isn't a name of small letters, digits and underscores.")
    return name


def _options(table: Table) -> tuple[Option, ...]:
    options = []
    for option in table.tables("options"):
        options.append(Option(_name(option, "id"), option.text("words")))
        option.finish()
    _refuse_double((option.id for option in options), table, "options")
    return tuple(options)


def _unit(table: Table, needed: bool) -> str:
    if not needed:
        return ""
    return table.one_of("unit", UNITS)


def _fields(table: Table, key: str) -> tuple[Field, ...]:
    return tuple(_field(one) for one in table.tables(key))


def _field(table: Table) -> Field:
    kind = cast(FieldKind, table.one_of("kind", get_args(FieldKind)))
    name = _name(table, "name")
    columns = _fields(table, "columns")
    items = [_field(one) for one in table.tables("items")]
    options = _options(table)
    if kind == "rows" and not columns:
        raise table.refusal("columns", f"the rows of '{name}' need at least one '[[columns]]'.")
    if kind == "list" and len(items) != 1:
        raise table.refusal("items", f"the list '{name}' needs exactly one '[[items]]'.")
    if kind == "choice" and not options:
        raise table.refusal("options", f"the choice '{name}' needs '[[options]]'.")
    field = Field(
        name=name,
        kind=kind,
        label=table.text("label", ""),
        unit=_unit(table, kind == "quantity"),
        decimals=table.whole("decimals", 0),
        options=options,
        columns=columns,
        items=items[0] if items else None,
        most=table.whole("most", 20, least=1),
        optional=table.flag("optional"),
        hidden=table.flag("hidden"),
        clock=table.flag("clock"),
    )
    table.finish()
    return field


def _task(table: Table) -> Task:
    kind = table.one_of("kind", tuple(TASK_SHAPES))
    shape = TASK_SHAPES[kind]
    options = _options(table)
    if shape.options != bool(options):
        raise table.refusal("options", f"a task of kind '{kind}' {'needs' if shape.options else 'takes no'} options.")
    task = Task(
        id=_name(table, "id"),
        kind=kind,
        title=table.text("title"),
        ask=table.text("ask"),
        hint=table.text("hint", ""),
        unit=_unit(table, shape.unit),
        decimals=table.whole("decimals", 0),
        low=table.number("low") if table.has("low") else None,
        high=table.number("high") if table.has("high") else None,
        options=options,
        model=tuple(_sentence(one) for one in table.tables("model")),
    )
    if (kind == "text") != bool(task.model):
        raise table.refusal("model", "a task of kind 'text', and no other, has a '[[model]]' answer in sentences.")
    table.finish()
    return task


def _paragraph(table: Table) -> Paragraph:
    sentences = tuple(_sentence(one) for one in _some(table, "sentence"))
    table.finish()
    return sentences


def _sentence(table: Table) -> Sentence:
    where = table.table("where")
    sentence = Sentence(
        text=table.text("text"),
        given=table.text("given", ""),
        missing=table.text("missing", ""),
        where=MappingProxyType({name: where.texts(name) for name in where.keys()}),
    )
    table.finish()
    return sentence


def _kinds(draw: Table) -> tuple[Kind, ...]:
    common = _values(draw.table("common"))
    kinds = []
    tables = draw.table("kinds")
    for name in tables.keys():
        table = tables.table(name)
        weight = table.number("weight")
        if weight <= 0:
            raise table.refusal("weight", f"should be above 0, not {weight}.")
        kinds.append(Kind(name, weight, MappingProxyType({**common, **_values(table, but="weight")})))
    if not kinds:
        raise draw.refusal("kinds", "at least one kind of draw is needed.")
    draw.finish()
    return tuple(kinds)


def _values(table: Table, but: str = "") -> dict[str, Drawable]:
    return {name: _drawable(table, name) for name in table.keys() if name != but}


def _drawable(table: Table, name: str) -> Drawable:
    value = table.anything(name)
    if isinstance(value, list):
        return table.texts(name)
    if not isinstance(value, dict):
        return table.number(name)
    span = table.table(name)
    try:
        made = Span(span.number("from"), span.number("to"), span.number("step"))
    except ValueError as wrong:
        raise table.refusal(name, f"{wrong}.") from wrong
    span.finish()
    return made


def _clear_of(table: Table) -> ClearOf:
    made = ClearOf(table.text("limit"), table.text("holds"))
    table.finish()
    return made


def _exemplar(table: Table, tasks: tuple[Task, ...]) -> Exemplar:
    made = Exemplar(
        name=table.text("name"),
        outcomes=tuple(table.texts("outcomes")),
        when=table.text("when", ""),
        not_met=table.texts("not_met", ()),
        exactly=table.flag("exactly"),
        safest=table.flag("safest"),
        put=_by_task(table, "put", tasks),
        work=MappingProxyType({name: str(text) for name, text in _by_task(table, "work", tasks).items()}),
        add=_ticks(table, "add", tasks),
        drop=_ticks(table, "drop", tasks),
        tick_all=_task_ids(table, "tick_all", tasks),
        unanswered=_task_ids(table, "unanswered", tasks),
    )
    for outcome in made.outcomes or ("",):
        if outcome not in OUTCOMES:
            raise table.refusal("outcomes", f"'{outcome}' isn't an outcome.{near_miss(outcome, OUTCOMES)}")
    table.finish()
    return made


def _by_task(table: Table, key: str, tasks: tuple[Task, ...]) -> MappingProxyType[str, object]:
    inner = table.table(key)
    for name in inner.keys():
        _refuse_unknown_task(inner, name, name, tasks)
    return MappingProxyType(dict(inner.raw))


def _ticks(table: Table, key: str, tasks: tuple[Task, ...]) -> MappingProxyType[str, tuple[str, ...]]:
    inner = table.table(key)
    for name in _by_task(table, key, tasks):
        for option in inner.texts(name):
            _refuse_unknown_option(inner, name, option, tasks)
    return MappingProxyType({name: inner.texts(name) for name in inner.keys()})


def _task_ids(table: Table, key: str, tasks: tuple[Task, ...]) -> tuple[str, ...]:
    ids = table.texts(key, ())
    for name in ids:
        _refuse_unknown_task(table, key, name, tasks)
    return ids


def _refuse_unknown_task(table: Table, key: str, name: str, tasks: tuple[Task, ...]) -> None:
    known = [task.id for task in tasks]
    if name not in known:
        raise table.refusal(key, f"no task is called '{name}'.{near_miss(name, known)}")


def _refuse_unknown_option(table: Table, name: str, option: str, tasks: tuple[Task, ...]) -> None:
    known = next(task.option_ids for task in tasks if task.id == name)
    if option not in known:
        raise table.refusal(name, f"'{option}' isn't an option of '{name}'.{near_miss(option, known)}")


def _refuse_double(names: Iterable[str], table: Table, key: str) -> None:
    seen: set[str] = set()
    for name in names:
        if name in seen:
            raise table.refusal(key, f"'{name}' stands twice.")
        seen.add(name)


def _refuse_doubles(whole: Table, scenario: Scenario) -> None:
    _refuse_double((field.name for field in scenario.facts), whole, "facts")
    _refuse_double((field.name for field in scenario.key_fields), whole, "tasks")
    _refuse_double((exemplar.name for exemplar in scenario.exemplars), whole, "exemplars")


def _refuse_unknown_slots(whole: Table, scenario: Scenario) -> None:
    facts = {field.name for field in scenario.facts}
    for n, paragraph in enumerate(scenario.story):
        _refuse_unknown_in(paragraph, facts, whole, ("story", n, "sentence"))
    known = facts | {field.name for field in scenario.key_fields}
    for n, task in enumerate(scenario.tasks):
        _refuse_unknown_in(task.model, known, whole, ("tasks", n, "model"))


def _refuse_unknown_in(sentences: Paragraph, known: set[str], whole: Table, path: tuple[str | int, ...]) -> None:
    for n, sentence in enumerate(sentences):
        for name in (*slots(sentence.text), sentence.given, sentence.missing, *sentence.where):
            if name and name not in known:
                what = f"no value is called '{name}'.{near_miss(name, known)}"
                raise whole.source.refusal((*path, n, "text"), what)
