"""Texts written to break out, to crash or to stall: each is refused by a sentence, at a place, before anything runs."""

import pytest

REFUSED = {
    "reaches for a class": "().__class__.__bases__[0].__subclasses__()",
    "reaches for a class of a record": "answer.__class__ == 1",
    "reaches for a class of a list": "answer.steps.__class__ == 1",
    "calls a method": "answer.steps.__len__() > 0",
    "formats": "'{0.__class__}'.format(answer) == 'x'",
    "f-string": "f'{answer!r:>1000000000}' == 'x'",
    "imports": "__import__('os')",
    "getattr": "getattr(answer, 'note') == 'x'",
    "lambda": "(lambda: True)()",
    "list comprehension": "[s for s in answer.steps]",
    "dictionary": "{1: 2}",
    "set": "{1, 2}",
    "walrus": "(x := True)",
    "two loops": "any(True for s in answer.steps for t in answer.steps for u in answer.steps)",
    "async": "every(s.wet async for s in answer.steps)",
    "loop variable shadows a root": "any(s.wet for answer in answer.steps)",
    "loop variable shadows a word": "any(every.wet for every in answer.steps)",
    "loop variable shadows a function": "any(dew_point.wet for dew_point in answer.steps)",
    "loop variable with underscore": "any(_s.wet for _s in answer.steps)",
    "look-alike letter": "any(\uff53.wet for s in answer.steps)",
    "look-alike root": "\uff41nswer.sure",
    "cyrillic a": "\u0430nswer.sure",
    "unpacking loop": "any(s.wet for s, t in answer.steps)",
    "loop into a field": "any(s.wet for s.n in answer.steps)",
    "two ifs": "any(s.wet for s in answer.steps if s.wet if s.wet)",
    "three deep": "any(any(any(u.wet for u in answer.steps) for t in answer.steps) for s in answer.steps)",
    "power": "9 ** 9 ** 9 > 1",
    "shift": "1 << 1000000000 > 1",
    "remainder": "10 % 3 == 1",
    "floor": "10 // 3 == 3",
    "invert": "~1 == 2",
    "plus sign": "+1 == 1",
    "text times number": "'a' * 1000000000 == 'a'",
    "text plus text": "'a' + 'b' == 'ab'",
    "list times number": "[1] * 1000000000 == [1]",
    "old formatting": "'%s' % answer == ''",
    "number of 500 digits": "1" + "0" * 500 + " > 1",
    "infinity": "1e999 > 1.0",
    "hexadecimal": "0x" + "f" * 400 + " > 1",
    "underscored number": "1_0_0 > 1",
    "complex": "1j == 1",
    "bytes": "b'a' == b'a'",
    "ellipsis": "... == 1",
    "none": "None == None",
    "brackets": "(" * 250 + "True" + ")" * 250,
    "square brackets": "[" * 250 + "]" * 250,
    "nots": "not " * 140 + "True",
    "minuses": "-" * 590 + "1 > 0",
    "choices": "True if True else " * 30 + "True",
    "fields": "answer" + ".steps" * 90,
    "calls": "abs(" * 120 + "1" + ")" * 120 + " > 0",
    "sums": "1" + " + 1" * 140 + " > 0",
    "parts": " and ".join(["1 < 2"] * 66),
    "long text literal": "'" + "a" * 250 + "' == 'a'",
    "nul": "answer.sure\x00",
    "line end": "answer.sure\n",
    "line end first": "\nanswer.sure",
    "line separator": "norm(answer.note) == '\u2028'",
    "tab": "answer.sure\tand True",
    "statement": "answer.sure; import os",
    "import": "import os",
    "backslash": "norm(answer.note) == '\\x41'",
    "item by place": "answer.steps[0].wet",
    "slice": "answer.steps[0:2]",
    "lists compared": "answer.steps == answer.steps",
    "records compared": "answer == answer",
    "is": "answer.sure is True",
    "star": "overlap(answer.next_steps, *key.kit)",
    "named value": "overlap(xs=answer.next_steps, ys=key.kit)",
    "bare function": "abs == abs",
    "bare word": "every",
    "word without loop": "any()",
    "word over a list": "any(answer.steps)",
    "await": "await answer",
    "yield": "yield answer",
    "bare star": "*answer",
    "builtin": "print",
    "exit": "exit()",
    "empty": "",
    "blank": "   ",
    "comment only": "#",
    "half a character": "'\ud800' == norm(answer.note)",
    "right to left": "'\u202e' == norm(answer.note)",
    "a megabyte": "a" * 1_000_000,
    "no text at all": None,
    "bytes for a rule": b"True",
    "unclosed quote": "answer.decision == 'wait",
    "not a test": "answer.margin",
    "empty list": "answer.packs in []",
    "mixed list": "answer.packs in [1, 'a']",
    "list of names": "answer.packs in [key.packs]",
}


@pytest.mark.parametrize("rule", list(REFUSED.values()), ids=list(REFUSED))
def test_an_attack_is_refused_by_a_sentence_at_a_place(checked, rule):
    found = checked(rule)
    assert not found.ok
    for fault in found.errors:
        assert fault.message.endswith((".", "?"))
        if isinstance(rule, str) and fault.start is not None:
            assert 0 <= fault.start <= fault.end <= len(rule)


@pytest.mark.parametrize(
    "rule", ["True", "answer.sure # why", "1 / 0 > 1", "1 < " * 40 + "2", "sum(1 for s in answer.steps) > 0"]
)
def test_what_is_odd_but_harmless_is_read(checked, rule):
    assert checked(rule).ok


def test_a_product_beyond_all_bounds_is_unknown(value):
    big = "*".join(["answer.packs"] * 20)
    assert value(f"{big} * ({big}) > 1", packs=10**9) is None
    assert value(f"near({big}, 1.5, 1)", packs=10**9) is False
