"""The shipped catalogue, for tests that read scenes."""

from functools import lru_cache
from pathlib import Path

from courses.trade.sources import read_sources
from courses.trade.surfaces import Catalogue, read_catalogue

FIXTURES = Path(__file__).parents[3] / "fixtures" / "trade"


@lru_cache(maxsize=1)
def catalogue() -> Catalogue:
    """Return the kinds, substrates and colours that are shipped."""
    texts = {
        name: (FIXTURES / f"{name}.toml").read_text(encoding="utf-8") for name in ("defects", "surfaces", "sources")
    }
    sources = read_sources(texts["sources"], "sources.toml")
    return read_catalogue((texts["defects"], "defects.toml"), (texts["surfaces"], "surfaces.toml"), sources)
