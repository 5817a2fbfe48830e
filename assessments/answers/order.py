"""Acts in the order done, each with what it carries, such as its zone."""

from collections.abc import Mapping, Sequence

from assessments.answers.errors import AnswerRefused, UnknownOption
from assessments.scenarios.tasks import Task
from courses.trade.errors import offer
from courses.trade.units import Preferences

Step = dict[str, str]


def parse(task: Task, raw: object, _prefs: Preferences) -> list[Step]:
    """Return the acts in order; raise UnknownOption for an act, or something carried, that isn't offered.

    >>> from assessments.scenarios.tasks import Act
    >>> acts = (Act("wipe", "Wipe", "clean"), Act("lamp", "Lamp", "look"))
    >>> looks = Task("looks", "order", "Looks", "How?", acts=acts)
    >>> parse(looks, [{"op": "wipe"}, {"op": "lamp"}], Preferences.metric())
    [{'op': 'wipe'}, {'op': 'lamp'}]
    """
    if not isinstance(raw, list | tuple) or not all(isinstance(step, Mapping) for step in raw):
        raise AnswerRefused(task.id, f"{raw!r:.60} is no list of acts; give each as {{'op': …}} in the order done.")
    if len(raw) > task.most:
        raise AnswerRefused(task.id, f"these are {len(raw)} acts; {task.most} fit.")
    return [_step(task, step) for step in raw]


def read(values: Sequence[str]) -> list[Step]:
    """Return acts from the texts a page sends, one for each.

    >>> read(["lamp place=left", "wipe"])
    [{'op': 'lamp', 'place': 'left'}, {'op': 'wipe'}]
    """
    return [_read(value) for value in values]


def written(steps: Sequence[Mapping[str, str]]) -> list[str]:
    """Return acts as the texts a page sends.

    >>> written([{"op": "lamp", "place": "left"}])
    ['lamp place=left']
    """
    return [" ".join([step["op"], *(f"{name}={step[name]}" for name in step if name != "op")]) for step in steps]


def joined(before: object, given: object) -> list[Step]:
    """Return trials that were laid before, then what is laid now: none of them is taken back.

    >>> joined([{"op": "spot", "grade": "P1500"}], [{"op": "spot", "grade": "P1500"}, {"op": "spot", "grade": "P1000"}])
    [{'op': 'spot', 'grade': 'P1500'}, {'op': 'spot', 'grade': 'P1000'}]
    """
    kept = [*before] if isinstance(before, Sequence) else []
    now = [*given] if isinstance(given, Sequence) else []
    same = next((n for n, (one, other) in enumerate(zip(kept, now, strict=False)) if one != other), None)
    return [*kept, *now[min(len(kept), len(now)) if same is None else same :]]


def _read(value: str) -> Step:
    op, *carried = value.split(" ")
    pairs = (one.partition("=") for one in carried)
    return {"op": op, **{name: option for name, _, option in pairs}}


def _step(task: Task, raw: Mapping[object, object]) -> Step:
    op = str(raw.get("op"))
    acts = [act.id for act in task.acts]
    if op not in acts:
        raise UnknownOption(task.id, f"{op[:60]!r} is no act here; {offer(op, acts)}")
    carries = {one.name: one for one in task.carries if one.name in task.act(op).carries}
    for name in raw:
        if name != "op" and name not in carries:
            raise UnknownOption(task.id, f"'{op}' carries no {name!s:.40}; {offer(str(name), [*carries, 'op'])}")
    said = {name: str(raw[name]) for name in carries if raw.get(name) not in (None, "")}
    for name, option in said.items():
        known = [one.id for one in carries[name].options]
        if option not in known:
            raise UnknownOption(task.id, f"{option[:60]!r} is no {name} here; {offer(option, known)}")
    return {"op": op, **said}
