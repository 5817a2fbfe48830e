import re

import pytest

from courses.content.errors import FileRefused
from courses.content.picture_list import LAMPS_AT_MOST, ListedPicture, read_pictures, why_not_together
from courses.trade.defects import LIGHTS

WHOLE = """[[picture]]
code = "swirl_navy"
light = "point"
lamps = [[0.3, 0.4], [0.7, 0.4]]
alt = "Rings close round the lamp."
caption = "Swirls."

[picture.scene]
substrate = "clear_coat"
colour = "navy"
defects = [{ kind = "swirl", severity = 0.6 }]
"""
SECOND = WHOLE.replace("swirl_navy", "star_white").replace("[[0.3, 0.4], [0.7, 0.4]]", "[[0.5, 0]]")


def read(text: str) -> dict[str, ListedPicture]:
    return dict(read_pictures(text, "pictures.toml"))


def test_a_picture_is_its_scene_its_light_and_what_is_to_be_seen():
    assert read(WHOLE)["swirl_navy"] == ListedPicture(
        code="swirl_navy",
        scene={"substrate": "clear_coat", "colour": "navy", "defects": [{"kind": "swirl", "severity": 0.6}]},
        light="point",
        lamps=((0.3, 0.4), (0.7, 0.4)),
        alt="Rings close round the lamp.",
        caption="Swirls.",
        line=8,
    )


def test_pictures_keep_the_order_of_the_file_and_one_lamp_is_a_still():
    pictures = read(SECOND + WHOLE)
    assert list(pictures) == ["star_white", "swirl_navy"]
    assert [(picture.lamps, picture.moves) for picture in pictures.values()] == [
        (((0.5, 0.0),), False),
        (((0.3, 0.4), (0.7, 0.4)), True),
    ]
    assert [picture.line for picture in pictures.values()] == [8, 19]


def test_only_pictures_with_the_same_lamp_stand_side_by_side():
    swirl, star = read(WHOLE + SECOND).values()
    (twin,) = read(WHOLE.replace("swirl_navy", "hologram_navy")).values()
    assert why_not_together((swirl, twin)) == ""
    assert why_not_together((swirl, star)) == (
        "swirl_navy and star_white stand under one lamp, but their lamps are not the same."
    )
    assert why_not_together((swirl, swirl)) == "a picture stands here twice; name each once."
    assert why_not_together((swirl,) * 4) == "name one to three pictures."


@pytest.mark.parametrize(
    ("old", "new", "line", "key", "words"),
    [
        ("code =", "cod =", 2, "picture[1].cod", "did you mean code?"),
        ('"swirl_navy"', '"Swirl-Navy"', 2, "picture[1].code", "is no code; write small letters"),
        ('"point"', '"pont"', 3, "picture[1].light", "did you mean point?"),
        ('light = "point"\n', "", 1, "picture[1].light", "this is missing"),
        ("[[0.3, 0.4], [0.7, 0.4]]", "[]", 4, "picture[1].lamps", "give one to 12 places"),
        ("[[0.3, 0.4], [0.7, 0.4]]", "0.3", 4, "picture[1].lamps", "write lamps = [[0.5, 0.42]]"),
        ("[[0.3, 0.4], [0.7, 0.4]]", str([[0.0, n / 20] for n in range(13)]), 4, "picture[1].lamps", "one to 12"),
        ("[0.3, 0.4]", "[0.3]", 4, "picture[1].lamps", "[0.3] is no place of a lamp"),
        ("[0.3, 0.4]", '[0.3, "high"]', 4, "picture[1].lamps", "is no place of a lamp"),
        ("[0.3, 0.4]", "[0.3, true]", 4, "picture[1].lamps", "is no place of a lamp"),
        ("[0.3, 0.4]", "[0.3, nan]", 4, "picture[1].lamps", "too far outside the picture"),
        ("[0.3, 0.4]", "[0.3, 1.6]", 4, "picture[1].lamps", "too far outside the picture"),
        ("[0.3, 0.4]", "[0.7, 0.4]", 4, "picture[1].lamps", "stands twice in the list"),
        ("Rings close round the lamp.", " ", 5, "picture[1].alt", "this is empty"),
        ('caption = "Swirls."\n', "", 1, "picture[1].caption", "this is missing"),
        ("[picture.scene]", "[picture.scean]", 8, "picture[1].scean", "did you mean scene?"),
        (WHOLE[WHOLE.index("[picture.scene]") :], "", 1, "picture[1].scene", "with substrate, colour and defects"),
        ("[[picture]]", "[[pictures]]", 1, "pictures", "did you mean picture?"),
        (WHOLE, "", 1, "picture", "none stands here"),
        (WHOLE, WHOLE + WHOLE, 13, "picture[2].code", "stands above already"),
    ],
)
def test_a_broken_list_is_refused_with_file_line_and_key(old, new, line, key, words):
    assert old in WHOLE
    with pytest.raises(FileRefused, match=re.escape(words)) as error:
        read(WHOLE.replace(old, new, 1))
    assert (error.value.file, error.value.line, error.value.key) == ("pictures.toml", line, key)


def test_as_many_lamps_as_allowed_are_read_and_every_light_is_known():
    many = str([[0.0, n / 20] for n in range(LAMPS_AT_MOST)])
    for light in LIGHTS:
        text = WHOLE.replace("[[0.3, 0.4], [0.7, 0.4]]", many).replace('"point"', f'"{light}"')
        assert len(read(text)["swirl_navy"].lamps) == LAMPS_AT_MOST
