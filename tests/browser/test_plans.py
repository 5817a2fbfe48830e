"""A plan is tried: by touch on a phone, by keys on a desk, without script; in every lighting and width."""

import pytest
from playwright.sync_api import expect

from courses.pictures import plan_scenes
from tests.browser.looking import axe_faults, low, wide
from tests.browser.screens import DESK, PHONE
from tests.browser.stage import Stage, at, look, press
from tests.browser.test_plan_path import pick

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]
URL = "/try-a-plan/"
GOOD = "wash;tape;test_spot;cut;wipe;refine;wipe;finish;wipe;inspect"
SMALL = (96, 64)
LOOKED_AT = {
    "a panel": "",
    "a pass": f"?panel=mild_chalk&number=3&plan={GOOD}",
    "harm": f"?panel=crack&number=3&plan={GOOD}",
    "two plans": f"?panel=deep_scratch&number=3&plan={GOOD}&beside=wash;refer;cut+machine=da;wipe;finish;wipe",
    "a plan refused": "?panel=mild_chalk&number=3&plan=wash;sand+grade=P1501",
    "a panel refused": "?panel=own&substrate=clear_coat&film=0+um&mark1=swirl&depth1=30+um",
}


@pytest.fixture(autouse=True)
def small(site, settings, tmp_path, monkeypatch):
    """Pictures are small, and in a folder of their own."""
    settings.PICTURES_ROOT = tmp_path / "pictures"
    for scene in (plan_scenes.before, plan_scenes.after):
        monkeypatch.setattr(scene, "__defaults__", (SMALL,))


def lines(page):
    """Return the steps of the list."""
    return page.locator("[data-steps] > li")


def seen(page, count):
    """Wait until so many pictures, and no others, are to be seen."""
    there = """(count) => {
      const images = [...document.querySelectorAll(".panel img")].filter((one) => one.checkVisibility());
      return images.length === count && images.every((one) => one.naturalWidth);
    }"""
    page.wait_for_function(there, arg=count)


def sound(page):
    """Fail where the page is too wide, a control too low, or axe finds anything."""
    assert wide(page) + low(page) == []
    assert axe_faults(page) == []


def test_a_plan_is_tried_by_touch(screens, sign_in, outsider):
    page = sign_in(screens.open(*PHONE, touch=True), outsider)
    page.goto(URL)
    page.get_by_text("Choose another kind").tap()
    page.get_by_label("Panel", exact=True).select_option("clear_swirls")
    with page.expect_navigation():
        page.get_by_role("button", name="Take this kind").tap()
    expect(page.get_by_role("heading", name="Swirls in clear coat, panel 1")).to_be_visible()
    form = page.locator("[data-plan]")
    for token in ("wash", "tape", "cut machine=da pad=foam_cut compound=medium", "wipe", "finish"):
        pick(form, token)
        form.locator("[data-add]").tap()
    with page.expect_navigation():
        page.get_by_role("button", name="See what follows").tap()
    expect(page.locator(".verdict .word")).to_have_text("Pass")
    expect(page.locator("#outcome")).to_be_in_viewport()
    with page.expect_navigation():
        page.get_by_role("button", name="Show the panel before and after").tap()
    seen(page, 2)
    page.locator(".lamp-track label").last.tap()
    seen(page, 2)
    with page.expect_navigation():
        page.get_by_role("link", name="Try another beside it").tap()
    lines(page).nth(2).locator("summary").tap()
    lines(page).nth(2).locator("[data-do=out]").tap()
    expect(page.locator("[data-stale]")).to_be_visible()
    with page.expect_navigation():
        page.get_by_role("button", name="See what follows").tap()
    expect(page.locator(".verdict .word")).to_have_text(["To be done again", "Pass"])
    expect(page.get_by_role("heading", name="What differs")).to_be_visible()
    sound(page)


def test_a_plan_is_tried_by_keys(screens, sign_in, outsider):
    page = sign_in(screens.open(*DESK), outsider)
    page.goto(URL)
    op = page.locator("[name=pick-op]")
    op.focus()
    for words in ("Wash", "Finish"):
        page.keyboard.type(words)
        page.keyboard.press("Enter")
        expect(lines(page).last).to_contain_text(words)
        expect(op).to_be_focused()
    lines(page).last.locator("summary").focus()
    page.keyboard.press("Alt+ArrowUp")
    expect(lines(page).first).to_contain_text("Finish")
    op.focus()
    while not page.get_by_role("button", name="See what follows").evaluate("one => one === document.activeElement"):
        page.keyboard.press("Tab")
    with page.expect_navigation():
        page.keyboard.press("Enter")
    expect(page.locator(".verdict .word")).to_have_text("To be done again")
    assert "plan=finish" in page.url
    assert axe_faults(page) == []


def test_a_plan_is_tried_without_script(screens, sign_in, outsider):
    screens.allow("status of 503", "webp net::ERR_ABORTED")
    page = sign_in(screens.open(*PHONE, script=False), outsider)
    page.goto(URL)
    page.locator("[name=pick-op]").select_option("wash")
    press(page, "[data-add]")
    if lines(page).count() == 0:  # its settings came with the page
        press(page, "[data-add]")
    page.locator("[name=pick-op]").select_option("sand")
    press(page, "[data-add]")
    page.locator("[data-ops~=sand] [name=pick-grade]").select_option("P1500")
    press(page, "[data-add]")
    expect(lines(page)).to_have_count(2)
    press(page, "[data-plan] .btn-primary")
    expect(page.locator(".verdict .word")).to_have_text("To be done again")
    press(page, "#pictures [type=submit]")
    expect(page.locator(".panel")).to_have_count(2)
    assert wide(page) + low(page) == []


def test_a_seventh_press_within_a_minute_is_answered_with_a_sentence(screens, sign_in, outsider):
    screens.allow("status of 429", "status of 503", "webp net::ERR_ABORTED")
    page = sign_in(screens.open(*PHONE), outsider)
    page.goto(f"{URL}{LOOKED_AT['a pass']}")
    for _press in range(7):
        press(page, "#pictures [type=submit]")
    expect(page.get_by_text("Wait a moment, then ask again.")).to_be_visible()
    sound(page)


@pytest.mark.looks
@pytest.mark.parametrize("name", LOOKED_AT)
def test_the_page_in_every_lighting_and_width(screens, sign_in, site, outsider, name):
    stage = Stage(sign_in(screens.open(), outsider), site, outsider)
    assert look(stage, at("plan-try", query=LOOKED_AT[name])) == []
