"""Pages of a real browser that record what a trainee would never see: console, failed requests, other hosts."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from urllib.parse import urlsplit

from playwright.sync_api import Browser, BrowserContext, Page, Request

PHONE = (360, 740)
DESK = (1280, 800)
SLOW = 30_000
"""Milliseconds a page may take before a test gives up: long, since other work may run beside it."""


@dataclass
class Screens:
    """The pages one test opened, and what went wrong in them."""

    browser: Browser
    site: str
    allowed: list[str] = field(default_factory=list)
    contexts: list[BrowserContext] = field(default_factory=list)
    said: list[str] = field(default_factory=list)

    def open(
        self, width: int = 1280, height: int = 800, *, theme: str = "light", script: bool = True, touch: bool = False
    ) -> Page:
        """Return a new page in a context of its own; `theme` is what the device asks for, `touch` how it is used."""
        context = self.browser.new_context(
            viewport={"width": width, "height": height},
            color_scheme="dark" if theme == "dark" else "light",
            java_script_enabled=script,
            has_touch=touch,
            base_url=self.site,
        )
        context.set_default_timeout(SLOW)
        self.contexts.append(context)
        context.on("page", self._watch)
        return context.new_page()

    def allow(self, *words: str) -> None:
        """Expect what holds one of these words; it is no fault in this test."""
        self.allowed.extend(words)

    def faults(self) -> list[str]:
        """Return everything that went wrong and was not expected."""
        return [one for one in self.said if not any(words in one for words in self.allowed)]

    def close(self) -> None:
        """Close every page."""
        for context in self.contexts:
            context.close()

    def _watch(self, page: Page) -> None:
        page.on("console", lambda one: self.said.append(f"console {one.type}: {one.text} ({one.location['url']})"))
        page.on("pageerror", lambda one: self.said.append(f"script: {one}"))
        page.on("requestfailed", lambda one: self.said.extend(self._failed(one)))
        page.on("request", lambda one: self.said.extend(self._foreign(one.url)))

    def _failed(self, request: Request) -> Iterator[str]:
        """Yield a request that failed; the icon of a page that is left early is taken back by the browser itself."""
        if not (request.url.endswith("/favicon.svg") and request.failure == "net::ERR_ABORTED"):
            yield f"failed: {request.method} {request.url} {request.failure}"

    def _foreign(self, url: str) -> Iterator[str]:
        parts = urlsplit(url)
        if parts.scheme not in ("data", "blob") and parts.netloc != urlsplit(self.site).netloc:
            yield f"another host: {url}"
