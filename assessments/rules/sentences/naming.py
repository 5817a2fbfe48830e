"""What values are called where a rule is read back: whose they are, their name as words, the noun of a list's item."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from assessments.rules.nodes import Path
from assessments.rules.units import Unit

Name = Callable[[Path], str | None]
_OWNERS = {"answer": "the trainee's ", "key": "the key's ", "facts": "the ", "model": "the worked "}
_OF = {"answer": "", "key": " of the key", "facts": " of the facts", "model": " of the worked answer"}
_PLAIN = {"op": "act", "n": "number"}
_NOT_PLURAL = ("ss", "us", "is")


def unnamed(path: Path) -> str | None:
    """Return no label for any path: our own names stand."""
    return None


def field_words(name: str, unit: Unit | None, number: bool = True) -> str:
    """Return the name of a field as words, without the unit at its end.

    >>> field_words("film_um", Unit.of("um")), field_words("air_rh", Unit.of("rh")), field_words("op", None)
    ('film', 'air humidity', 'act')
    """
    if name in _PLAIN:
        return _PLAIN[name] if number or name == "op" else "name"
    ending = f"_{unit.text.lower()}" if unit else ""
    bare = name.removesuffix(ending) if ending else name
    kept = f"{bare}_humidity" if ending == "_rh" and bare != name else bare
    return kept.replace("_", " ")


def label(path: Path, unit: Unit | None, name: Name = unnamed) -> str:
    """Return what the value at a path is called in a sentence, the caller's own label first.

    >>> label(("answer", "dew_point"), None), label(("facts", "air_degc"), Unit.of("degc"))
    ("the trainee's dew point", 'the air')
    >>> label(("key", "margin"), None, {("key", "margin"): "the right margin"}.get)
    'the right margin'
    """
    said = name(path)
    if said is not None:
        return said
    if len(path) == 1:
        owned = _OWNERS.get(path[0])
        return f"{owned}{path[0]}" if path[0] == "answer" and owned else f"the {field_words(path[0], unit)}"
    owner = _OWNERS.get(path[0], f"the {path[0].replace('_', ' ')} ")
    between = [part.replace("_", " ") for part in path[1:-1]]
    return owner + " ".join([*between, field_words(path[-1], unit)])


def is_plural(words: str) -> bool:
    """Whether a name is followed by "are"; a label in quotes is one thing.

    >>> is_plural("the trainee's packs"), is_plural("the gloss"), is_plural("the key's radius"), is_plural("“Steps”")
    (True, False, False, False)
    """
    last = words.split(" ")[-1].rstrip(")")
    return len(last) > 3 and last.endswith("s") and not last.endswith((*_NOT_PLURAL, "'s"))


def article(noun: str) -> str:
    """Return a noun behind its "a" or "an".

    >>> article("inspect step"), article("wash step")
    ('an inspect step', 'a wash step')
    """
    return f"{'an' if noun[:1] in 'aeiou' else 'a'} {noun}"


def alternatives(words: Sequence[str], word: str = "or") -> str:
    """Return words as one list.

    >>> alternatives(["wait"]), alternatives(["wait", "warm", "refer"])
    ('wait', 'wait, warm or refer')
    """
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} {word} {words[-1]}"


def choice_label(path: Path | None, option: str, name: Name = unnamed) -> str:
    """Return a word of the choice at a path as it is said; the caller's label of it stands at the path and the word.

    >>> choice_label(("answer", "decision"), "warm_the_panel")
    'warm the panel'
    >>> choice_label(("answer", "decision"), "wait", {("answer", "decision", "wait"): "“Wait an hour”"}.get)
    '“Wait an hour”'
    """
    said = name((*path, option)) if path else None
    return option_words(option) if said is None else said


def option_words(option: object) -> str:
    """Return a choice as words: 'warm_the_panel' is shown as warm the panel."""
    return str(option).replace("_", " ").strip() or "nothing"


@dataclass(frozen=True, slots=True)
class Noun:
    """What an item of a list is called: one of them, many of them, and whose they are."""

    one: str
    many: str
    of: str = ""

    def kind(self, words: str) -> Noun:
        """Return the noun of the items of one kind: a wash step."""
        return Noun(f"{words} {self.one}", f"{words} {self.many}", self.of)


ITEM = Noun("item", "items")


def noun(path: Path | None, called: str, own: bool = False) -> Noun:
    """Return the noun of the items of a list that stands at a path and is called so; `own` marks the caller's label.

    >>> noun(("answer", "steps"), "the trainee's steps")
    Noun(one='step', many='steps', of='')
    >>> noun(("key", "refer_zones"), "the key's refer zones").of
    ' of the key'
    >>> noun(("answer", "kit"), "the trainee's kit")
    Noun(one='item', many='items', of=" of the trainee's kit")
    """
    many = path[-1].replace("_", " ") if path and path[-1] != "[]" else ""
    if not is_plural(many):
        return Noun("item", "items", f" of {called}")
    one = _one(many)
    if own or path is None or len(path) > 2:
        return Noun(one, many, f" in {called}")
    return Noun(one, many, _OF.get(path[0], f" of the {path[0]}") if len(path) == 2 else "")


def _one(many: str) -> str:
    if many.endswith("ies"):
        return many[:-3] + "y"
    return many[:-2] if many.endswith(("xes", "ches", "shes", "sses")) else many[:-1]
