"""Phrases of which a rule is put together without writing code; each keeps the four habits by itself."""

from __future__ import annotations

from dataclasses import dataclass

from assessments.rules.faults import Refused, nearest, offered


class PhraseRefused(Refused):
    """A phrase that can't be written so; `slot` names the control at which it failed, if one did."""

    def __init__(self, sentence: str, slot: str | None = None) -> None:
        self.slot = slot
        super().__init__(sentence)


@dataclass(frozen=True, slots=True)
class Slot:
    """A gap of a phrase: its name, its words beside the control, what it takes, and which choices fit it.

    `takes` is `choice`, `choices`, `number`, `text`, `words` or `choice or typed`; `fits` is known to `fitting`.
    """

    name: str
    words: str
    takes: str
    fits: str = ""

    @property
    def picks(self) -> bool:
        """Whether there is something to choose from."""
        return self.takes.startswith("choice")

    @property
    def typed(self) -> bool:
        """Whether it may be typed."""
        return self.takes not in ("choice", "choices")


@dataclass(frozen=True, slots=True)
class Phrase:
    """A phrase: its code, its words with gaps, the gaps, the rule it makes, and whether that gives `bool` or `num`."""

    code: str
    words: str
    slots: tuple[Slot, ...]
    rule: str
    gives: str = "bool"

    def slot(self, name: str) -> Slot:
        """Return a gap by its name; KeyError when there is none."""
        return {slot.name: slot for slot in self.slots}[name]


_VALUE = Slot("value", "what is judged", "choice", "single")
_AMOUNT = Slot("value", "which number", "choice", "number")
_TARGET = Slot("target", "what it is compared with", "choice or typed", "like value")
_LIMIT = Slot("target", "what the limit is", "choice or typed", "number like value")
_STEPS = Slot("list", "which list", "choice", "records")
_ACTS = Slot("list", "which list", "choice", "acts")
_PICKS = Slot("list", "which list", "choice", "picks")
_KIND = Slot("kind", "which of them", "choice", "kind")
_NUMBER = Slot("number", "how many", "number", "whole")
_FIRST = Slot("first", "what comes first", "choice", "act")
_THEN = Slot("then", "what comes later", "choice", "act but first")
_WANTED = Slot("wanted", "which list is asked for", "choice", "wanted")
_GIVEN = Slot("given", "which list of the trainee", "choice", "given")
_IN = "for {s} in {list}"
_EVERY = f"any({{kind}} {_IN}) and every({{has}} {_IN} if {{kind}})"


def _limited(code: str, words: str, sign: str) -> Phrase:
    return Phrase(code, f"{{value}} is {words} {{target}}", (_AMOUNT, _LIMIT), f"{{value}} {sign} {{target}}")


def _every_step(code: str, words: str, sign: str) -> Phrase:
    rule = _EVERY.replace("{has}", f"{{what}} {sign} {{target}}")
    what = Slot("what", "which of its numbers", "choice", "item number")
    limit = Slot("target", "what the limit is", "choice or typed", "number like what")
    said = f"there is {{kind}} in {{list}}, and each such item has {{what}} {words} {{target}}"
    return Phrase(code, said, (_STEPS, _KIND, what, limit), rule)


def _order(code: str, words: str, rule: str) -> Phrase:
    return Phrase(code, words, (_ACTS, _FIRST, _THEN), rule)


PHRASES: tuple[Phrase, ...] = (
    Phrase("is", "{value} is {target}", (_VALUE, _TARGET), "{value} == {target}"),
    Phrase("is_not", "{value} is not {target}", (_VALUE, _TARGET), "{value} != {target}"),
    _limited("at_least", "at least", ">="),
    _limited("at_most", "at most", "<="),
    _limited("over", "over", ">"),
    _limited("under", "under", "<"),
    Phrase(
        "between",
        "{value} is between {low} and {high}",
        (
            _AMOUNT,
            Slot("low", "what the lower limit is", "choice or typed", "number like value"),
            Slot("high", "what the upper limit is", "choice or typed", "number like value"),
        ),
        "{low} <= {value} <= {high}",
    ),
    Phrase(
        "within",
        "{value} is within {tolerance} of {target}",
        (_AMOUNT, Slot("tolerance", "how far off it may be", "number", "not negative"), _LIMIT),
        "near({value}, {target}, {tolerance})",
    ),
    Phrase(
        "within_percent",
        "{value} is within {percent} % of {target}",
        (_AMOUNT, Slot("percent", "how many per cent off it may be", "number", "percent"), _LIMIT),
        "near_rel({value}, {target}, {percent})",
    ),
    Phrase(
        "one_of",
        "{value} is one of {options}",
        (
            Slot("value", "which choice", "choice", "enum"),
            Slot("options", "which are right", "choices", "options of value"),
        ),
        "{value} in {options}",
    ),
    Phrase(
        "among",
        "{value} is among {list}",
        (
            Slot("value", "what is looked for", "choice", "listable"),
            Slot("list", "which list", "choice", "list for value"),
        ),
        "{value} in {list}",
    ),
    Phrase(
        "contains",
        "{list} contains {option}",
        (_PICKS, Slot("option", "what it has to contain", "choice", "options of list")),
        "{option} in {list}",
    ),
    Phrase(
        "lacks",
        "{list} doesn't contain {option}",
        (_PICKS, Slot("option", "what it must not contain", "choice", "options of list")),
        "{option} not in {list}",
    ),
    Phrase(
        "every_of",
        "every item of {wanted} is in {given}",
        (_WANTED, _GIVEN),
        "every({s} in {given} for {s} in {wanted})",
    ),
    Phrase(
        "share_of",
        "at least {percent} % of {wanted} are in {given}",
        (Slot("percent", "how many per cent", "number", "share"), _WANTED, _GIVEN),
        "overlap({given}, {wanted}) >= {percent} * len({wanted})",
    ),
    Phrase(
        "at_most_outside",
        "at most {number} of {given} are not in {wanted}",
        (_NUMBER, _WANTED, _GIVEN),
        "count({s} not in {wanted} for {s} in {given}) <= {number}",
    ),
    _order(
        "before",
        "in {list}, the last {first} comes before the first {then}, and both are there",
        f"any({{s}}.op == {{first}} {_IN}) and before({{list}}, {{first}}, {{then}})",
    ),
    _order(
        "before_if_any",
        "in {list}, if there is {then}, the last {first} comes before it",
        f"not any({{s}}.op == {{then}} {_IN}) or before({{list}}, {{first}}, {{then}})",
    ),
    Phrase(
        "not_before",
        "in {list}, there is {act}, and no {other} comes before it",
        (
            _ACTS,
            Slot("act", "what has to be done", "choice", "act"),
            Slot("other", "what must wait for it", "choice", "act but act"),
        ),
        f"any({{s}}.op == {{act}} {_IN}) and not starts_before({{list}}, {{other}}, {{act}})",
    ),
    _order(
        "followed_by",
        "in {list}, there is {first}, and each is followed at once by {then}",
        f"any({{s}}.op == {{first}} {_IN}) and after_each({{list}}, {{first}}, {{then}})",
    ),
    Phrase(
        "every_step_is",
        "there is {kind} in {list}, and each such item has {has}",
        (_STEPS, _KIND, Slot("has", "what it has to be as well", "choice", "has")),
        _EVERY,
    ),
    _every_step("every_step_at_least", "at least", ">="),
    _every_step("every_step_at_most", "at most", "<="),
    Phrase("some_step", "there is {kind} in {list}", (_STEPS, _KIND), f"any({{kind}} {_IN})"),
    Phrase("no_step", "there is no {kind} in {list}", (_STEPS, _KIND), f"not any({{kind}} {_IN})"),
    Phrase(
        "step_after_last",
        "in {list}, there is {act} after the last {last}, and both are there",
        (
            Slot("list", "which list", "choice", "numbered acts"),
            Slot("act", "what has to be done", "choice", "kind"),
            Slot("last", "what it has to come after", "choice", "other kind"),
        ),
        f"any({{last}} for {{t}} in {{list}}) and any({{act}} and not any({{last}} and {{t}}.n > {{s}}.n"
        f" for {{t}} in {{list}}) {_IN})",
    ),
    Phrase(
        "at_least_of",
        "at least {number} in {list} are {kind}",
        (Slot("number", "how many", "number", "some"), _STEPS, _KIND),
        f"count({{kind}} {_IN}) >= {{number}}",
    ),
    Phrase(
        "at_most_of",
        "at most {number} in {list} are {kind}",
        (_NUMBER, _STEPS, _KIND),
        f"count({{kind}} {_IN}) <= {{number}}",
    ),
    Phrase(
        "answered",
        "{value} was answered",
        (Slot("value", "which answer", "choice", "answers"),),
        "answered({value})",
    ),
    Phrase(
        "mentions",
        "{value} mentions one of the words {words}",
        (Slot("value", "which text", "choice", "text"), Slot("words", "which words, with commas between", "words")),
        "mentions({value}, {words})",
    ),
)
"""All phrases of a test or a guard, in the order in which they are offered."""

SHARES: tuple[Phrase, ...] = (
    Phrase(
        "part_of",
        "the part of {wanted} that is in {given}",
        (_WANTED, _GIVEN),
        "overlap({given}, {wanted}) / len({wanted})",
        "num",
    ),
    Phrase(
        "part_less_extra",
        "the part of {wanted} that is in {given}, less what else is in it",
        (_WANTED, _GIVEN),
        "(overlap({given}, {wanted}) - count({s} not in {wanted} for {s} in {given})) / len({wanted})",
        "num",
    ),
)
"""All phrases of a share of the points."""

_BY_CODE = {phrase.code: phrase for phrase in (*PHRASES, *SHARES)}


def phrase(code: str) -> Phrase:
    """Return a phrase by its code; PhraseRefused when there is none.

    >>> phrase("within").words
    '{value} is within {tolerance} of {target}'
    """
    found = _BY_CODE.get(code)
    if found is None:
        raise PhraseRefused(offered(f"There is no phrase '{code[:40]}'", nearest(code, _BY_CODE)))
    return found
