"""What may fill the gaps of a phrase: the fields of a schema that fit each other in kind, unit and words."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from assessments.rules.kinds import SINGLE, Schema
from assessments.rules.nodes import Path
from assessments.rules.phrasing.phrases import PHRASES, SHARES, Phrase, Slot
from assessments.rules.phrasing.places import OWN, Choice, Place, places, quoted, variables, writable
from assessments.rules.sentences.naming import Name, choice_label, field_words, label, unnamed
from assessments.rules.units import Unit, difference

Chosen = Mapping[str, str | Sequence[str]]
_LISTED = ("enum", "int")
_COMPARED_AS_TEXT = ("is", "is_not")


def choices(schema: Schema, phrase: Phrase, chosen: Chosen, name: Name | None = None) -> dict[str, tuple[Choice, ...]]:
    """Return for each gap of a phrase what may fill it, given what is chosen so far.

    A gap that hangs on another one not yet filled, or that is only typed, has nothing to choose from. `name(path)`
    gives a field the caller's own label.

    >>> from assessments.rules.kinds import num, record
    >>> from assessments.rules.phrasing.phrases import phrase
    >>> schema = Schema({"answer": record({"margin": num("K"), "te": num("h")}), "key": record({"te": num("h")})})
    >>> [each.words for each in choices(schema, phrase("over"), {"value": "answer.te"})["target"]]
    ["the key's te"]
    """
    fitting = Fitting(schema, phrase, chosen, name or unnamed)
    return {slot.name: fitting.choices(slot) for slot in phrase.slots}


def fitting_phrases(schema: Schema, gives: str = "bool") -> tuple[Phrase, ...]:
    """Return the phrases that can be begun on a schema: there is something to choose for their first choice.

    `gives` is `bool` for those of a test or a guard, `num` for those of a share.

    >>> from assessments.rules.kinds import record, text
    >>> [each.code for each in fitting_phrases(Schema({"key": record({"note": text()})}))]
    ['is', 'is_not', 'mentions']
    """
    offered = [each for each in (*PHRASES, *SHARES) if each.gives == gives]
    return tuple(each for each in offered if _begins(Fitting(schema, each, {}, unnamed)))


def _begins(fitting: Fitting) -> bool:
    first = next(slot for slot in fitting.phrase.slots if slot.picks)
    return bool(fitting.choices(first))


def typed_units(schema: Schema, phrase: Phrase, chosen: Chosen) -> dict[str, str]:
    """Return for each gap in which a number is typed the unit it is taken in, given what is chosen so far.

    A gap without a unit, or that hangs on another one not yet filled, is left out.

    >>> from assessments.rules.kinds import num, record
    >>> from assessments.rules.phrasing.phrases import phrase
    >>> schema = Schema({"answer": record({"air": num("degc")})})
    >>> typed_units(schema, phrase("within"), {"value": "answer.air"})
    {'tolerance': 'K', 'target': 'degc'}
    """
    fitting = Fitting(schema, phrase, chosen, unnamed)
    units = {slot.name: _typed_unit(fitting, slot) for slot in phrase.slots if slot.typed}
    return {name: unit.text for name, unit in units.items() if unit and unit.powers}


def _typed_unit(fitting: Fitting, slot: Slot) -> Unit | None:
    beside = _BESIDE.get(slot.fits)
    if beside is None:
        return Unit.of("%") if slot.fits in ("percent", "share") else None
    place = fitting.place(beside)
    unit = place.unit if place else None
    return difference(unit) if slot.fits == "not negative" else unit


_BESIDE = {"like value": "value", "number like value": "value", "not negative": "value", "number like what": "what"}


@dataclass(frozen=True, slots=True)
class Fitting:
    """One phrase over one schema, with what is chosen so far."""

    schema: Schema
    phrase: Phrase
    chosen: Chosen
    name: Name

    def choices(self, slot: Slot) -> tuple[Choice, ...]:
        """Return what may fill a gap."""
        return tuple(_FITS[slot.fits](self)) if slot.picks else ()

    def picked(self, slot: str) -> Choice | None:
        """Return what is chosen for a gap, None when nothing that fits is."""
        text = self.chosen.get(slot)
        return next((each for each in self.choices(self.phrase.slot(slot)) if each.text == text), None)

    def place(self, slot: str) -> Place | None:
        """Return the field chosen for a gap, None when none that fits is."""
        found = self.picked(slot)
        kind = self.schema.kind(found.path) if found and found.path else None
        return Place(found.path, kind) if found and found.path and kind else None

    def named(self, place: Place) -> Choice:
        """Return a field as a choice."""
        normed = place.kind.name == "str" and self.phrase.code in _COMPARED_AS_TEXT
        text = f"norm({place.text})" if normed else place.text
        return Choice(text, label(place.path, place.unit, self.name), place.path)

    def of_kind(self, *kinds: str) -> Iterator[Choice]:
        """Return the fields of these kinds."""
        return (self.named(place) for place in places(self.schema) if place.kind.name in kinds)

    def like(self, slot: str, *kinds: str) -> Iterator[Choice]:
        """Return the other fields that may be compared with the one chosen for a gap."""
        mine = self.place(slot)
        for place in places(self.schema) if mine else ():
            if mine and place.path != mine.path and place.kind.name in kinds and place.fits(mine):
                yield self.named(place)

    def lists(self, fits: Callable[[Place], bool]) -> Iterator[Choice]:
        """Return the lists that fit."""
        return (self.named(place) for place in places(self.schema) if place.kind.item is not None and fits(place))

    def options(self, slot: str) -> Iterator[Choice]:
        """Return the words of the choice field, or list of choices, chosen for a gap."""
        mine = self.place(slot)
        if mine:
            for word in writable(mine.of):
                yield Choice(quoted(word), choice_label(mine.of_path, word, self.name))

    def fields(self, slot: str = "list") -> Iterator[Place]:
        """Return the fields of the items of the list chosen for a gap."""
        mine = self.place(slot)
        for name, kind in mine.of.fields.items() if mine else ():
            yield Place((*mine.path, "[]", name), kind) if mine else Place((), kind)

    def conditions(self, variable: str, guarded: bool = True) -> Iterator[Choice]:
        """Return what the items of the chosen list may be told apart by: a word of a choice, a yes, a no."""
        for place in self.fields():
            field = f"{variable}.{place.path[-1]}"
            guard = f"answered({field}) and " if guarded and place.kind.opt else ""
            for text, words in self.tests(field, place):
                yield Choice(guard + text, words, place.path)

    def tests(self, field: str, place: Place) -> Iterator[tuple[str, str]]:
        """Return what may be asked of a field of an item, each as rule and in words."""
        said = self.words(place)
        if place.kind.name == "bool":
            yield from ((field, said), (f"not {field}", f"not {said}"))
        before = "" if place.path[-1] == "op" else f"{said} "
        for word in writable(place.kind):
            yield f"{field} == {quoted(word)}", f"{before}{choice_label(place.path, word, self.name)}"

    def words(self, place: Place) -> str:
        """Return what a field of an item is called."""
        return self.name(place.path) or field_words(place.path[-1], place.unit, place.kind.is_number)


def _like_value(fitting: Fitting) -> Iterator[Choice]:
    """Return what a value may be compared with: its own words, yes and no, fields of its kind."""
    mine = fitting.place("value")
    if mine and mine.kind.name == "bool":
        yield from (Choice("True", "yes"), Choice("False", "no"))
    yield from fitting.options("value")
    yield from fitting.like("value", *SINGLE)


def _acts_of(place: Place) -> bool:
    op = place.of.fields.get("op")
    return op is not None and op.name == "enum"


def _are_numbered(place: Place) -> bool:
    n = place.of.fields.get("n")
    return _acts_of(place) and n is not None and n.name == "int" and not n.opt


def _told_apart(place: Place) -> bool:
    return any(kind.name in ("enum", "bool") for kind in place.of.fields.values())


def _is_own(path: Path) -> bool:
    return path[0] == OWN


def _wanted(fitting: Fitting) -> Iterator[Choice]:
    own = [place for place in places(fitting.schema) if _is_own(place.path) and _may_be_listed(place)]
    return fitting.lists(
        lambda place: _may_be_listed(place) and not _is_own(place.path) and any(place.fits(each) for each in own)
    )


def _may_be_listed(place: Place) -> bool:
    return place.kind.item is not None and place.of.name in _LISTED


def _given(fitting: Fitting) -> Iterator[Choice]:
    wanted = fitting.place("wanted")
    return fitting.lists(lambda place: _is_own(place.path) and wanted is not None and place.fits(wanted))


def _listable(fitting: Fitting) -> Iterator[Choice]:
    lists = [place for place in places(fitting.schema) if _may_be_listed(place)]
    for place in places(fitting.schema):
        if place.kind.name in _LISTED and any(_apart(place, each) for each in lists):
            yield fitting.named(place)


def _apart(value: Place, items: Place) -> bool:
    """Whether a value can be looked for in a list that isn't its owner's own."""
    return value.fits(items) and value.path[0] != items.path[0]


def _lists_for_value(fitting: Fitting) -> Iterator[Choice]:
    value = fitting.place("value")
    return fitting.lists(lambda place: value is not None and _may_be_listed(place) and _apart(value, place))


def _acts(fitting: Fitting) -> Iterator[Choice]:
    """Return the acts of the chosen list; one that is chosen for another gap is not offered again."""
    for place in fitting.fields():
        if place.path[-1] == "op":
            for word in writable(place.kind):
                yield Choice(quoted(word), choice_label(place.path, word, fitting.name))


def _other_acts(fitting: Fitting, beside: str) -> Iterator[Choice]:
    return (each for each in _acts(fitting) if each.text != fitting.chosen.get(beside))


def _has(fitting: Fitting) -> Iterator[Choice]:
    """Return what items of the chosen kind may have besides: nothing of the field that tells the kind."""
    kind = fitting.picked("kind")
    conditions = fitting.conditions(variables(fitting.schema)[0], guarded=False)
    return (each for each in conditions if kind and each.path != kind.path)


def _other_kinds(fitting: Fitting) -> Iterator[Choice]:
    """Return the conditions on the other item, but for the one chosen for the first."""
    act = fitting.picked("act")
    conditions = fitting.conditions(variables(fitting.schema)[1])
    return (each for each in conditions if act and (each.path, each.words) != (act.path, act.words))


def _item_numbers(fitting: Fitting) -> Iterator[Choice]:
    variable = variables(fitting.schema)[0]
    for place in fitting.fields():
        if place.kind.is_number:
            yield Choice(f"{variable}.{place.path[-1]}", fitting.words(place), place.path)


_FITS: dict[str, Callable[[Fitting], Iterator[Choice]]] = {
    "single": lambda fitting: fitting.of_kind(*SINGLE),
    "number": lambda fitting: fitting.of_kind("num", "int"),
    "enum": lambda fitting: fitting.of_kind("enum"),
    "text": lambda fitting: fitting.of_kind("str"),
    "answers": lambda fitting: (fitting.named(place) for place in places(fitting.schema) if _is_own(place.path)),
    "like value": _like_value,
    "number like value": lambda fitting: fitting.like("value", "num", "int"),
    "number like what": lambda fitting: fitting.like("what", "num", "int"),
    "options of value": lambda fitting: fitting.options("value"),
    "options of list": lambda fitting: fitting.options("list"),
    "listable": _listable,
    "list for value": _lists_for_value,
    "picks": lambda fitting: fitting.lists(lambda place: place.of.name == "enum"),
    "records": lambda fitting: fitting.lists(_told_apart),
    "acts": lambda fitting: fitting.lists(_acts_of),
    "numbered acts": lambda fitting: fitting.lists(_are_numbered),
    "wanted": _wanted,
    "given": _given,
    "act": _acts,
    "act but first": lambda fitting: _other_acts(fitting, "first"),
    "act but act": lambda fitting: _other_acts(fitting, "act"),
    "kind": lambda fitting: fitting.conditions(variables(fitting.schema)[0]),
    "has": _has,
    "other kind": _other_kinds,
    "item number": _item_numbers,
}
