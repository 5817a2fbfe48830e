"""A real Chromium: one for the whole run, and pages that remember everything that went wrong in them."""

import pytest
from django.test import Client
from playwright.sync_api import expect, sync_playwright

from tests.browser.answering import opened
from tests.browser.screens import SLOW, Screens
from tests.conftest import CHROMIUM

QUIET = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


@pytest.fixture(scope="session")
def browser():
    """The one browser; on a busy machine a test waits for what it expects, and fails no sooner."""
    expect.set_options(timeout=SLOW)
    with sync_playwright() as driver:
        chromium = driver.chromium.launch(executable_path=CHROMIUM, args=QUIET)
        yield chromium
        chromium.close()


@pytest.fixture
def site(live_server, shelves):
    """The address of the running site, its shelves filled."""
    return live_server.url


@pytest.fixture
def screens(browser, site):
    """Screens to look at the site with; what went wrong in any of them fails the test, unless it said so before."""
    shown = Screens(browser, site)
    yield shown
    shown.close()
    assert shown.faults() == []


@pytest.fixture
def open_page(screens):
    """Open a page of a width, a height, a lighting of the device, with script or without."""
    return screens.open


@pytest.fixture
def sign_in(site):
    """Sign a person in on a page, by the cookie alone."""

    def enter(page, person):
        client = Client()
        client.force_login(person)
        cookie = client.cookies["sessionid"]
        page.context.add_cookies([{"name": "sessionid", "value": cookie.value, "url": site}])
        return page

    return enter


@pytest.fixture
def begin(screens, trainee):
    """Return a function that opens an attempt; a picture may be left before it is made, or asked for again."""
    screens.allow("status of 503", "webp net::ERR_ABORTED")
    return lambda code, seed=11: opened(trainee, code=code, seed=seed)


@pytest.fixture
def paper(open_page, sign_in, trainee):
    """Return a function that opens the page of an attempt on a screen of a size, with script or without."""

    def shown(attempt, size, *, script=True):
        page = sign_in(open_page(*size, script=script), trainee)
        page.goto(f"/attempts/{attempt.pk}/")
        return page

    return shown
