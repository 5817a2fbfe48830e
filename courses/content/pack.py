"""Course packs: the catalogue of lessons, the courses that put them in order, and the lessons that are written.

``lessons.toml`` lists every lesson that will be taught, with ``text`` naming its file once it is written;
each other ``*.toml`` but ``pictures.toml`` is one course of modules; ``lessons/*.md`` are the lessons.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from courses.content.errors import FileRefused
from courses.content.lesson import Known, Lesson, read_lesson
from courses.content.parts import Check, Part
from courses.content.tables import Table, read_table

CATALOGUE = "lessons.toml"
PICTURES = "pictures.toml"


@dataclass(frozen=True, slots=True)
class UnitPack:
    """A unit of competency: code, title, its purpose, and its elements as (code, title) in order."""

    code: str
    title: str
    about: str
    elements: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class LessonPack:
    """A lesson of the catalogue. While it is not ``taught``, version is 0 and everything written is empty."""

    code: str
    slug: str
    title: str
    minutes: int
    elements: tuple[str, ...]
    version: int = 0
    outcomes: tuple[str, ...] = ()
    parts: tuple[Part, ...] = ()
    sources: tuple[str, ...] = ()
    file: str = ""
    text: str = ""

    @property
    def taught(self) -> bool:
        """Whether the lesson is written, and so can be opened."""
        return bool(self.file)

    @property
    def checks(self) -> tuple[Check, ...]:
        """The check questions in order."""
        return tuple(part for part in self.parts if isinstance(part, Check))


@dataclass(frozen=True, slots=True)
class ModulePack:
    """A module of a course: code, title, the unit it belongs to (empty if it mixes several), its lessons in order."""

    code: str
    title: str
    unit: str
    lessons: tuple[LessonPack, ...]
    about: str = ""


@dataclass(frozen=True, slots=True)
class CoursePack:
    """A course: code, title, what it is, its modules in order, and every lesson once in the order of reading."""

    code: str
    title: str
    about: str
    modules: tuple[ModulePack, ...]
    path: tuple[LessonPack, ...]

    def after(self, code: str) -> LessonPack | None:
        """The next lesson on the path after the lesson ``code`` that is taught, or nothing."""
        codes = [lesson.code for lesson in self.path]
        later = self.path[codes.index(code) + 1 :] if code in codes else ()
        return next((lesson for lesson in later if lesson.taught), None)


@dataclass(frozen=True, slots=True)
class Shelf:
    """All that is shipped: lessons by code in the order of the catalogue, courses by code."""

    lessons: Mapping[str, LessonPack]
    courses: Mapping[str, CoursePack]


def read_units(text: str, file: str) -> Mapping[str, UnitPack]:
    """The units of competency with their elements, by code, in the order of the file.

    >>> text = '''[[unit]]
    ... code = "INS"
    ... title = "Inspect"
    ... about = "Say what is wrong."
    ... elements = [{ code = "INS1", title = "Prepare" }]'''
    >>> read_units(text, "units.toml")["INS"].elements
    (('INS1', 'Prepare'),)
    """
    units: dict[str, UnitPack] = {}
    seen: set[str] = set()
    for entry in read_table(text, file).only("unit").some("unit"):
        entry.only("code", "title", "about", "elements")
        code = entry.new("code", units)
        elements = []
        for element in entry.some("elements"):
            element.only("code", "title")
            elements.append((element.new("code", seen), element.text("title")))
            seen.add(elements[-1][0])
        units[code] = UnitPack(code, entry.text("title"), entry.text("about"), tuple(elements))
    return units


def read_shelf(texts: Mapping[str, str], known: Known, units: Mapping[str, UnitPack]) -> Shelf:
    """Every pack in ``texts`` (file name under fixtures/courses to its text); raises `FileRefused` at a fault."""
    if CATALOGUE not in texts:
        raise FileRefused(CATALOGUE, 1, "lesson", "this file is missing; it lists every lesson, taught or not.")
    lessons = _read_catalogue(texts, known, units)
    courses: dict[str, CoursePack] = {}
    for file in sorted(name for name in texts if name.endswith(".toml") and name not in (CATALOGUE, PICTURES)):
        top = read_table(texts[file], file)
        top.new("code", courses)
        course = _read_course(top, lessons, units)
        courses[course.code] = course
    return Shelf(lessons, courses)


def read_course(text: str, file: str, lessons: Mapping[str, LessonPack], units: Mapping[str, UnitPack]) -> CoursePack:
    """The course written in ``text``, its lessons taken from the catalogue ``lessons``."""
    return _read_course(read_table(text, file), lessons, units)


def _read_course(top: Table, lessons: Mapping[str, LessonPack], units: Mapping[str, UnitPack]) -> CoursePack:
    top.only("code", "title", "about", "path", "module")
    modules: dict[str, ModulePack] = {}
    placed: set[str] = set()
    for entry in top.some("module"):
        entry.only("code", "title", "unit", "about", "lessons")
        unit = entry.one_of("unit", units, default="")
        code = entry.new("code", modules)
        for lesson in entry.some_of("lessons", lessons):
            if lesson in placed:
                raise entry.refuse("lessons", f"{lesson} stands in an earlier module too; a course has it once.")
            placed.add(lesson)
        chosen = tuple(lessons[lesson] for lesson in entry.texts("lessons"))
        modules[code] = ModulePack(code, entry.text("title"), unit, chosen, entry.text("about", default=""))
    path = _path(top, modules, lessons)
    return CoursePack(top.text("code"), top.text("title"), top.text("about"), tuple(modules.values()), path)


def _path(top: Table, modules: Mapping[str, ModulePack], lessons: Mapping[str, LessonPack]) -> tuple[LessonPack, ...]:
    """The order of reading: the codes of modules and lessons under ``path``, or the modules as they stand."""
    placed = {lesson.code for module in modules.values() for lesson in module.lessons}
    order: dict[str, None] = {}
    for code in top.some_of("path", (*modules, *sorted(placed)), default=tuple(modules)):
        found = (lesson.code for lesson in modules[code].lessons) if code in modules else (code,)
        order.update(dict.fromkeys(found))
    if missing := sorted(placed - set(order)):
        raise top.refuse("path", f"the path never comes to {', '.join(missing)}; add the lesson or its module.")
    return tuple(lessons[code] for code in order)


def _read_catalogue(texts: Mapping[str, str], known: Known, units: Mapping[str, UnitPack]) -> Mapping[str, LessonPack]:
    elements = [code for unit in units.values() for code, _ in unit.elements]
    lessons: dict[str, LessonPack] = {}
    slugs: set[str] = set()
    named: set[str] = set()
    for entry in read_table(texts[CATALOGUE], CATALOGUE).only("lesson").some("lesson"):
        entry.only("code", "slug", "title", "minutes", "elements", "text")
        code = entry.new("code", lessons)
        slugs.add(entry.new("slug", slugs))
        pack = LessonPack(
            code,
            entry.text("slug"),
            entry.text("title"),
            entry.whole("minutes", 1, 120),
            entry.some_of("elements", elements),
        )
        named.add(entry.text("text", default=""))
        lessons[code] = _written(entry, pack, texts, known) if entry.has("text") else pack
    for file in sorted(name for name in texts if name.endswith(".md") and name not in named):
        raise FileRefused(
            file, 1, "text", f'no lesson names this file; add text = "{file}" to its entry in {CATALOGUE}.'
        )
    return lessons


def _written(entry: Table, pack: LessonPack, texts: Mapping[str, str], known: Known) -> LessonPack:
    file = entry.one_of("text", sorted(name for name in texts if name.endswith(".md")))
    lesson: Lesson = read_lesson(texts[file], file, known)
    if lesson.code != pack.code:
        raise FileRefused(
            file, 2, "code", f"this says {lesson.code}, the catalogue says {pack.code}; they are one lesson."
        )
    return LessonPack(
        pack.code,
        pack.slug,
        pack.title,
        pack.minutes,
        pack.elements,
        version=lesson.version,
        outcomes=lesson.outcomes,
        parts=lesson.parts,
        sources=lesson.sources,
        file=file,
        text=texts[file],
    )
