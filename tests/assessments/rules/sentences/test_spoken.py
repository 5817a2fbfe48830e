import pytest

from assessments.rules.sentences.spoken import called, is_written, plain, unit_of


@pytest.mark.parametrize(
    ("value", "unit", "wanted"),
    [
        (9.3, "degc", "9.3\u00a0°C"),
        (-0.5, "K", "−0.5\u00a0K"),
        (65.0, "rh", "65\u00a0%"),
        (3, None, "3"),
        (0.1 + 0.2, None, "0.3"),
        (False, None, "no"),
        ("wait", None, "wait"),
        (7.0, "ml/m2", "7\u00a0ml/m2"),
    ],
)
def test_a_value_is_written_in_its_base_unit(value, unit, wanted):
    assert plain(value, unit) == wanted


@pytest.mark.parametrize(
    ("expression", "wanted", "unit"),
    [
        ("answer.dew_point", "dew point", "degc"),
        ("facts.film_um", "film", "um"),
        ("facts.air_rh", "air rh", "rh"),
        ("facts.rate * facts.area_m2", "rate × area", "ml"),
        ("facts.film_um / facts.film_um", "film ÷ film", None),
        ("facts.panel_degc - answer.dew_point", "panel − dew point", "K"),
        ("['a', 'b']", "(a, b)", None),
        ("2.5", "2.5", None),
        ("least(s.um for s in answer.steps)", "least of steps", "um"),
    ],
)
def test_a_part_has_a_name_and_a_unit(checked, expression, wanted, unit):
    root = checked(expression, wants="any").root
    assert (called(root), unit_of(root)) == (wanted, unit)


def test_what_stands_in_the_rule_is_known_as_written(checked):
    assert is_written(checked("2 + 3", wants="any").root)
    assert not is_written(checked("key.packs + 3", wants="any").root)
