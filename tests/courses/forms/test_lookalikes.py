"""Which two kinds stand side by side."""

import pytest

from courses.forms.lookalikes import LookAlikesForm, kind_words
from courses.pictures import LIGHTS
from courses.pictures.lookalikes import SHADES
from courses.shipped import catalogue

GOOD = {"a": "swirl", "b": "hologram", "colour": "dark", "light": "point"}


def test_every_kind_is_offered_by_its_trade_name_after_the_clean_panel():
    codes, words = zip(*kind_words(), strict=True)
    assert codes[0] == "clean"
    assert sorted(codes[1:]) == sorted(catalogue().kinds)
    assert list(words[1:]) == sorted(words[1:])
    assert all(one[0].isupper() for one in words)


def test_every_colour_and_light_can_be_chosen():
    for colour in SHADES:
        for light in LIGHTS:
            assert LookAlikesForm({**GOOD, "colour": colour, "light": light}).is_valid()


def test_a_kind_beside_itself_is_refused():
    assert LookAlikesForm({**GOOD, "b": "swirl"}).errors == {
        "b": ["Both panels are the same. Choose another kind for one of them."]
    }


@pytest.mark.parametrize("field", GOOD)
@pytest.mark.parametrize("value", ["", "no such", "<script>", "../..", "\x00", "é" * 3000])
def test_what_isnt_offered_is_refused(field, value):
    assert list(LookAlikesForm({**GOOD, field: value}).errors) == [field]
