"""What a signature covers: its digest re-made outside, its shape refused when malformed, its changes named."""

import hashlib
import json
from dataclasses import replace

import pytest
import rfc8785
from hypothesis import given
from hypothesis import strategies as st

from assessments.competence.deed import Change, Deed, changes

DEED = Deed(
    school="1",
    person="6c1f",
    signer="a0b2",
    element="COA2",
    requirement_version=0,
    requirement_digest="ab" * 32,
    asks=("A paper at COA-01",),
    evidence=(("e1", "satisfactory"), ("e2", "critical_fail")),
    decisions=("d1",),
    counted=("e1",),
)
TEXTS = st.text(st.characters(exclude_categories=["Cs"]), max_size=8)
LISTS = st.lists(TEXTS, max_size=3).map(tuple)
DEEDS = st.builds(
    Deed, TEXTS, TEXTS, TEXTS, TEXTS, st.integers(0, 999), TEXTS, LISTS,
    st.dictionaries(TEXTS, TEXTS, max_size=3).map(lambda held: tuple(sorted(held.items()))), LISTS, LISTS,
)  # fmt: skip


def test_the_library_writes_the_example_of_the_standard():
    # RFC 8785 section 3.2.2 and 3.2.3: the sample input and its canonical form
    sample = (
        '{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],'
        '"string":"\\u20ac$\\u000F\\u000aA\'\\u0042\\u0022\\u005c\\\\\\"\\/","literals":[null,true,false]}'
    )
    wanted = (
        '{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],'
        '"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}'
    )
    assert rfc8785.dumps(json.loads(sample)).decode() == wanted


def test_the_digest_is_that_of_the_canonical_form_written_by_hand():
    # RFC 8785 by hand: keys sorted, no blanks, nothing in it that wants escaping; SHA-256 by the standard library
    text = (
        '{"asks":["A paper at COA-01"],"counted":["e1"],"decisions":["d1"],"element":"COA2",'
        '"evidence":[["e1","satisfactory"],["e2","critical_fail"]],"person":"6c1f",'
        f'"requirement_digest":"{"ab" * 32}","requirement_version":0,"school":"1","signer":"a0b2"}}'
    )
    assert DEED.digest() == hashlib.sha256(text.encode()).hexdigest()


@given(DEEDS)
def test_a_deed_comes_back_from_json_as_it_was(deed):
    assert Deed.of(json.loads(json.dumps(deed.as_json()))) == deed


@given(DEEDS, DEEDS)
def test_changes_are_named_exactly_where_digests_differ(old, new):
    assert changes(old, old) == ()
    assert bool(changes(old, new)) == (old.digest() != new.digest())


@pytest.mark.parametrize(
    ("key", "wrong", "said"),
    [
        ("person", 3, "person of a deed is text"),
        ("requirement_digest", None, "requirement_digest of a deed is text"),
        ("requirement_version", "0", "is a whole number"),
        ("requirement_version", True, "is a whole number"),
        ("asks", "text", "is a list of texts"),
        ("decisions", [1], "is a list of texts"),
        ("evidence", {}, "is a list of pairs"),
        ("evidence", [["e1"]], "is a list of pairs"),
        ("evidence", ["e1"], "is a list of pairs"),
        ("more", 1, "A deed holds exactly school"),
    ],
)
def test_a_malformed_deed_is_refused_with_a_sentence(key, wrong, said):
    with pytest.raises(ValueError, match=said):
        Deed.of({**DEED.as_json(), key: wrong})


@pytest.mark.parametrize("value", [None, [], "deed", {}])
def test_what_is_no_deed_is_refused(value):
    with pytest.raises(ValueError, match="A deed holds exactly"):
        Deed.of(value)


@pytest.mark.parametrize(
    ("fields", "wanted"),
    [
        ({"signer": "other"}, Change("someone_else", "signer", "a0b2", "other")),
        ({"requirement_version": 1}, Change("requirement", "", "0", "1")),
        ({"requirement_digest": "cd"}, Change("requirement", "", "0", "0")),
        ({"asks": ("Two papers",)}, Change("requirement", "", "0", "0")),
        ({"evidence": (*DEED.evidence, ("e3", "satisfactory"))}, Change("new_evidence", "e3", "", "satisfactory")),
        ({"evidence": DEED.evidence[:1]}, Change("gone", "e2", "critical_fail")),
        (
            {"evidence": (("e1", "critical_fail"), DEED.evidence[1])},
            Change("rejudged", "e1", "satisfactory", "critical_fail"),
        ),
        ({"counted": ("e1", "e2")}, Change("counts", "e2")),
        ({"counted": ()}, Change("no_longer_counts", "e1")),
        ({"decisions": ("d1", "d2")}, Change("decided", "d2")),
        ({"decisions": ()}, Change("gone", "d1")),
        ({"evidence": DEED.evidence[::-1]}, Change("rearranged")),
    ],
)
def test_each_change_is_named(fields, wanted):
    assert changes(DEED, replace(DEED, **fields)) == (wanted,)
