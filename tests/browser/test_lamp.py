"""The lamp of a panel: by cells, buttons, slider and keys, with script and without; late pictures come all the same."""

import io

import pytest
from PIL import Image
from playwright.sync_api import expect

from courses import gallery
from courses.pictures import lookalikes
from tests.browser.looking import low, wide
from tests.browser.screens import DESK, PHONE
from tests.browser.stage import Stage, at, look

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]
ALIKE = "/lessons/look-alikes/"
SMALL = (96, 64)


@pytest.fixture
def hung(site, settings, tmp_path, monkeypatch):
    """The look-alikes, small, in a folder of their own."""
    settings.PICTURES_ROOT = tmp_path / "pictures"
    monkeypatch.setattr(lookalikes.lookalike, "__defaults__", (SMALL,))
    gallery.hang_shipped()


@pytest.fixture
def page(screens, open_page, sign_in, outsider, hung):
    """The page of look-alikes on a phone, its first pictures there."""
    screens.allow("status of 503")
    page = sign_in(open_page(*PHONE), outsider)
    page.goto(ALIKE)
    seen(page, 4)
    return page


def seen(page, number, count=2):
    """Wait until the pictures of one lamp place, and no others, are to be seen."""
    there = """([number, count]) => {
      const images = [...document.querySelectorAll(".panel img")].filter((one) => one.checkVisibility());
      return images.length === count && images.every((one) => one.naturalWidth && one.dataset.at === String(number));
    }"""
    page.wait_for_function(there, arg=[number, count])


def said(page, words):
    """Expect what a screen reader hears."""
    expect(page.locator("[data-said]")).to_have_text(words)


def cell(page, number):
    """Return the cell of one lamp place."""
    return page.locator(".lamp-track input").nth(number - 1)


def test_the_lamp_moves_by_its_cells_its_buttons_and_its_slider(page):
    cell(page, 2).check()
    seen(page, 2)
    said(page, "Lamp place 2 of 7")
    page.get_by_role("button", name="Lamp one place on").click()
    seen(page, 3)
    expect(cell(page, 3)).to_be_checked()
    page.get_by_role("slider", name="Place of the lamp").fill("6")
    seen(page, 6)
    said(page, "Lamp place 6 of 7")
    expect(cell(page, 6)).to_be_checked()
    page.get_by_role("button", name="Lamp one place back").click()
    seen(page, 5)
    expect(page.get_by_role("slider")).to_have_value("5")


def test_the_lamp_moves_by_keys_alone(page):
    cell(page, 4).focus()
    page.keyboard.press("ArrowRight")
    seen(page, 5)
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    seen(page, 4)
    page.keyboard.press("Tab")
    page.keyboard.press("Home")
    seen(page, 1)
    said(page, "Lamp place 1 of 7")
    expect(page.get_by_role("slider")).to_have_attribute("aria-valuetext", "Lamp place 1 of 7")


def test_at_its_end_the_lamp_stops(page):
    cell(page, 7).check()
    on = page.get_by_role("button", name="Lamp one place on")
    expect(on).to_have_attribute("aria-disabled", "true")
    on.click(force=True)
    said(page, "Lamp place 7 of 7")
    expect(page.get_by_role("button", name="Lamp one place back")).to_have_attribute("aria-disabled", "false")


def test_a_picture_is_fetched_when_the_lamp_stands_there_and_then_never_again(page):
    asked = []
    page.on("request", lambda one: asked.append(one.url) if one.url.endswith(".webp") else None)
    for number in (5, 4, 5):
        cell(page, number).check()
        seen(page, number)
    assert len(asked) == len(set(asked)) == 2
    page.reload()
    seen(page, 4)
    assert len(set(asked)) == 4


def test_the_picture_before_stays_until_the_next_is_there(page):
    held = []
    page.route("**/*.webp", lambda route: held.append(route))
    page.get_by_role("button", name="Lamp one place on").click()
    page.wait_for_function("() => document.querySelector('.panel [data-at=\"5\"]').checkVisibility()")
    assert page.locator('.panel [data-at="4"]').first.is_visible()
    page.wait_for_timeout(200)
    for route in held:
        route.continue_()
    seen(page, 5)


def test_a_picture_that_is_being_made_is_asked_for_again(screens, open_page, sign_in, outsider, hung):
    screens.allow("status of 503")
    page = sign_in(open_page(*DESK), outsider)
    turned_away = []

    def busy(route):
        if len(turned_away) < 3:
            turned_away.append(route.request.url)
            return route.fulfill(status=503, headers={"Retry-After": "1"})
        return route.continue_()

    page.route("**/*.webp", busy)
    page.goto(ALIKE)
    said(page, "The picture is being made.")
    seen(page, 4)
    said(page, "Lamp place 4 of 7")


def test_without_script_the_cells_show_each_picture(screens, open_page, sign_in, outsider, hung):
    screens.allow("status of 503")
    page = sign_in(open_page(*PHONE, script=False), outsider)
    page.goto(ALIKE)
    assert wide(page) + low(page) == []
    for number in (4, 6):
        page.locator(".lamp-track label").nth(number - 1).click()
        for panel in (0, 1):
            expect(page.locator(f'.panel [data-at="{number}"]').nth(panel)).to_be_visible()
            expect(page.locator('.panel [data-at="1"]').nth(panel)).to_be_hidden()
    assert not page.locator(".lamp-steps").is_visible()
    page.get_by_label("The other panel").select_option("clean")
    page.get_by_role("button", name="Put them side by side").click()
    expect(page.locator("h2").nth(1)).to_have_text("Clean panel")


@pytest.fixture
def painted(open_page, sign_in):
    """Return a page whose pictures cost nothing to make and are there at once, and the addresses it asked for."""
    kept = io.BytesIO()
    Image.new("RGB", SMALL, (16, 28, 60)).save(kept, "WEBP")

    def opened(person, *size):
        page, asked = sign_in(open_page(*size), person), []

        def answer(route):
            asked.append(route.request.url)
            route.fulfill(body=kept.getvalue(), content_type="image/webp")

        page.route("**/pictures/**", answer)
        return page, asked

    return opened


@pytest.mark.looks
@pytest.mark.parametrize(
    "query",
    ["", "?a=clean&b=chip&colour=white&light=raking", "?a=fading&b=oxidation&colour=mid&light=diffuse", "?a=x&b=x"],
)
def test_the_page_of_look_alikes_in_every_lighting(site, outsider, painted, query):
    page, _asked = painted(outsider)
    assert look(Stage(page, site, outsider), at("look-alikes", query=query)) == []


@pytest.mark.looks
@pytest.mark.parametrize("slug", ["three-lights", "swirl-or-hologram"])
def test_a_lesson_with_pictures_in_every_lighting(site, trainee, painted, slug):
    page, _asked = painted(trainee)
    assert look(Stage(page, site, trainee), at("lesson-detail", slug)) == []


def test_a_lesson_asks_for_the_pictures_that_come_near_and_no_others(trainee, painted):
    page, asked = painted(trainee, *PHONE)
    page.goto("/lessons/swirl-or-hologram/")
    page.wait_for_load_state("networkidle")
    strips, places = page.locator(".panels").count(), page.locator(".panel img").count()
    page.locator(".lamp-track label").nth(1).click()
    expect(page.locator('.panel [data-at="2"]').first).to_be_visible()
    page.wait_for_load_state("networkidle")
    assert len(asked) == len(set(asked)) > 0
    assert len(asked) < strips * 2 + 3 < places
