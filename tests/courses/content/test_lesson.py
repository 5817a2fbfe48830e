import re

import pytest

from courses.content.errors import FileRefused
from courses.content.lesson import Known, Lesson, read_lesson
from courses.content.parts import Calculator, Caution, Check, Drawing, Finder, Mistakes, Pictures, Text, Worked
from courses.content.picture_list import ListedPicture
from courses.content.prose import Prose, Quantity, render_text

LAMP = ((0.5, 0.42),)
PICTURES = {
    code: ListedPicture(code, {"colour": "navy"}, "point", lamps, "Rings.", "Swirls.", 1)
    for code, lamps in (("swirl", LAMP), ("hologram", LAMP), ("fog", LAMP), ("chip", LAMP), ("strip", (*LAMP, (0, 0))))
}
KNOWN = Known(
    sources=("iso-8502-4", "practice"),
    sums={"dew_point": ("air_degc", "air_rh"), "dew_margin": ("air_degc", "air_rh", "surface_degc")},
    finders=("which_reading",),
    pictures=PICTURES,
    drawings=("four_skins",),
)
HEAD = '+++\ncode = "L24"\nversion = 2\noutcomes = ["read a day", "refuse it"]\n+++\n'
CHECK = ":::check\nDry?\n- [ ] Guess :: No.\n- [x] Touch it :: Yes.\n:::\n"
WHOLE = f"""{HEAD}
Some *text*.[^iso-8502-4]

{{{{ calculator dew_margin air_degc=18 air_rh=65 }}}}
More text.

{{{{ finder which_reading }}}}

{{{{ picture swirl hologram }}}}
{{{{ drawing four_skins }}}}

:::worked Worked example: a hull
1. At {{13.0 degc}}.
:::

:::mistakes
- One spot.
:::

:::caution No fuel heater
It burns.
:::

{CHECK}"""


def read(text: str) -> Lesson:
    return read_lesson(text, "L24.md", KNOWN)


def plain(prose: Prose) -> str:
    return re.sub(r"<[^>]+>", "", render_text(prose, lambda value, unit, decimals: f"{value} {unit}")).strip()


def test_a_lesson_is_its_parts_in_order():
    lesson = read(WHOLE)
    assert (lesson.code, lesson.version, lesson.outcomes) == ("L24", 2, ("read a day", "refuse it"))
    kinds = [Text, Calculator, Text, Finder, Pictures, Drawing, Worked, Mistakes, Caution, Check]
    assert [type(part) for part in lesson.parts] == kinds
    assert [part.kind for part in lesson.parts] == [kind.__name__.lower() for kind in kinds]
    assert lesson.sources == ("iso-8502-4",)


def test_each_part_carries_what_its_template_needs():
    _, calculator, _, finder, pictures, drawing, worked, mistakes, caution, check = read(WHOLE).parts
    assert calculator == Calculator("dew_margin", (("air_degc", "18"), ("air_rh", "65")))
    assert finder == Finder("which_reading")
    assert (pictures, drawing) == (Pictures(("swirl", "hologram")), Drawing("four_skins"))
    assert (worked.title, plain(worked.prose)) == ("Worked example: a hull", "At 13.0 degc.")
    assert worked.prose.quantities == (Quantity(13.0, "degc", 1),)
    assert (mistakes.title, caution.title) == ("Mistakes made here", "No fuel heater")
    assert [(o.id, plain(o.text), o.right, plain(o.why)) for o in check.options] == [
        ("a", "Guess", False, "No."),
        ("b", "Touch it", True, "Yes."),
    ]


def test_questions_are_counted_and_an_option_may_run_over_lines():
    second = ":::check\nAnd now?\n\n- [x] Touch\n  it :: Yes,\n  always.\n\n- [ ] Guess :: No.\n:::\n"
    checks = read(f"{HEAD}a[^practice]\n{CHECK}{second}").checks
    assert [check.id for check in checks] == ["c1", "c2"]
    assert (plain(checks[1].right.text), plain(checks[1].right.why)) == ("Touch it", "Yes, always.")


def test_sources_named_in_boxes_and_reasons_are_numbered_too():
    lesson = read(
        f"{HEAD}:::caution\nHot.[^practice]\n:::\n"
        ":::check\nDry?[^iso-8502-4]\n- [x] a :: b[^practice]\n- [ ] c :: d\n:::"
    )
    assert lesson.sources == ("practice", "iso-8502-4")


@pytest.mark.parametrize(
    ("text", "line", "key", "words"),
    [
        ("no front matter", 1, "+++", "begins with TOML between two lines of +++"),
        ("a\n+++\n+++\n", 1, "+++", "begins with TOML"),
        (HEAD.replace("version", "versoin"), 3, "versoin", "did you mean version?"),
        (HEAD.replace("= 2", '= "2"') + f"a[^practice]\n{CHECK}", 3, "version", "is not a whole number"),
        (HEAD.replace("version = 2\n", "") + f"a[^practice]\n{CHECK}", 2, "version", "this is missing"),
        (HEAD + f"\n\nTwo[^practise]\n{CHECK}", 8, "text", "did you mean practice?"),
        (HEAD + "{{ calculator dew_pont }}", 6, "calculator", "did you mean dew_point"),
        (HEAD + "{{ calculator dew_point air_degf=3 }}", 6, "input", "did you mean air_degc"),
        (HEAD + "a\n{{ finder wich_reading }}", 7, "finder", "did you mean which_reading?"),
        (HEAD + "{{ piture swirl }}", 6, "{{", "write {{ calculator dew_margin"),
        (HEAD + "a\n\n{{ picture swril }}", 8, "picture", "did you mean swirl or strip?"),
        (HEAD + "{{ picture swirl holograms }}", 6, "picture", "did you mean hologram?"),
        (HEAD + "{{ picture swirl strip }}", 6, "picture", "their lamps are not the same"),
        (HEAD + "{{ picture swirl swirl }}", 6, "picture", "name each once"),
        (HEAD + "{{ picture swirl hologram fog chip }}", 6, "picture", "name one to three pictures"),
        (HEAD + "{{ drawing four_skin }}", 6, "drawing", "did you mean four_skins?"),
        (HEAD + "{{ picture swirl lamp=3 }}", 6, "{{", "is not known"),
        (HEAD + "{{ picture }}", 6, "{{", "is not known"),
        (HEAD + "{{ calculator }}", 6, "{{", "is not known"),
        (HEAD + ":::cautoin\n:::", 6, ":::cautoin", "did you mean caution?"),
        (HEAD + ":::", 6, ":::", "no block ':::'"),
        (HEAD + "a\n:::caution\nHot.", 7, "caution", "never closed"),
        (HEAD + ":::caution\n\n:::", 7, "caution", "this block is empty"),
        (HEAD + ":::caution\n\n# Hot\n:::", 8, "caution", "begin headings with ##"),
        (HEAD + ":::check\n- [x] a :: b\n- [ ] c :: d\n:::", 7, "check", "this check asks nothing"),
        (HEAD + ":::check\nDry?\n:::", 7, "check", "0 options stand here; give two to five"),
        (HEAD + ":::check\nDry?\n- [x] a :: b\n:::", 7, "check", "1 options stand here"),
        (HEAD + ":::check\nDry?\n" + "- [ ] a :: b\n" * 6 + ":::", 7, "check", "6 options stand here"),
        (HEAD + ":::check\nDry?\n- [ ] a :: b\n- [ ] c :: d\n:::", 7, "check", "0 options are marked [x]"),
        (HEAD + ":::check\nDry?\n- [x] a :: b\n- [x] c :: d\n:::", 7, "check", "2 options are marked [x]"),
        (HEAD + ":::check\nDry?\n- [x] a :: b\n- [ ] c\n:::", 9, "option", "write '- [x] the answer :: the reason'"),
        (HEAD + ":::check\nDry?\n- [x] :: b\n- [ ] c :: d\n:::", 8, "option", "is no option"),
        (HEAD + ":::check\nDry?\n- [x] a :: b\nc :: d\n:::", 9, "option", "is no option"),
        (HEAD + "Nothing asked.[^practice]", 6, "check", "this lesson asks nothing"),
        (HEAD + f"No source.\n{CHECK}", 6, "sources", "this lesson names no source"),
    ],
)
def test_a_broken_lesson_is_refused_with_file_line_and_key(text, line, key, words):
    with pytest.raises(FileRefused, match=re.escape(words)) as error:
        read(text)
    assert (error.value.file, error.value.line, error.value.key) == ("L24.md", line, key)
