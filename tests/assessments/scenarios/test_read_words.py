"""Sentences of a scenario file."""

import pytest

from assessments.scenarios.read_words import read_paragraph, read_words
from assessments.scenarios.wording import Sentence
from courses.content.errors import FileRefused
from courses.content.tables import read_table

TEXT = """
[[sentence]]
text = "It reads {probe}."
given = "probe"
[[sentence]]
text = "It rises."
where = { trend = ["rising", "steady"] }
asked = ["wipe"]
"""


KNOWN = ("probe", "trend")


def test_a_paragraph_is_its_sentences_with_their_conditions() -> None:
    first, second = read_paragraph(read_table(TEXT, "a.toml"), KNOWN)
    assert first == Sentence("It reads {probe}.", given="probe")
    assert (second.text, dict(second.where)) == ("It rises.", {"trend": ("rising", "steady")})
    assert (first.asked, second.asked, second.not_asked) == ((), ("wipe",), ())


@pytest.mark.parametrize(
    ("before", "after", "says"),
    [
        ("trend =", "trends =", r"line 7, sentence[2].where.trends: 'trends' isn't known here; did you mean trend?"),
        ("{probe}", "{prob}", "line 3, sentence[1].text: no value is called 'prob'; did you mean probe?"),
        ('given = "probe"', 'given = "x"', "line 4, sentence[1].given: 'x' isn't known here; there are probe, trend."),
        ("given =", "giben =", "line 4, sentence[1].giben: 'giben' isn't known here; did you mean given?"),
        ("[[sentence]]", "[[sentense]]", "line 2, sentense: 'sentense' isn't known here; did you mean sentence?"),
    ],
)
def test_what_names_nothing_is_refused_at_its_line(before: str, after: str, says: str) -> None:
    with pytest.raises(FileRefused) as refused:
        read_paragraph(read_table(TEXT.replace(before, after), "a.toml"), KNOWN)
    assert str(refused.value) == f"a.toml, {says}"


def test_words_that_stand_fixed_hold_only_fixed_quantities() -> None:
    table = read_table('ask = "Wait {2 h}"\nhint = "It reads {probe}"', "a.toml")
    assert (read_words(table, "ask"), read_words(table, "about", default="")) == ("Wait {2 h}", "")
    with pytest.raises(FileRefused, match=r"line 2, hint: no value is called 'probe'; only a fixed quantity such as"):
        read_words(table, "hint")
