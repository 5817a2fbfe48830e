"""A refused answer says which task, and why, in a sentence of its own."""

from assessments.answers.errors import AnswerRefused, UnknownOption


def test_a_refusal_has_a_sentence_for_the_page_and_one_for_the_door() -> None:
    refused = UnknownOption("decision", "'x' is no option here.")
    assert isinstance(refused, AnswerRefused)
    assert (refused.task, refused.sentence) == ("decision", "'x' is no option here.")
    assert str(refused) == "decision: 'x' is no option here."
