"""An entry and its body."""

import hashlib
import json

import pytest

from assessments.competence.log.canonical import canonical
from assessments.competence.log.entry import START, Entry, follows, hash_of
from assessments.competence.log.errors import LogFault

AT = "2026-04-14T14:05:00.000000Z"
BODY = (
    f'{{"at":"{AT}","kind":"signed","prev":"{START}","seq":7,"stream":"s","stream_seq":1,"what":{{"element":"COA2"}}}}'
)
# A chain worked out beforehand with the json module and hashlib alone: SHA-256 over sorted JSON that includes `prev`.
CHAIN = [
    ({"max": 20, "score": 17, "seq": 1, "trainee": "3f2a1d6e", "type": "station.scored", "unit": "GC1-03"},
     "986ca1bb94443c4c28df09ffcfbd5c1c1a2de59975dcca24b505051c0a67a453"),
    ({"by": "examiner-07", "outcome": "competent", "seq": 2, "trainee": "3f2a1d6e", "type": "competency.signed",
      "unit": "GC1-03"}, "b83e7e5d36616ad23393d99cf2476ce7453cc783a942af0799995227149fad11"),
    ({"seq": 3, "serial": "0001", "trainee": "3f2a1d6e", "type": "certificate.issued"},
     "932a39786918daad90d73370c4dd0eebe942862ee036a9c1d69b0c355dac3713"),
]  # fmt: skip


def entry(**fields):
    said = {"seq": 7, "stream": "s", "stream_seq": 1, "kind": "signed", "at": AT, "prev": START}
    return Entry(**{**said, "what": {"element": "COA2"}, **fields})


def test_the_body_repeats_everything_and_its_hash_is_that_of_a_leaf():
    assert entry().body == BODY
    assert entry().hash == hashlib.sha256(b"\x00" + BODY.encode()).hexdigest()
    assert Entry.of(BODY) == entry()


def test_a_chain_in_canonical_form_comes_to_hashes_worked_out_elsewhere():
    prev, found = START, []
    for what, _hash in CHAIN:
        prev = hashlib.sha256(canonical({**what, "prev": prev}).encode()).hexdigest()
        found.append(prev)
    assert found == [wanted for _what, wanted in CHAIN]


@pytest.mark.parametrize(
    ("body", "words"),
    [
        ("nonsense", "It can't be read: "),
        ("{}", "It says nothing; an entry says at, kind, prev, seq, stream, stream_seq, what."),
        (BODY.replace('"seq":7', '"seq":"7"'), "Its seq is '7'."),
        (BODY.replace('{"element":"COA2"}', '"COA2"'), "Its what is 'COA2'."),
        (BODY.replace('"kind":"signed"', '"kind":7'), "Its kind is 7."),
        (BODY.replace('"kind"', '"king"'), "It says at, king, prev"),
    ],
)
def test_a_body_that_is_none_is_refused(body, words):
    with pytest.raises(LogFault) as refused:
        Entry.of(body)
    assert str(refused.value).startswith(words)


def test_an_entry_follows_where_its_hash_and_its_place_are_its_own():
    place = {"seq": 7, "stream": "s", "stream_seq": 1, "prev": START}
    assert follows(BODY, hash_of(BODY), **place)
    assert not follows(BODY, hash_of(BODY + " "), **place)
    assert not follows(BODY, hash_of(BODY), **{**place, "prev": "1" * 64})
    assert not follows("{", hash_of("{"), **place)


def test_what_it_holds_is_refused_before_it_is_hashed():
    with pytest.raises(LogFault, match="points is 12.5"):
        _ = entry(what={"points": 12.5}).hash
    assert json.loads(entry(what={"points": "12.5"}).body)["what"] == {"points": "12.5"}
