"""Numbers on a page: glued to their unit, in the units of the reader."""

import pytest
from django.template import Context, Template
from django.utils.safestring import mark_safe

from courses.trade.units import Preferences


def written(source: str, **context: object) -> str:
    return Template("{% load trade %}" + source).render(Context(context))


@pytest.mark.parametrize(
    ("plain", "glued"),
    [
        ("5.4 °F over the dew point", "5.4\u00a0°F over the dew point"),
        ("7.1 model µm short", "7.1\u00a0model\u00a0µm short"),
        ("at 85 % humidity, 6 g/kg, 153 ft² and 2 h", "at 85\u00a0% humidity, 6\u00a0g/kg, 153\u00a0ft² and 2\u00a0h"),
        ("In 3 minutes, step 3 of 5", "In 3 minutes, step\u00a03 of 5"),
        ("4 men and 12 hulls", "4 men and 12 hulls"),
    ],
)
def test_numbers_are_glued_to_their_unit_and_names_to_their_number(plain, glued):
    assert written("{{ words|glue }}", words=plain) == glued


def test_glue_keeps_cleaned_html_as_it_is_and_escapes_the_rest():
    assert written("{{ words|glue }}", words=mark_safe("<b>3 K</b>")) == "<b>3\u00a0K</b>"
    assert written("{{ words|glue }}", words="<b>3 K</b>") == "&lt;b&gt;3\u00a0K&lt;/b&gt;"


def test_a_quantity_is_shown_in_the_units_of_the_reader():
    assert written('{% quantity 3.0 "K" %}', prefs=Preferences.us()) == "5.4\u00a0°F"
    assert written('{% quantity 3.0 "K" %}') == "3.0\u00a0K"


def test_how_a_source_is_known_is_said_in_words():
    assert written('{{ "memory"|mark_words }}, {{ "our own words"|mark_words }}') == "known, not checked, our own words"
