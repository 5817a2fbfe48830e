import pytest

from assessments.rules import Fault
from assessments.rules.faults import FunctionFailed, listed, nearest, offered


def test_a_fault_is_the_door_s_shape():
    assert Fault("Wrong.", 3, 7, "right").as_json() == {
        "message": "Wrong.",
        "start": 3,
        "end": 7,
        "suggestion": "right",
    }


@pytest.mark.parametrize(
    ("name", "names", "wanted"),
    [
        ("stpes", ["steps", "asked"], "steps"),
        ("DegC", ["degc", "K"], "degc"),
        ("zzz", ["steps"], None),
        ("s" * 61, ["s" * 61], None),
        ("steps", [], None),
    ],
)
def test_the_nearest_name_is_offered(name, names, wanted):
    assert nearest(name, names) == wanted


def test_sentences_are_whole_with_and_without_an_offer():
    assert offered("There is no 'a'", None) == "There is no 'a'."
    assert offered("There is no 'a'", "b") == "There is no 'a'; did you mean 'b'?"


def test_long_lists_are_cut():
    assert listed("abcdefghij") == "a, b, c, d, e, f, g, h …"
    assert listed(["a" * 61, "b" * 60]) == f"{'a' * 59}…, {'b' * 60}"


def test_a_function_that_failed_is_named_even_when_it_said_nothing():
    assert str(FunctionFailed("half", KeyError())) == "half() failed: KeyError, no word of why."
