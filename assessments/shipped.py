"""The scenarios, rule books and units shipped under fixtures/, read whole and held against each other."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from assessments.competence import Framework, read_framework
from assessments.marking import Marker
from assessments.marking.trade import FUNCTIONS
from assessments.rules import RuleBook, SharedBook, read_book, read_names, read_shared, refuse_shared
from assessments.scenarios.errors import UnknownScenario
from assessments.scenarios.read_exemplars import read_exemplars
from assessments.scenarios.reader import read_scenario
from assessments.scenarios.shown import Shop
from assessments.scenarios.spec import Scenario
from courses.shipped import catalogue, constants, contrast, sources, text_of, texts_in
from courses.trade.errors import offer

SHARED = "rulebooks/shared.toml"
NAMES = "rulebooks/names.toml"


@dataclass(frozen=True, slots=True)
class Published:
    """A published version as it stands on disk: the scenario, the rule books that mark it, oldest first, and texts."""

    scenario: Scenario
    text: str
    books: tuple[tuple[RuleBook, str], ...]
    shared: str

    @property
    def book(self) -> RuleBook:
        """Return the newest of its rule books."""
        return self.books[-1][0]

    @property
    def book_text(self) -> str:
        """Return the text of the newest of its rule books."""
        return self.books[-1][1]


@lru_cache(maxsize=1)
def shop() -> Shop:
    """Return what is known of panels: defects, surfaces, how well each shows, how a plan is worked."""
    return Shop(catalogue(), contrast(), constants())


@lru_cache(maxsize=1)
def published() -> Mapping[str, Published]:
    """Return every published version by code and version, such as `COA-01@1`, oldest first."""
    files = _texts("scenarios").items()
    read = [(read_scenario(text, f"fixtures/scenarios/{name}", shop()), text) for name, text in files]
    books, shared = _books(), text_of(SHARED)
    found = {}
    for one, text in sorted(read, key=lambda pair: (pair[0].code, pair[0].version)):
        if one.ref not in books:
            raise UnknownScenario(f"No rule book marks {one.ref}; {offer(one.ref, books)}")
        found[one.ref] = Published(one, text, tuple(books[one.ref]), shared)
    return found


def scenarios() -> Mapping[str, Scenario]:
    """Return every published scenario by code and version, oldest first."""
    return {ref: one.scenario for ref, one in published().items()}


def scenario(ref: str) -> Scenario:
    """Return the scenario of a code, its newest version, or of a code with a version."""
    known = published()
    versions = [one.scenario for one in known.values() if one.scenario.code == ref]
    if versions:
        return versions[-1]
    if ref in known:
        return known[ref].scenario
    names = {one.scenario.code for one in known.values()} | set(known)
    raise UnknownScenario(f"No scenario is called {ref!r}; {offer(ref, sorted(names))}")


@lru_cache(maxsize=128)
def marker(ref: str) -> Marker:
    """Return what marks a version, every rule checked against it."""
    one = published()[scenario(ref).ref]
    return Marker.of(one.scenario, one.book, read_exemplars(one.book_text, one.book.file, one.scenario.tasks))


@lru_cache(maxsize=1)
def shared_book() -> SharedBook:
    """Return the rules books may refer to, each checked against the names that all scenarios have in common."""
    shared = read_shared(text_of(SHARED), f"fixtures/{SHARED}", sources())
    refuse_shared(shared, read_names(text_of(NAMES), f"fixtures/{NAMES}"), FUNCTIONS)
    return shared


@lru_cache(maxsize=1)
def framework() -> Framework:
    """Return the units of competency with all that their elements look for and ask as evidence."""
    return read_framework(_texts("competence"), "fixtures/competence/")


def _texts(folder: str) -> Mapping[str, str]:
    return texts_in(folder, ".toml")


def _books() -> Mapping[str, list[tuple[RuleBook, str]]]:
    """Return the rule books by the scenario version they mark, oldest first."""
    read: dict[str, list[tuple[RuleBook, str]]] = {}
    for name, text in _texts("rulebooks").items():
        if f"rulebooks/{name}" not in (SHARED, NAMES):
            book = read_book(text, f"fixtures/rulebooks/{name}", shared_book(), sources())
            read.setdefault(book.marks, []).append((book, text))
    return {ref: sorted(books, key=lambda pair: pair[0].version) for ref, books in read.items()}
