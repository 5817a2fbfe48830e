"""Sentences of a scenario file."""

import pytest

from assessments.scenarios.errors import SpecRefused
from assessments.scenarios.located import Table
from assessments.scenarios.read_words import read_paragraph, refuse_unknown_slots
from assessments.scenarios.spec import Sentence

TEXT = """
[[sentence]]
text = "It reads {probe}."
given = "probe"
[[sentence]]
text = "It rises."
where = { trend = ["rising", "steady"] }
"""


def test_a_paragraph_is_its_sentences_with_their_conditions() -> None:
    first, second = read_paragraph(Table.of(TEXT, "a.toml"))
    assert first == Sentence("It reads {probe}.", given="probe")
    assert (second.text, dict(second.where)) == ("It rises.", {"trend": ("rising", "steady")})


def test_a_slot_or_condition_that_names_nothing_is_refused() -> None:
    whole = Table.of(TEXT, "a.toml")
    sentences = read_paragraph(whole)
    refuse_unknown_slots(sentences, {"probe", "trend"}, whole, ("sentence",))
    with pytest.raises(SpecRefused, match=r"a.toml, line 6, sentence\[2\].text: no value is called 'trend'; there are"):
        refuse_unknown_slots(sentences, {"probe"}, whole, ("sentence",))


def test_an_unknown_key_of_a_sentence_is_refused() -> None:
    with pytest.raises(SpecRefused, match="'giben' isn't known here; did you mean given"):
        read_paragraph(Table.of('[[sentence]]\ntext = "A."\ngiben = "probe"', "a.toml"))
