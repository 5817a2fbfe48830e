"""A real Chromium: one for the whole run, and pages that remember everything that went wrong in them."""

import pytest
from django.test import Client
from playwright.sync_api import expect, sync_playwright

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
    opened = Screens(browser, site)
    yield opened
    opened.close()
    assert opened.faults() == []


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
