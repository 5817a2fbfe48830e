"""Rows: for each thing the task lists, an option in each column; a column left out is not answered."""

from collections.abc import Mapping, Sequence

from assessments.answers.errors import AnswerRefused, UnknownOption
from assessments.scenarios.tasks import Task
from courses.trade.errors import offer
from courses.trade.units import Preferences

Row = dict[str, int | str]


def parse(task: Task, raw: object, _prefs: Preferences) -> list[Row] | None:
    """Return the rows in the order listed, empty ones left out, None where nothing is said in any of them.

    Raises UnknownOption for a row, column or option that the task doesn't have, AnswerRefused for a row given twice.

    >>> from assessments.scenarios.fields import Field, Option
    >>> from assessments.scenarios.tasks import Row as Listed
    >>> what = Field("what", "choice", "What it is", options=(Option("teak", "Teak"),))
    >>> patches = Task("patches", "rows", "Patches", "What?", rows=(Listed(1, ()), Listed(2, ())), columns=(what,))
    >>> parse(patches, [{"n": 2, "what": "teak"}, {"n": 1}], Preferences.metric())
    [{'n': 2, 'what': 'teak'}]
    """
    if not isinstance(raw, list | tuple) or not all(isinstance(row, Mapping) for row in raw):
        raise AnswerRefused(task.id, f"{raw!r:.60} is no list of rows; give each as {{'n': 1, …}}.")
    rows: dict[int, Row] = {}
    for one in raw:
        row = _row(task, one)
        if row["n"] in rows:
            raise AnswerRefused(task.id, f"row {row['n']} is given twice.")
        rows[int(row["n"])] = row
    said = [rows[one.n] for one in task.rows if len(rows.get(one.n, {})) > 1]
    return said or None


def read(task: Task, values: Sequence[str]) -> list[Row]:
    """Return rows from the texts a page sends, one for each column of each row: ``1:what:teak``."""
    rows: dict[str, Row] = {}
    for value in values:
        n, _, said = value.partition(":")
        column, _, option = said.partition(":")
        if not n.isdigit():
            raise UnknownOption(task.id, f"{value[:60]!r} is no row here.")
        rows.setdefault(n, {"n": int(n)})[column] = option
    return list(rows.values())


def written(rows: Sequence[Mapping[str, object]]) -> list[str]:
    """Return rows as the texts a page sends.

    >>> written([{"n": 1, "what": "teak"}])
    ['1:what:teak']
    """
    return [f"{row['n']}:{column}:{row[column]}" for row in rows for column in row if column != "n"]


def _row(task: Task, raw: Mapping[object, object]) -> Row:
    numbers = [row.n for row in task.rows]
    n = raw.get("n")
    if isinstance(n, bool) or n not in numbers:
        raise UnknownOption(task.id, f"{n!r:.40} is no row here; the rows are {', '.join(map(str, numbers))}.")
    columns = {column.name: column for column in task.columns}
    row: Row = {"n": int(str(n))}
    for name, option in raw.items():
        if name == "n" or option in (None, ""):
            continue
        if name not in columns:
            raise UnknownOption(task.id, f"there is no column {name!s:.40}; {offer(str(name), columns)}")
        if option not in columns[str(name)].option_ids:
            known = columns[str(name)].option_ids
            raise UnknownOption(task.id, f"{option!r:.60} is no {name} here; {offer(str(option), known)}")
        row[str(name)] = str(option)
    return row
