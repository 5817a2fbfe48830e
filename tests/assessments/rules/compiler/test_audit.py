"""One planted fault of each class; what the compiler writes passes in every other test of this folder."""

import pytest

from assessments.rules.compiler import AuditFailed
from assessments.rules.compiler.audit import audited

CALLED = {"abs", "h0"}


def read(body, head="def book(case, E):"):
    return audited(f"{head}\n    {body}\n", ("case", "E"), CALLED)


@pytest.mark.parametrize(
    "body",
    [
        "p1 = case['answer']",
        "v2 = abs(-1.5) <= 2 * 3 or h0(1) is not None",
        "return (p1.get('sand', ()), 'x' not in ['a', None, True], )",
        "E((1, True, *p1))",
        "for i1, x2 in p1: break",
        "q1 += 1 if p1 else 2",
    ],
)
def test_what_the_compiler_writes_passes(body):
    assert read(body).body[0].name == "book"


FAULTS = {
    "attribute": "p1.real",
    "method": "p1.pop('a')",
    "method of a field": "p1['a'].get('b')",
    "class": "p1.__class__",
    "import": "import os",
    "import from": "from os import system",
    "call of an unknown name": "eval('1')",
    "call of a made name": "v1(2)",
    "call of the case": "case('a')",
    "call of a call": "h0(1)(2)",
    "call with a name": "abs(x=1)",
    "dunder name": "__builtins__",
    "unknown name": "print",
    "name too long": "ab1 = 2",
    "assigned parameter": "case = 2",
    "subscript by a name": "p1[v2]",
    "subscript by a number": "p1[0]",
    "slice": "p1['a':'b']",
    "changed record": "p1['a'] = 2",
    "deleted": "del p1",
    "lambda": "v1 = lambda: 2",
    "list worked out": "[x1 for x1 in p1]",
    "dictionary": "{'a': 1}",
    "f-string": "f'{p1}'",
    "power": "2 ** 9",
    "remainder": "v1 % 2",
    "whole division": "v1 // 2",
    "shift in place": "v1 <<= 2",
    "turned bits": "~v1",
    "bytes": "b'a'",
    "ellipsis": "...",
    "walrus": "(v1 := 2)",
    "global": "global v1",
    "raise": "raise p1",
    "try": "try: v1 = 2\n    finally: v1 = 3",
    "with": "with p1: pass",
    "while": "while True: pass",
    "inner function": "def v1(): pass",
    "inner class": "class v1: pass",
    "yield": "yield 1",
    "assert": "assert p1",
    "assigned function": "h0 = p1",
    "function as a value": "v1 = h0",
    "second target": "v1 = case = 2",
}


@pytest.mark.parametrize("body", FAULTS.values(), ids=FAULTS)
def test_anything_else_is_refused(body):
    with pytest.raises(AuditFailed):
        read(body)


@pytest.mark.parametrize(
    "head",
    [
        "def book(case):",
        "def book(case, E, more):",
        "def book(case, E=1):",
        "def book(case, E: h0):",
        "def book(case, E, *v1):",
        "def book(case, /, E):",
        "def book(case, *, E):",
        "def book(case, E) -> h0:",
        "def other(case, E):",
        "async def book(case, E):",
        "@h0\ndef book(case, E):",
        "h0(1)\ndef book(case, E):",
        "k1 = h0('a')\ndef book(case, E):",
        "k1 = fields(case)\ndef book(case, E):",
        "k1 = fields(x='a')\ndef book(case, E):",
        "k1 = k2 = fields('a')\ndef book(case, E):",
        "case = fields('a')\ndef book(case, E):",
        "if 1:",
    ],
)
def test_nothing_but_one_plain_function_is_read(head):
    with pytest.raises(AuditFailed):
        read("pass", head)


def test_which_fields_are_taken_at_once_may_stand_before_it():
    assert read("v2, v3 = k1(case)", "k1 = fields('a', 'b')\ndef book(case, E):").body[1].name == "book"


def test_an_empty_text_is_refused():
    with pytest.raises(AuditFailed):
        audited("", ("case",), CALLED)
