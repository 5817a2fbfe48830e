"""What is shipped under fixtures/: read whole and refused before any row is written."""

from collections.abc import Iterator, Mapping
from functools import lru_cache
from pathlib import Path

from django.conf import settings

from courses.content.finder import FinderTable, read_finder
from courses.content.lesson import Known, Lesson, read_lesson
from courses.content.pack import PICTURES, Shelf, UnitPack, read_shelf, read_units
from courses.content.picture_list import ListedPicture, read_pictures
from courses.pictures.contrast import Contrast, read_contrast
from courses.trade.constants import Constants, read_constants
from courses.trade.panels import PanelKind, read_panels
from courses.trade.sources import Source, read_sources
from courses.trade.sums import SUMS
from courses.trade.surfaces import Catalogue, read_catalogue

FIXTURES = "fixtures"
DRAWINGS = Path(__file__).parent / "templates/courses/drawings"
"""Line drawings, each a template of its own."""
CONTRAST = "contrast.toml"
PANELS = "panels.toml"
MODEL = "model.toml"
TABLES = ("sources.toml", "defects.toml", "surfaces.toml", CONTRAST, PANELS, MODEL)
"""Tables of the trade that are no finders."""


def text_of(name: str) -> str:
    """Return the text of the shipped file `name`, such as `trade/sources.toml`."""
    return _folder(name).read_text(encoding="utf-8")


def texts_in(folder: str, ending: str) -> dict[str, str]:
    """Return name within `folder` to text of every shipped file there that ends so."""
    root = _folder(folder)
    found = sorted(root.rglob(f"*{ending}"))
    return {path.relative_to(root).as_posix(): path.read_text(encoding="utf-8") for path in found}


@lru_cache(maxsize=1)
def sources() -> Mapping[str, Source]:
    """Return every source by its key."""
    return read_sources(text_of("trade/sources.toml"), "fixtures/trade/sources.toml")


@lru_cache(maxsize=1)
def units() -> Mapping[str, UnitPack]:
    """Return the units of competency by code."""
    return read_units(text_of("competence/units.toml"), "fixtures/competence/units.toml")


@lru_cache(maxsize=1)
def finders() -> Mapping[str, FinderTable]:
    """Return every finder by its code."""
    return {table.code: table for table in _read_finders()}


@lru_cache(maxsize=1)
def pictures() -> Mapping[str, ListedPicture]:
    """Return every picture that lessons show by its code."""
    return read_pictures(text_of(f"courses/{PICTURES}"), f"fixtures/courses/{PICTURES}")


@lru_cache(maxsize=1)
def catalogue() -> Catalogue:
    """Return the kinds of defects, the substrates and the colours."""
    files = ("defects.toml", "surfaces.toml")
    defects, surfaces = ((text_of(f"trade/{name}"), f"fixtures/trade/{name}") for name in files)
    return read_catalogue(defects, surfaces, sources())


@lru_cache(maxsize=1)
def constants() -> Constants:
    """Return the constants of the surface model."""
    return read_constants(text_of(f"trade/{MODEL}"), f"fixtures/trade/{MODEL}", sources())


@lru_cache(maxsize=1)
def contrast() -> Contrast:
    """Return how well each kind of defect shows."""
    return read_contrast(text_of(f"trade/{CONTRAST}"), f"fixtures/trade/{CONTRAST}")


@lru_cache(maxsize=1)
def panels() -> Mapping[str, PanelKind]:
    """Return the kinds of panels to try a plan on, by code."""
    return read_panels(text_of(f"trade/{PANELS}"), f"fixtures/trade/{PANELS}", catalogue(), sources())


@lru_cache(maxsize=1)
def known() -> Known:
    """Return the names a lesson may use."""
    inputs = {name: tuple(one.name for one in entry.inputs) for name, entry in SUMS.items()}
    drawings = tuple(sorted(path.stem for path in DRAWINGS.glob("*.html")))
    return Known(sources=sources(), sums=inputs, finders=finders(), pictures=pictures(), drawings=drawings)


@lru_cache(maxsize=1)
def shelf() -> Shelf:
    """Return the lessons and courses."""
    return read_shelf({**texts_in("courses", ".toml"), **texts_in("courses", ".md")}, known(), units())


@lru_cache(maxsize=128)
def lesson_in(text: str, code: str) -> Lesson:
    """Return the lesson written in `text`; a text that stands in a row was read before, so this never refuses one."""
    return read_lesson(text, code, known())


def _read_finders() -> Iterator[FinderTable]:
    for name, text in texts_in("trade", ".toml").items():
        if name not in TABLES:
            yield read_finder(text, f"fixtures/trade/{name}", sources())


def _folder(name: str) -> Path:
    return Path(settings.BASE_DIR) / FIXTURES / name
