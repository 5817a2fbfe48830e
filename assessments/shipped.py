"""The scenarios and rule books that are shipped under fixtures/, read whole and held against each other."""

from collections.abc import Mapping
from functools import lru_cache

from assessments.marking import Marker
from assessments.rules import RuleBook, read_book, read_shared
from assessments.scenarios.errors import UnknownScenario
from assessments.scenarios.reader import read_scenario
from assessments.scenarios.spec import Scenario
from courses.shipped import sources, text_of, texts_in
from courses.trade.errors import offer


@lru_cache(maxsize=1)
def scenarios() -> Mapping[str, Scenario]:
    """Return every published version by code and version, such as `COA-01@1`, oldest first."""
    read = [read_scenario(text, f"fixtures/scenarios/{name}") for name, text in texts_in("scenarios", ".toml").items()]
    return {one.ref: one for one in sorted(read, key=lambda one: (one.code, one.version))}


@lru_cache(maxsize=1)
def books() -> Mapping[str, RuleBook]:
    """Return every rule book by the code and version of the scenario it marks."""
    shared = read_shared(text_of("rulebooks/shared.toml"), "fixtures/rulebooks/shared.toml", sources())
    texts = {name: text for name, text in texts_in("rulebooks", ".toml").items() if name != "shared.toml"}
    read = [read_book(text, f"fixtures/rulebooks/{name}", shared, sources()) for name, text in texts.items()]
    return {f"{book.code}@{book.version}": book for book in read}


def scenario(ref: str) -> Scenario:
    """Return the scenario of a code, its newest version, or of a code with a version."""
    versions = [one for one in scenarios().values() if one.code == ref]
    if versions:
        return versions[-1]
    if ref in scenarios():
        return scenarios()[ref]
    known = {one.code for one in scenarios().values()} | set(scenarios())
    raise UnknownScenario(f"No scenario is called {ref!r}; {offer(ref, sorted(known))}")


@lru_cache(maxsize=128)
def marker(ref: str) -> Marker:
    """Return what marks a version, every rule checked against it."""
    one = scenario(ref)
    if one.ref not in books():
        raise UnknownScenario(f"No rule book marks {one.ref}; {offer(one.ref, books())}")
    return Marker.of(one, books()[one.ref])
