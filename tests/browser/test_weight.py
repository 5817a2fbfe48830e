"""What a page weighs on a cold cache, from a whole installation served by the command of the README."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Page

from courses.trade.sums import SUMS
from tests.browser.screens import PHONE, Screens
from tests.installation import Installation

pytestmark = pytest.mark.browser

MOST = 60_000
"""Bytes of one page as they travel, heads included, without pictures."""
PICTURES = (".webp", ".png", ".jpg", ".avif")
WHO = "tamsin@slackwater.example"
FIXED = [
    "/",
    "/lessons/",
    "/lessons/dew-point/",
    "/lessons/instruments-lie/",
    "/lessons/swirl-or-hologram/",
    "/lessons/look-alikes/",
    "/calculators/",
    *(f"/calculators/{name}/" for name in SUMS),
    "/scenarios/",
    "/scenarios/COA-01/",
    "/settings/",
    "/account/password/change/",
    "/nowhere/",
]


@pytest.fixture(scope="module")
def shop(tmp_path_factory) -> Iterator[Installation]:
    opened = Installation(tmp_path_factory.mktemp("shop") / "var")
    opened.serve()
    yield opened
    opened.end()


@pytest.fixture
def served(browser, shop):
    """Screens on the served site."""
    screens = Screens(browser, shop.url)
    screens.allow("status of 404", "status of 503")
    yield screens
    screens.close()
    assert screens.faults() == []


def weight(page: Page, path: str) -> dict[str, int]:
    """Return what travels for a page, address to bytes, heads included; nothing is in the cache before."""
    network = page.context.new_cdp_session(page)
    asked, ended = {}, {}
    network.on("Network.requestWillBeSent", lambda one: asked.update({one["requestId"]: one["request"]["url"]}))
    network.on("Network.loadingFinished", lambda one: ended.update({one["requestId"]: one["encodedDataLength"]}))
    network.send("Network.enable")
    network.send("Network.clearBrowserCache")
    page.goto(path, wait_until="networkidle")
    network.detach()
    return {url: ended.get(one, 0) for one, url in asked.items() if not url.endswith(PICTURES)}


def enter(page: Page, password: str) -> None:
    """Sign in by the form."""
    page.goto("/account/login/")
    page.fill("[name=login]", WHO)
    page.fill("[name=password]", password)
    with page.expect_navigation():
        page.locator("main [type=submit]").click()


def begun(page: Page) -> str:
    """Open an attempt; return its address."""
    page.goto("/scenarios/COA-01/")
    with page.expect_navigation():
        page.locator("button", has_text="Draw facts and begin").click()
    return page.url


def handed_in(page: Page) -> str:
    """Hand in the attempt on the page; return the address of its verdict."""
    with page.expect_navigation(url="**/verdict/"):
        page.locator("[data-hand-in] button").click()
    return page.url


def test_no_page_weighs_more_than_a_weak_signal_carries(shop: Installation, served: Screens):
    page = served.open(*PHONE)
    found = {path: weight(page, path) for path in ("/account/login/", "/account/password/reset/")}
    enter(page, shop.passwords[WHO])
    found |= {path: weight(page, path) for path in FIXED}
    found["attempt"] = weight(page, begun(page))
    found["verdict"] = weight(page, handed_in(page))
    heavy = {path: parts for path, parts in found.items() if sum(parts.values()) > MOST}
    assert heavy == {}
    assert all(any("/static/courses/site." in url for url in parts) for parts in found.values())
