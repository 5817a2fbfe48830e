import re

import pytest

from courses.content.errors import FileRefused
from courses.content.lesson import Known
from courses.content.pack import LessonPack, read_course, read_shelf, read_units

UNITS = """[[unit]]
code = "COA"
title = "Coat and cure"
about = "Keep it dry."
elements = [{ code = "COA1", title = "Release" }, { code = "COA2", title = "Read the day" }]
"""
CATALOGUE = """[[lesson]]
code = "L24"
slug = "dew-point"
title = "Air and surface"
minutes = 30
elements = ["COA2"]
text = "lessons/L24.md"

[[lesson]]
code = "L25"
slug = "instruments-lie"
title = "When the reading is wrong"
minutes = 25
elements = ["COA1", "COA2"]
"""
REMOTE = """code = "remote"
title = "Remote"
about = "At home."
path = ["B", "L24"]

[[module]]
code = "A"
title = "Coating"
unit = "COA"
lessons = ["L24"]

[[module]]
code = "B"
title = "Rest"
about = "Read later."
lessons = ["L25"]
"""
LESSON = """+++
code = "L24"
version = 3
outcomes = ["read a day"]
+++
Text.[^practice]

:::check
Dry?
- [x] a :: b
- [ ] c :: d
:::
"""
KNOWN = Known(sources=("practice",), sums={})
TEXTS = {"lessons.toml": CATALOGUE, "remote.toml": REMOTE, "lessons/L24.md": LESSON}


def shelf(**changed: str):
    """The shelf with some texts replaced; ``catalogue``, ``remote`` and ``lesson`` name them."""
    names = {
        "catalogue": "lessons.toml",
        "remote": "remote.toml",
        "lesson": "lessons/L24.md",
        "extra": "lessons/L99.md",
    }
    return read_shelf(
        TEXTS | {names[key]: text for key, text in changed.items()}, KNOWN, read_units(UNITS, "units.toml")
    )


def test_units_keep_their_elements_in_order():
    unit = read_units(UNITS, "units.toml")["COA"]
    assert (unit.title, unit.about) == ("Coat and cure", "Keep it dry.")
    assert unit.elements == (("COA1", "Release"), ("COA2", "Read the day"))


def test_a_written_lesson_is_taught_and_the_others_are_named():
    lessons = shelf().lessons
    assert list(lessons) == ["L24", "L25"]
    written = lessons["L24"]
    assert written.taught
    assert (written.version, written.outcomes, written.sources) == (3, ("read a day",), ("practice",))
    assert [part.kind for part in written.parts] == ["text", "check"]
    assert written.checks[0].right.id == "a"
    assert (written.file, written.text) == ("lessons/L24.md", LESSON)
    assert lessons["L25"] == LessonPack(
        "L25", "instruments-lie", "When the reading is wrong", 25, ("COA1", "COA2"),
        0, (), (), (), "", "",
    )  # fmt: skip
    assert not lessons["L25"].taught


def test_a_course_holds_its_modules_and_its_order_of_reading():
    course = shelf().courses["remote"]
    assert (course.code, course.title, course.about) == ("remote", "Remote", "At home.")
    assert [(m.code, m.title, m.unit, m.about, [lesson.code for lesson in m.lessons]) for m in course.modules] == [
        ("A", "Coating", "COA", "", ["L24"]),
        ("B", "Rest", "", "Read later.", ["L25"]),
    ]
    assert [lesson.code for lesson in course.path] == ["L25", "L24"]


def test_without_a_path_the_modules_are_read_as_they_stand():
    course = shelf(remote=REMOTE.replace('path = ["B", "L24"]\n', "")).courses["remote"]
    assert [lesson.code for lesson in course.path] == ["L24", "L25"]


def test_what_comes_after_a_lesson_is_the_next_that_is_taught():
    course = shelf().courses["remote"]
    assert course.after("L25").code == "L24"
    assert course.after("L24") is None
    assert course.after("L99") is None


def test_a_course_can_be_read_alone():
    whole = shelf()
    assert read_course(REMOTE, "remote.toml", whole.lessons, read_units(UNITS, "u")) == whole.courses["remote"]


def test_a_missing_catalogue_is_refused():
    with pytest.raises(FileRefused, match="lists every lesson") as error:
        read_shelf({}, KNOWN, {})
    assert (error.value.file, error.value.line) == ("lessons.toml", 1)


def test_two_courses_of_one_code_are_refused():
    texts = TEXTS | {"second.toml": REMOTE}
    with pytest.raises(FileRefused, match="'remote' stands above already") as error:
        read_shelf(texts, KNOWN, read_units(UNITS, "units.toml"))
    assert (error.value.file, error.value.line, error.value.key) == ("second.toml", 1, "code")


@pytest.mark.parametrize(
    ("text", "line", "key", "words"),
    [
        (UNITS + UNITS, 7, "unit[2].code", "'COA' stands above already"),
        (UNITS + UNITS.replace('"COA"', '"COB"'), 10, "unit[2].elements[1].code", "'COA1' stands above already"),
        (
            UNITS.replace('title = "Release"', 'titel = "Release"'),
            5,
            "unit[1].elements[1].titel",
            "did you mean title?",
        ),
    ],
)
def test_broken_units_are_refused(text, line, key, words):
    with pytest.raises(FileRefused, match=re.escape(words)) as error:
        read_units(text, "units.toml")
    assert (error.value.line, error.value.key) == (line, key)


@pytest.mark.parametrize(
    ("change", "file", "line", "key", "words"),
    [
        ({"catalogue": CATALOGUE.replace('"L25"', '"L24"')}, "lessons.toml", 10, "lesson[2].code", "is used once"),
        (
            {"catalogue": CATALOGUE.replace('"instruments-lie"', '"dew-point"')},
            "lessons.toml", 11, "lesson[2].slug", "is used once",
        ),
        ({"catalogue": CATALOGUE.replace("COA1", "COA7")}, "lessons.toml", 14, "lesson[2].elements", "isn't known"),
        ({"catalogue": CATALOGUE.replace("= 25", '= "25"')}, "lessons.toml", 13, "lesson[2].minutes", "whole number"),
        (
            {"catalogue": CATALOGUE.replace("L24.md", "L42.md")},
            "lessons.toml", 7, "lesson[1].text", "did you mean lessons/L24.md?",
        ),
        ({"catalogue": CATALOGUE + "mintues = 3"}, "lessons.toml", 15, "lesson[2].mintues", "did you mean minutes?"),
        ({"lesson": LESSON.replace("L24", "L25")}, "lessons/L24.md", 2, "code", "the catalogue says L24"),
        ({"lesson": LESSON.replace("[^practice]", "")}, "lessons/L24.md", 6, "sources", "names no source"),
        ({"extra": LESSON}, "lessons/L99.md", 1, "text", "no lesson names this file"),
        ({"remote": REMOTE.replace('"COA"', '"COB"')}, "remote.toml", 9, "module[1].unit", "did you mean COA?"),
        ({"remote": REMOTE.replace('["L25"]', '["L26"]')}, "remote.toml", 16, "module[2].lessons", "did you mean L25"),
        ({"remote": REMOTE.replace('["L25"]', '["L24"]')}, "remote.toml", 16, "module[2].lessons", "an earlier module"),
        ({"remote": REMOTE.replace('code = "B"', 'code = "A"')}, "remote.toml", 13, "module[2].code", "stands above"),
        ({"remote": REMOTE.replace('["B", ', "[")}, "remote.toml", 4, "path", "never comes to L25"),
        ({"remote": REMOTE.replace('["B", ', '["X", ')}, "remote.toml", 4, "path", "'X' isn't known here"),
        ({"remote": REMOTE.replace("about =", "abuot =", 1)}, "remote.toml", 3, "abuot", "did you mean about?"),
    ],
)  # fmt: skip
def test_a_broken_pack_is_refused_with_file_line_and_key(change, file, line, key, words):
    with pytest.raises(FileRefused, match=re.escape(words)) as error:
        shelf(**change)
    assert (error.value.file, error.value.line, error.value.key) == (file, line, key)
