"""The samples of the record leave no standing, no state of an ask and no end of a signature out."""

from courses.templatetags.words import ASKS, STANDINGS
from courses.views.samples_of_record import asks, board, deed, elements, events, way


def test_a_unit_stands_in_every_standing_and_counts_fit():
    units = way()
    assert {unit["standing"] for unit in units} == set(STANDINGS)
    assert all(unit["done"] + unit["old"] <= unit["total"] for unit in units)


def test_a_thing_is_asked_in_every_state_and_says_what_is_missing_where_it_is_not_met():
    shown = asks()
    assert [one["state"] for one in shown] == list(ASKS)
    assert [bool(one["missing"]) for one in shown] == [state != "met" for state in ASKS]
    assert all(len(one["evidence"]) == one["have"] for one in shown)


def test_an_element_stands_asked_signed_and_questioned_and_with_a_signature_withdrawn():
    asked, signed, withdrawn = elements()
    assert asked["hand"]
    assert signed["questioned"]
    assert not signed["signature"]["withdrawn"]
    assert withdrawn["signature"]["withdrawn"]["reason"]


def test_the_board_has_a_cell_for_every_unit_and_somebody_stuck():
    shown = board()
    assert all(len(row["cells"]) == len(shown["heads"]) for row in shown["rows"])
    assert any(cell["stuck"] for row in shown["rows"] for cell in row["cells"])


def test_events_run_backwards_and_words_to_sign_name_element_and_day():
    times = [one["when"] for one in events()]
    assert times == sorted(times, reverse=True)
    assert "COA2 Read the day" in deed()["words"]
