"""What every test may ask for: a school with its shelves filled, people of each role, a clock of its own."""

import os
import shutil
from datetime import UTC, datetime

import hypothesis
import pytest
from django.conf import settings
from django.core.cache import cache
from django.test import TransactionTestCase

from courses.keys import make_keys
from tests.factories import CohortFactory, MembershipFactory, PersonFactory, SchoolFactory

pytest_plugins = ["tests.sittings"]
if not os.environ.get("CI"):
    # Nothing is timed in the suite. In CI hypothesis has a profile of its own that says the same.
    hypothesis.settings.register_profile("house", deadline=None)
    hypothesis.settings.load_profile("house")
CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
LEFT_OUT = []


def pytest_collection_modifyitems(config, items):
    """Leave browser tests out only where no browser is, and say how many; in CI that is an error."""
    if CHROMIUM and _driver_is_here():
        return
    browser = [item for item in items if item.get_closest_marker("browser")]
    if browser and os.environ.get("CI"):
        raise pytest.UsageError("CI needs a Chromium and the browser extra: no browser test may be left out.")
    config.hook.pytest_deselected(items=browser)
    LEFT_OUT.extend(browser)
    items[:] = [item for item in items if item not in browser]


def _driver_is_here() -> bool:
    try:
        import axe_playwright_python  # noqa: F401
        import playwright  # noqa: F401
    except ImportError:
        return False
    return True


def pytest_terminal_summary(terminalreporter):
    """Say loudly what was left out."""
    if LEFT_OUT:
        count = len(LEFT_OUT)
        terminalreporter.section("LEFT OUT", sep="!", red=True, bold=True)
        why = "no Chromium was found, or the extra 'browser' is missing"
        terminalreporter.write_line(f"{count} browser tests were NOT run: {why}.")


@pytest.fixture(scope="session", autouse=True)
def keys():
    """The keys of the tests' own folder: nothing enters the log without one."""
    make_keys(settings.VAR)


@pytest.fixture(scope="session", autouse=True)
def emptying():
    """Tests that commit empty the tables when they end: the guard is lifted for that moment, and for no other."""
    from assessments import append_only

    empty = TransactionTestCase._fixture_teardown

    def lift_and_empty(self):
        append_only.lift()
        try:
            empty(self)
        finally:
            append_only.guard()

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(TransactionTestCase, "_fixture_teardown", lift_and_empty)
        yield


@pytest.fixture
def unguarded(db):
    """A database whose guard against changes is lifted until the test is over."""
    from assessments import append_only

    append_only.lift()
    yield
    append_only.guard()


@pytest.fixture
def now():
    """A moment in the afternoon, the same in every test."""
    return datetime(2026, 4, 14, 14, 5, tzinfo=UTC)


@pytest.fixture
def school(db):
    """The school of this installation."""
    cache.clear()
    return SchoolFactory()


@pytest.fixture
def shelves(school):
    """The school with everything that is shipped on its shelves."""
    from assessments.management import shelves as stock

    stock.load(datetime(2026, 4, 1, tzinfo=UTC))
    return school


@pytest.fixture
def remote(shelves):
    """A remote cohort on the shipped course."""
    from courses.models import Course

    return CohortFactory(name="Lantern", course=Course.objects.get(code="remote"))


@pytest.fixture
def trainee(remote):
    """A trainee of the remote cohort, who reads metric units."""
    person = PersonFactory(email="trainee@test.example", name="Tara Trainee")
    return MembershipFactory(cohort=remote, person=person).person


@pytest.fixture
def other(remote):
    """Another trainee of the same cohort."""
    return MembershipFactory(cohort=remote, person=PersonFactory(email="other@test.example", name="Otto Other")).person


@pytest.fixture
def instructor(school):
    """An instructor."""
    person = PersonFactory(email="instructor@test.example")
    return MembershipFactory(cohort=None, role="instructor", person=person).person


@pytest.fixture
def outsider(school):
    """Somebody who signs in but belongs to no cohort."""
    return PersonFactory(email="outsider@test.example")


@pytest.fixture
def other_fixtures(settings, tmp_path):
    """Return a function that breaks one shipped file, in a copy that is read instead until the test is over."""
    from assessments import shipped as upper
    from courses import shipped as lower

    readers = [lower.sources, lower.units, lower.finders, lower.pictures, lower.catalogue, lower.contrast, lower.panels]
    readers += [lower.constants, lower.known, lower.shelf, upper.shop, upper.shared_book, upper.published, upper.marker]

    def forget():
        for reader in readers:
            reader.cache_clear()

    def break_file(name, old, new):
        shutil.copytree(settings.BASE_DIR / "fixtures", tmp_path / "fixtures")
        file = tmp_path / "fixtures" / name
        text = file.read_text(encoding="utf-8")
        assert old in text
        file.write_text(text.replace(old, new, 1), encoding="utf-8")
        settings.BASE_DIR = tmp_path
        forget()

    yield break_file
    forget()
