"""What a page weighs on a cold cache, from a whole installation served by the command of the README."""

import json
import os
import signal
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page

from courses.trade.sums import SUMS
from tests.browser.screens import PHONE, Screens

pytestmark = pytest.mark.browser

ROOT = Path(__file__).resolve().parents[2]
MOST = 60_000
"""Bytes of one page as they travel, heads included, without pictures."""
PICTURES = (".webp", ".png", ".jpg", ".avif")
WHO = "tamsin@slackwater.example"
FIXED = [
    "/",
    "/lessons/",
    "/lessons/dew-point/",
    "/lessons/instruments-lie/",
    "/calculators/",
    *(f"/calculators/{name}/" for name in SUMS),
    "/scenarios/",
    "/scenarios/COA-01/",
    "/settings/",
    "/account/password/change/",
    "/nowhere/",
]


class Shop:
    """An installation in a folder of its own, and its people."""

    def __init__(self, var: Path) -> None:
        self.env = {**os.environ, "RAKING_VAR": str(var), "DJANGO_SETTINGS_MODULE": "courses.server.settings"}
        self.env.pop("RAKING_SECRET_KEY", None)
        with socket.socket() as probe:
            probe.bind(("127.0.0.1", 0))
            self.port = probe.getsockname()[1]
        self.url = f"http://localhost:{self.port}"
        subprocess.run(self.line("setup"), cwd=ROOT, env=self.env, check=True, capture_output=True)
        self.password = json.loads((var / "demo-passwords.json").read_text())[WHO]

    def line(self, *words: str) -> list[str]:
        return [sys.executable, "manage.py", *words]

    def serve(self) -> subprocess.Popen:
        """Start the server, in a process group of its own; return when it answers."""
        line = self.line("serve", "--port", str(self.port))
        quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL}
        server = subprocess.Popen(line, cwd=ROOT, env=self.env, start_new_session=True, **quiet)
        for _wait in range(600):
            try:
                urllib.request.urlopen(f"{self.url}/account/login/", timeout=5).close()
                return server
            except OSError:
                time.sleep(0.05)
        raise AssertionError("The server did not come up within half a minute.")


@pytest.fixture(scope="module")
def shop(tmp_path_factory) -> Iterator[Shop]:
    opened = Shop(tmp_path_factory.mktemp("shop") / "var")
    server = opened.serve()
    yield opened
    os.killpg(server.pid, signal.SIGTERM)
    server.wait(timeout=20)


@pytest.fixture
def served(browser, shop):
    """Screens on the served site."""
    screens = Screens(browser, shop.url)
    screens.allow("status of 404")
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


def test_no_page_weighs_more_than_a_weak_signal_carries(shop: Shop, served: Screens):
    page = served.open(*PHONE)
    found = {path: weight(page, path) for path in ("/account/login/", "/account/password/reset/")}
    enter(page, shop.password)
    found |= {path: weight(page, path) for path in FIXED}
    found["attempt"] = weight(page, begun(page))
    found["verdict"] = weight(page, handed_in(page))
    heavy = {path: parts for path, parts in found.items() if sum(parts.values()) > MOST}
    assert heavy == {}
    assert all(any("/static/courses/site." in url for url in parts) for parts in found.values())
