"""Writes the rule a filled phrase stands for, and joins it to what is there. Only what fits is written."""

from __future__ import annotations

import ast
import re
from collections.abc import Callable, Sequence
from decimal import Decimal

from assessments.rules.checking.checker import check
from assessments.rules.checking.language import MAX_NUMBER, Parsed, parse
from assessments.rules.faults import Fault
from assessments.rules.kinds import Schema
from assessments.rules.phrasing.fitting import Chosen, Fitting
from assessments.rules.phrasing.phrases import Phrase, PhraseRefused, Slot
from assessments.rules.phrasing.places import Choice, quoted, variables
from assessments.rules.sentences.naming import unnamed
from assessments.rules.vocabulary import norm

JOINS = ("and", "or")
_NUMBER = re.compile(r"-?\d{1,10}(\.\d{1,6})?")


def written(schema: Schema, phrase: Phrase, values: Chosen) -> str:
    """Return the rule of a filled phrase; it passes the checker without errors.

    Raises PhraseRefused, with the gap it stands at, for whatever is empty, unknown or doesn't fit the rest.

    >>> from assessments.rules.kinds import num, record
    >>> from assessments.rules.phrasing.phrases import phrase
    >>> schema = Schema({"answer": record({"te": num("h")}), "key": record({"te": num("h")})})
    >>> written(schema, phrase("within"), {"value": "answer.te", "target": "key.te", "tolerance": "0.5"})
    'near(answer.te, key.te, 0.5)'
    """
    fitting = Fitting(schema, phrase, values, unnamed)
    filled = {slot.name: _filled(fitting, slot) for slot in phrase.slots}
    if phrase.code == "between":
        _refuse_crossed(filled)
    s, t = variables(schema)
    text = phrase.rule.format(s=s, t=t, **filled)
    checked = check(text, schema, wants=phrase.gives)
    if not checked.ok:
        raise PhraseRefused(checked.errors[0].message)
    return text


def joined(test: str, more: str, word: str = "and") -> str:
    """Return two tests joined by `and` or `or`, in brackets where one of them would fall apart.

    Raises PhraseRefused where the test that is there can't be read, or for another word.

    >>> joined("facts.cold or facts.wet", "answer.packs == 3")
    '(facts.cold or facts.wet) and answer.packs == 3'
    >>> joined("", "answer.packs == 3", "or")
    'answer.packs == 3'
    """
    if word not in JOINS:
        raise PhraseRefused(f"Tests are joined by 'and' or 'or', not by '{word[:20]}'.")
    if not test.strip():
        return _bare(more)
    return f"{_held(test, word)} {word} {_held(more, word)}"


def _read(text: str) -> Parsed:
    parsed = parse(text)
    if isinstance(parsed, Fault):
        raise PhraseRefused(f"The test can't be joined to while it can't be read: {parsed.message}")
    return parsed


def _bare(text: str) -> str:
    """Return a test without what stands round it: spaces, brackets, a comment."""
    parsed = _read(text)
    start, end = parsed.place(parsed.tree)
    return text[start:end]


def _held(text: str, word: str) -> str:
    tree = _read(text).tree
    is_or = isinstance(tree, ast.BoolOp) and isinstance(tree.op, ast.Or)
    loose = isinstance(tree, ast.IfExp) or (word == "and" and is_or)
    return f"({_bare(text)})" if loose else _bare(text)


def _filled(fitting: Fitting, slot: Slot) -> str:
    """Return the piece of rule for a gap."""
    value = fitting.chosen.get(slot.name, "")
    if slot.takes == "choices":
        return _several(fitting, slot, value)
    text = value.strip() if isinstance(value, str) else ""
    if not text:
        raise PhraseRefused(f"Say {slot.words}.", slot.name)
    offered = fitting.choices(slot)
    if any(each.text == text for each in offered):
        return text
    if not slot.typed:
        raise PhraseRefused(_unfitting(text), slot.name)
    return _TYPED.get(slot.takes, _either)(fitting, slot, text)


def _unfitting(text: str) -> str:
    return f"{text[:40]} doesn't fit here; choose from the list."


def _several(fitting: Fitting, slot: Slot, value: str | Sequence[str]) -> str:
    picked = [value] if isinstance(value, str) else list(value)
    offered: Sequence[Choice] = fitting.choices(slot)
    texts = [each.text for each in offered if each.text in picked]
    strangers = [each for each in picked if each and each not in texts]
    if strangers or not texts:
        raise PhraseRefused(_unfitting(strangers[0]) if strangers else f"Say {slot.words}.", slot.name)
    return f"[{', '.join(texts)}]"


def _number(fitting: Fitting, slot: Slot, text: str) -> str:
    plain = text.replace("−", "-")
    if not _NUMBER.fullmatch(plain) or abs(Decimal(plain)) > Decimal(int(MAX_NUMBER)):
        raise PhraseRefused(f"'{text[:40]}' is no number; write it plainly, such as 3 or 0.5.", slot.name)
    number = Decimal(plain)
    why = _LIMITS.get(slot.fits, _unlimited)(number)
    if why:
        raise PhraseRefused(why, slot.name)
    return _plainly(number / 100 if slot.fits == "share" else number)


def _plainly(number: Decimal) -> str:
    """Return a number as the language writes it: no leading and no trailing noughts."""
    text = f"{number:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _unlimited(number: Decimal) -> str | None:
    return None


def _whole(number: Decimal) -> str | None:
    return None if number >= 0 and number == int(number) else "This has to be a whole number, 0 or more."


def _some(number: Decimal) -> str | None:
    return None if number >= 1 and number == int(number) else "This has to be a whole number, 1 or more."


def _not_negative(number: Decimal) -> str | None:
    return None if number >= 0 else "This has to be 0 or more."


def _percent(number: Decimal) -> str | None:
    return None if 0 < number <= 100 else "This has to be over 0 and at most 100."


_LIMITS: dict[str, Callable[[Decimal], str | None]] = {
    "whole": _whole,
    "some": _some,
    "not negative": _not_negative,
    "percent": _percent,
    "share": _percent,
}


def _either(fitting: Fitting, slot: Slot, text: str) -> str:
    """Return what was typed where a choice could have been made: a number, or a text in its one form."""
    beside = fitting.place("what" if slot.fits == "number like what" else "value")
    if beside is None or beside.kind.name in ("enum", "bool"):
        raise PhraseRefused(_unfitting(text), slot.name)
    if beside.kind.name == "str":
        return _quote(norm(text), slot)
    number = _number(fitting, slot, text)
    if slot.fits == "like value" and "." in number:
        said = f"Hardly any answer is {number} to the last digit; take the phrase 'is within … of …'."
        raise PhraseRefused(said, slot.name)
    return number


def _words(fitting: Fitting, slot: Slot, text: str) -> str:
    words = [norm(word) for word in text.split(",") if word.strip()]
    odd = [word for word in words if not any(letter.isalnum() for letter in word)]
    if odd or not words:
        raise PhraseRefused("Write the words with commas between, such as stays, remains.", slot.name)
    return f"[{', '.join(_quote(word, slot) for word in dict.fromkeys(words))}]"


def _quote(text: str, slot: Slot) -> str:
    """Return a text as a rule writes it; what a rule can't hold is refused."""
    quote = quoted(text)
    if isinstance(parse(quote), Fault) or ast.literal_eval(quote) != text:
        raise PhraseRefused("A rule can't hold this text; leave out backslashes and one kind of quotes.", slot.name)
    return quote


_TYPED: dict[str, Callable[[Fitting, Slot, str], str]] = {"number": _number, "words": _words}


def _refuse_crossed(filled: dict[str, str]) -> None:
    low, high = filled["low"], filled["high"]
    if _NUMBER.fullmatch(low) and _NUMBER.fullmatch(high) and Decimal(low) > Decimal(high):
        raise PhraseRefused("The lower limit is above the upper one.", "low")
