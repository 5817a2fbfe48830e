"""How a page is reached, lit and looked at: by anybody, in three lightings, at three widths."""

from collections.abc import Callable
from dataclasses import dataclass

from django.contrib.sessions.backends.db import SessionStore
from django.urls import reverse
from playwright.sync_api import Page

from courses.models import Person
from tests.browser.looking import amber, axe_faults, inline, low, open_folds, wide

THEMES = ("light", "dark", "sunlight")
AMBER_MOST = 2
WIDTHS = (1280, 360, 320)
FULL = (1280, 360)
"""Widths at which everything is looked at; at the narrowest one it is the sideways scroll alone."""


@dataclass
class Stage:
    """A page, who looks at it, and how it is lit."""

    page: Page
    site: str
    person: Person | None = None

    def light(self, theme: str) -> None:
        """Light the screen the way the server does: by the person's choice, or by the visitor's."""
        self.page.emulate_media(color_scheme="dark" if theme == "dark" else "light")
        if self.person:
            Person.objects.filter(pk=self.person.pk).update(theme=theme)
            return
        session = SessionStore()
        session["theme"] = theme
        session.create()
        self.page.context.add_cookies([{"name": "sessionid", "value": session.session_key, "url": self.site}])

    def go(self, name: str, *args: object, query: str = "") -> None:
        """Go to a page by the name of its address."""
        self.page.goto(reverse(name, args=args) + query)


Reach = Callable[[Stage], None]


def at(name: str, *args: object, query: str = "") -> Reach:
    """Return how a page is reached by its address alone."""
    return lambda stage: stage.go(name, *args, query=query)


def press(page: Page, selector: str) -> None:
    """Press something that leads to another page, and wait until that stands."""
    with page.expect_navigation():
        page.locator(selector).click()


def look(stage: Stage, reach: Reach, themed: bool = True) -> list[str]:
    """Return what is wrong with a page in any lighting and at any width."""
    faults = []
    for theme in THEMES:
        stage.light(theme)
        reach(stage)
        if themed:
            assert stage.page.evaluate("document.documentElement.dataset.theme") == theme
        open_folds(stage.page)
        for width in WIDTHS:
            stage.page.set_viewport_size({"width": width, "height": 800})
            faults += [f"{theme}, {width} px: {one}" for one in seen(stage.page, width, lit=theme != THEMES[0])]
    return faults


def seen(page: Page, width: int, *, lit: bool = False) -> list[str]:
    """Return what is wrong with a page as it stands; `lit` where it was looked at before in another lighting."""
    faults = wide(page)
    if width in FULL:
        faults += inline(page) + axe_faults(page, lit=lit)
    if width == FULL[1]:
        faults += low(page)
        fills = amber(page)
        faults += [f"{len(fills)} amber fills: {fills}"] if len(fills) > AMBER_MOST else []
    return faults
