"""Evidence as it is judged now, and where it was first filed."""

from assessments.competence.evidence import as_judged_now, first_of
from tests.assessments.competence.pieces import days, paper


def test_what_was_judged_again_gives_way_to_its_last_judgement():
    first, second, third = paper("a"), paper("b", replaces="a"), paper("c", replaces="b")
    other = paper("d", days(-1))
    assert as_judged_now([third, first, other, second]) == (other, third)


def test_of_one_moment_the_order_is_that_of_the_ids():
    assert [one.id for one in as_judged_now([paper("b"), paper("a")])] == ["a", "b"]


def test_every_judgement_leads_to_where_it_was_first_filed():
    held = [paper("c", replaces="b"), paper("b", replaces="a"), paper("a"), paper("d", replaces="lost")]
    assert first_of(held) == {"a": "a", "b": "a", "c": "a", "d": "d"}


def test_a_ring_of_judgements_comes_to_an_end():
    assert set(first_of([paper("a", replaces="b"), paper("b", replaces="a")])) == {"a", "b"}
