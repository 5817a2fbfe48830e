"""The shipped constants of the surface model, for tests that work panels."""

from functools import lru_cache
from pathlib import Path

from courses.trade.constants import Constants, read_constants
from courses.trade.sources import read_sources

FIXTURES = Path(__file__).parents[3] / "fixtures" / "trade"
TEXT = (FIXTURES / "model.toml").read_text(encoding="utf-8")
SOURCES = read_sources((FIXTURES / "sources.toml").read_text(encoding="utf-8"), "sources.toml")


@lru_cache(maxsize=1)
def constants() -> Constants:
    """Return the constants that are shipped."""
    return read_constants(TEXT, "model.toml", SOURCES)
