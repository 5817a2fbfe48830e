import pytest

from assessments.rules.sentences.amounts import among, is_free, unit_beside, written
from assessments.rules.sentences.reading import reading


@pytest.fixture
def amount(checked):
    """A value expression as words."""

    def ask(expression):
        found = checked(expression, wants="any")
        assert found.ok, found.errors
        return reading().amount(found.root).replace("\u00a0", " ")

    return ask


@pytest.mark.parametrize(
    ("expression", "wanted"),
    [
        ("3", "3"),
        ("-3.5", "−3.5"),
        ("'coat_now'", "coat now"),
        ("['coat_now', 'wait']", "coat now or wait"),
        ("answer.dew_point", "the trainee's dew point"),
        ("answer", "the trainee's answer"),
        ("-answer.margin", "minus the trainee's margin"),
        ("-(answer.margin + 1)", "minus (the trainee's margin + 1 K)"),
        ("facts.panel_degc + 3", "the panel + 3 K"),
        ("3 + facts.panel_degc", "3 K + the panel"),
        ("facts.panel_degc - 3", "the panel − 3 K"),
        ("facts.film_um - 5", "the film − 5 µm"),
        ("facts.film_um * 2", "the film × 2"),
        ("answer.packs + 1", "the trainee's packs + 1"),
        ("facts.film_um - (facts.film_um - 5)", "the film − (the film − 5 µm)"),
        ("facts.film_um + (facts.film_um - 5)", "the film + the film − 5 µm"),
        ("(facts.film_um + 5) / facts.econ", "(the film + 5 µm) ÷ the econ"),
        ("abs(facts.panel_degc - answer.dew_point)", "the difference between the panel and the trainee's dew point"),
        ("abs(facts.film_um - 5)", "the difference between the film and 5 µm"),
        ("abs(answer.margin)", "the size of the trainee's margin"),
        ("len(answer.steps)", "the number of steps"),
        ("len(answer.note)", "the length of the trainee's note"),
        ("len(key.kit)", "the number of items of the key's kit"),
        ("norm(answer.note)", "the trainee's note"),
        (
            "overlap(answer.next_steps, key.kit)",
            "the number of next steps that are among the key's kit",
        ),
        (
            "overlap(key.kit, ['fuel_heater'])",
            "the number of items of the key's kit that are fuel heater",
        ),
        ("dew_point(facts.air_degc, 65)", "the dew point of the air and 65 %"),
        ("2 if facts.cold else 3", "(2 if the cold is yes, otherwise 3)"),
        ("facts.film_um if facts.cold else 3", "(the film if the cold is yes, otherwise 3 µm)"),
        ("answer.margin > 3", "(whether the trainee's margin is over 3 K)"),
        ("answered(answer.margin)", "(whether the trainee's margin is answered)"),
        ("count(s.wet for s in answer.steps)", "the number of steps whose wet is yes"),
    ],
)
def test_a_value_is_told_in_words(amount, expression, wanted):
    assert amount(expression) == wanted


def test_a_function_of_nothing_is_called_by_its_name(schema):
    from assessments.rules import Function, check, num

    lent = Function("shop_air", (), num("degc"), 1, lambda: 20.0)
    assert reading().amount(check("shop_air()", schema, (lent,), "any").root) == "the shop air"


def test_a_written_value_takes_the_unit_beside_it(checked):
    found = checked("answer.margin > 3")
    margin, three = found.root.parts
    assert (unit_beside(three, margin), unit_beside(margin, three), unit_beside(three, None)) == ("K", "K", None)


def test_free_text_is_shown_as_it_stands_and_a_choice_as_words(checked):
    note, words = checked("norm(answer.note) == 'It_stays'").root.parts
    assert (is_free(note), is_free(words), is_free(None)) == (True, False, False)
    assert written(reading(), "it_stays", beside=note) == "“it_stays”"
    assert written(reading(), "it_stays") == "it stays"


def test_a_list_is_told_as_what_something_may_be(checked):
    one, two = (checked(f"answer.decision in {words}").root for words in ("['wait']", "['wait', 'coat_now']"))
    listed = checked("'tell_owner' in key.kit").root
    said = [among(reading(), root.parts[1], root.parts[0]) for root in (one, two, listed)]
    assert said == ["wait", "one of wait or coat now", "among the key's kit"]
