"""The shipped lessons as a reader meets them, for tests that hold them against the trade's own arithmetic."""

import re
from functools import cache
from pathlib import Path

from courses.content.finder import read_finder
from courses.content.lesson import Known
from courses.content.pack import PICTURES, Shelf, UnitPack, read_shelf, read_units
from courses.content.parts import Check, Part
from courses.content.picture_list import read_pictures
from courses.content.prose import Prose, render_text, shown_for
from courses.pictures import Scene
from courses.trade.sources import read_sources
from courses.trade.sums import SUMS
from courses.trade.surfaces import read_catalogue
from courses.trade.units import Preferences

FIXTURES = Path(__file__).parents[3] / "fixtures"
SOURCES = read_sources((FIXTURES / "trade/sources.toml").read_text(), "sources.toml")
METRIC, US = shown_for(Preferences.metric()), shown_for(Preferences.us())
TEXTS = {
    path.relative_to(FIXTURES / "courses").as_posix(): path.read_text()
    for path in (FIXTURES / "courses").rglob("*")
    if path.is_file()
}
LISTED = read_pictures(TEXTS[PICTURES], PICTURES)
FINDERS = {
    path.stem: read_finder(path.read_text(), path.name, SOURCES)
    for path in sorted((FIXTURES / "trade").glob("*.toml"))
    if "[[choice]]" in path.read_text()
}
DRAWN = sorted(path.stem for path in (FIXTURES.parent / "courses/templates/courses/drawings").glob("*.html"))
SMALL = [480, 320]
TRADE = read_catalogue(
    *((((FIXTURES / f"trade/{name}.toml").read_text()), f"{name}.toml") for name in ("defects", "surfaces")), SOURCES
)


@cache
def whole_units() -> dict[str, UnitPack]:
    return dict(read_units((FIXTURES / "competence/units.toml").read_text(), "units.toml"))


@cache
def whole_shelf() -> Shelf:
    sums = {name: tuple(entry.name for entry in each.inputs) for name, each in SUMS.items()}
    known = Known(tuple(SOURCES), sums, tuple(FINDERS), LISTED, DRAWN)
    return read_shelf(TEXTS, known, whole_units())


def panel_of(code: str) -> Scene:
    """The panel of a picture that lessons show, at a quarter of its pixels."""
    return Scene.of({**LISTED[code].scene, "size": SMALL}, TRADE)


def proses(part: Part) -> list[Prose]:
    if isinstance(part, Check):
        return [part.question, *(prose for option in part.options for prose in (option.text, option.why))]
    return [part.prose] if hasattr(part, "prose") else []


def words(code: str, show=METRIC) -> str:
    """Everything a reader of this lesson sees as text, without the marks of sources."""
    html = " ".join(render_text(prose, show) for part in whole_shelf().lessons[code].parts for prose in proses(part))
    return re.sub(r"<sup>.*?</sup>", "", html).replace("&nbsp;", " ").replace("\u00a0", " ")


def plain(code: str, show=METRIC) -> str:
    bare = re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", words(code, show)))
    return bare.replace(" ,", ",").replace(" .", ".").replace(" :", ":").replace(" ;", ";")


def told(code: str) -> set[tuple[float, str]]:
    lesson = whole_shelf().lessons[code]
    return {(q.value, q.unit) for part in lesson.parts for prose in proses(part) for q in prose.quantities}
