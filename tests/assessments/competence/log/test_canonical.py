"""Canonical JSON, against the vectors of RFC 8785 and the files published with it."""

import json
import struct

import pytest
import rfc8785

from assessments.competence.log.canonical import GREATEST, canonical, read
from assessments.competence.log.errors import LogFault

# RFC 8785 appendix B: the bits of a number (IEEE 754), and how it is written.
NUMBERS = [
    ("8000000000000000", "0"),
    ("0000000000000001", "5e-324"),
    ("44b52d02c7e14af6", "1e+23"),
    ("444b1ae4d6e2ef50", "1e+21"),
    ("3eb0c6f7a0b5ed8d", "0.000001"),
    ("becbf647612f3696", "-0.0000033333333333333333"),
    ("4340000000000000", "9007199254740992"),
]
# RFC 8785 §3.2.2, the sample object and its serialization.
SAMPLE = {
    "numbers": [333333333.33333329, 1e30, 4.50, 2e-3, 0.000000000000000000000000001],
    "string": "\u20ac$\u000f\u000aA'\u0042\u0022\u005c\\\"/",
    "literals": [None, True, False],
}
SAMPLE_TEXT = (
    '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],'
    '"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}'
)
# RFC 8785 §3.2.3: keys in the order of their UTF-16 code units; a face comes before a Hebrew letter with a point.
UNSORTED = {
    "\u20ac": "Euro Sign",
    "\r": "Carriage Return",
    "\ufb33": "Hebrew Letter Dalet With Dagesh",
    "1": "One",
    "\U0001f600": "Emoji: Grinning Face",
    "\u0080": "Control",
    "\u00f6": "Latin Small Letter O With Diaeresis",
}
SORTED = [
    "Carriage Return",
    "One",
    "Control",
    "Latin Small Letter O With Diaeresis",
    "Euro Sign",
    "Emoji: Grinning Face",
    "Hebrew Letter Dalet With Dagesh",
]


@pytest.mark.parametrize(("bits", "text"), NUMBERS)
def test_the_library_writes_numbers_as_the_standard_does(bits, text):
    (number,) = struct.unpack(">d", bytes.fromhex(bits))
    assert rfc8785.dumps(number) == text.encode()


def test_the_library_writes_the_sample_of_the_standard():
    assert rfc8785.dumps(SAMPLE).decode() == SAMPLE_TEXT


def test_keys_stand_in_the_order_of_their_code_units():
    written = canonical(UNSORTED)
    assert list(json.loads(written).values()) == SORTED
    assert list(json.loads(json.dumps(UNSORTED, sort_keys=True)).values()) != SORTED


def test_an_entry_is_written_without_blanks_and_with_the_least_escapes():
    assert canonical({"b": ["é", "\n"], "a": {"n": -1, "€": "/"}}) == '{"a":{"n":-1,"€":"/"},"b":["é","\\n"]}'


@pytest.mark.parametrize("number", [GREATEST, -GREATEST, 0])
def test_whole_numbers_are_held_up_to_the_greatest_that_all_readers_know(number):
    assert canonical({"n": number}) == f'{{"n":{number}}}'


@pytest.mark.parametrize(
    ("value", "words"),
    [
        ({"points": 12.5}, "points is 12.5. The log holds text, whole numbers and lists of texts; write it as text."),
        ({"points": float("nan")}, "points is nan. The log holds"),
        ({"points": float("inf")}, "points is inf. The log holds"),
        ({"n": 2**53}, "n is 9007199254740992. A whole number in the log is at most 9007199254740991 either way."),
        ({"n": -(2**53)}, "n is -9007199254740992."),
        ({"yes": True}, "yes is True. The log holds"),
        ({"none": None}, "none is None. The log holds"),
        ({"raw": b"a"}, "raw is b'a'. The log holds"),
        ({"list": [1]}, "list is 1. The log holds"),
        ({"list": [["a"]]}, "list is ['a']. The log holds"),
        ({"inner": {"x": 1.5}}, "x is 1.5. The log holds"),
        ({1: "a"}, "a key of the entry is 1. The log holds"),
        ({"half": "\ud800"}, "half holds half a character (a lone surrogate). Write whole characters."),
    ],
)
def test_what_no_entry_may_hold_is_refused_with_a_sentence(value, words):
    with pytest.raises(LogFault) as refused:
        canonical(value)
    assert str(refused.value).startswith(words)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "It can't be read: Expecting value"),
        ('{"a":', "It can't be read: "),
        ("[" * 100_000, "It can't be read: "),
        ("[1]", "It can't be read: a JSON object stands there in every entry."),
        ('{"a": 1}', "It is not in canonical form (RFC 8785)."),
        ('{"b":1,"a":1}', "It is not in canonical form (RFC 8785)."),
        ('{"a":1,"a":1}', "It is not in canonical form (RFC 8785)."),
        ('{"a":1.0}', "a is 1.0. The log holds"),
        ('{"a":NaN}', "a is nan. The log holds"),
    ],
)
def test_a_body_that_is_not_canonical_is_refused(text, words):
    with pytest.raises(LogFault) as refused:
        read(text)
    assert str(refused.value).startswith(words)
