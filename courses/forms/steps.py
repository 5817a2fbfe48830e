"""The list of steps that a page builds: what may be done, with what, and what its buttons make of the list.

Steps are texts such as ``sand grade=P1500 passes=4 zone=bow``: what a form sends under ``value``. The same list serves
acts in order and work plans; without script each button sends the form and the page comes back.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Final

from courses.trade.plan_text import token

PICK: Final = "pick-"
"""What stands before the names of the fields a step is made with."""

USUAL: Final = ""
"""What a field sends that leaves a setting as it usually is."""


@dataclass(frozen=True, slots=True)
class Setting:
    """One thing a step may carry: a choice of ``options``, or a number or text to be typed.

    ``fine`` settings are folded away; ``says`` puts a typed value into words, such as ``"{} N"``. ``default`` is the
    option that is chosen at first. ``typed``: number, numbers or text. ``blank`` is what
    leaving it out is called. What is ``understood`` is said of a step that leaves it out.
    """

    name: str
    label: str
    options: tuple[tuple[str, str], ...] = ()
    default: str = USUAL
    hint: str = ""
    says: str = "{}"
    typed: str = ""
    blank: str = ""
    fine: bool = False
    understood: bool = False

    def taken(self, value: str) -> str:
        """Return what was typed as a step takes it: numbers with points, a list of them with commas."""
        plain = value.strip()
        if self.typed == "numbers":
            return ",".join(part for part in re.split(r"[\s,;/]+", plain) if part)
        return plain.replace(",", ".") if self.typed == "number" else plain

    def words(self, value: str) -> str:
        """Return a value in words."""
        return dict(self.options).get(value) or self.says.format(value)


@dataclass(frozen=True, slots=True)
class Act:
    """Something that can be done: its words, and what it carries; acts of one ``group`` stand together."""

    id: str
    words: str
    settings: tuple[Setting, ...] = ()
    group: str = ""


@dataclass(frozen=True, slots=True)
class Builder:
    """The acts that may be put into a list, and how many fit."""

    acts: tuple[Act, ...]
    most: int

    def act(self, op: str) -> Act | None:
        """Return the act of that id, or None."""
        return next((one for one in self.acts if one.id == op), None)

    def words(self, text: str) -> str:
        """Return a step in words."""
        op, settings = self._read(text)
        act = self.act(op)
        if act is None:
            return text
        unsaid = {one.name: one.default for one in act.settings if one.understood}
        said = {**unsaid, **settings}
        return ", ".join([act.words, *(one.words(said[one.name]) for one in act.settings if one.name in said)])

    def composed(self, steps: Sequence[str], do: str, picked: Mapping[str, str]) -> list[str]:
        """Return the steps as a button leaves them; a button that leads nowhere changes nothing.

        ``add``, ``put:2`` (in the place of step 2), ``twice:2``, ``up:2``, ``down:2``, ``out:2``. ``picked`` holds the
        act, under ``op``, and what it is to carry.
        """
        verb, _colon, place = do.partition(":")
        kept, at = list(steps), _place(place) - 1
        if verb == "add" and not self.opens(do, picked):
            return [*kept, *self._made(picked)]
        if not 0 <= at < len(kept):
            return kept
        return self._moved(kept, verb, at, picked)

    def opens(self, do: str, picked: Mapping[str, str]) -> str:
        """Return what a button opens instead of changing the list: an act's settings, a step's number; "" if not."""
        verb, _colon, place = do.partition(":")
        if verb == "change":
            return place
        act = self.act(picked.get("op", ""))
        asks = act is not None and act.settings and not any(one.name in picked for one in act.settings)
        return picked["op"] if verb == "add" and asks else ""

    def page(self, steps: Sequence[str], opened: str = "") -> dict[str, Any]:
        """Return what the list shows; ``opened`` is the act whose settings are to be filled in, or a step's number."""
        known = [one for one in steps if self.act(self._read(one)[0])]
        lines = [{"n": n, "token": one, "words": self.words(one)} for n, one in enumerate(known, start=1)]
        changing = _place(opened) if 1 <= _place(opened) <= len(known) else 0
        op, said = self._read(known[changing - 1]) if changing else (opened, {})
        return {
            "steps": lines,
            "blank": {"n": 0, "token": "", "words": ""},
            "most": self.most,
            "full": len(known) >= self.most,
            "changing": changing,
            "picked": op,
            "groups": self._groups(op),
            "shapes": [_shape(shape, op, said) for shape in self._shapes()],
        }

    def _read(self, text: str) -> tuple[str, dict[str, str]]:
        op, *said = text.split()
        pairs = (one.partition("=") for one in said)
        return op, {name: value for name, _equals, value in pairs}

    def _made(self, picked: Mapping[str, str]) -> list[str]:
        act = self.act(picked.get("op", ""))
        if act is None:
            return []
        said = {one.name: one.taken(picked.get(one.name, "")) for one in act.settings}
        return [token({"op": act.id, **{name: value for name, value in said.items() if value}})]

    def _moved(self, kept: list[str], verb: str, at: int, picked: Mapping[str, str]) -> list[str]:
        step = kept[at]
        if verb == "twice" and len(kept) < self.most:
            kept.insert(at, step)
        if verb == "put":
            kept[at : at + 1] = self._made(picked) or [step]
        if verb in ("up", "down", "out"):
            kept.pop(at)
        if verb in ("up", "down"):
            kept.insert(max(0, at + (-1 if verb == "up" else 1)), step)
        return kept

    def _groups(self, op: str) -> list[dict[str, Any]]:
        names = dict.fromkeys(one.group for one in self.acts)
        acts = {name: [_offer(one, op) for one in self.acts if one.group == name] for name in names}
        return [{"name": name, "acts": acts[name]} for name in names]

    def _shapes(self) -> list[tuple[list[str], tuple[Setting, ...]]]:
        """Return each set of settings with the acts that take just these."""
        shapes: dict[tuple[Setting, ...], list[str]] = {}
        for act in self.acts:
            shapes.setdefault(act.settings, []).append(act.id)
        return [(ops, settings) for settings, ops in shapes.items() if settings]


def _place(text: str) -> int:
    """Return the number of a step as a button sends it, 0 where it is none."""
    return int(text) if text.isascii() and text.isdigit() and len(text) < 5 else 0


def picked_from(data: Mapping[str, str | list[object]]) -> dict[str, str]:
    """Return what was picked for a step, by the names without their head."""
    return {name.removeprefix(PICK): str(value) for name, value in data.items() if name.startswith(PICK)}


def _offer(act: Act, op: str) -> dict[str, Any]:
    return {"id": act.id, "words": act.words, "chosen": act.id == op}


def _shape(shape: tuple[list[str], tuple[Setting, ...]], op: str, said: Mapping[str, str]) -> dict[str, Any]:
    ops, settings = shape
    fields = [_field(one, said if op in ops else {}) for one in settings]
    return {
        "ops": " ".join(ops),
        "on": op in ops,
        "main": [one for one in fields if not one["fine"]],
        "fine": [one for one in fields if one["fine"]],
    }


def _field(setting: Setting, said: Mapping[str, str]) -> dict[str, Any]:
    value = said.get(setting.name, setting.default)
    options = [{"id": one, "words": words, "chosen": one == value} for one, words in setting.options]
    plain = {
        name: getattr(setting, name) for name in ("name", "label", "hint", "says", "typed", "blank", "fine", "default")
    }
    return {**plain, "options": options, "value": value}
