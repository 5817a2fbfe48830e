"""By keys alone: what is reached, in which order, and that the eye can follow."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.answering import opened, rows
from tests.browser.screens import PHONE

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]

RING = """() => {
  const one = document.activeElement.closest("label") ?? document.activeElement;
  const style = [one, document.activeElement].map((part) => getComputedStyle(part));
  return style.some(({outlineStyle, outlineWidth}) => outlineStyle === "solid" && parseFloat(outlineWidth) >= 3);
}"""


@pytest.fixture
def desk(open_page, sign_in, trainee):
    """A trainee at a keyboard."""
    return sign_in(open_page(), trainee)


def focused(page: Page) -> str:
    """Return the words of what has the focus."""
    return page.evaluate("(document.activeElement.innerText || document.activeElement.id || '').trim()")


def tab_to(page: Page, selector: str, most: int = 80) -> None:
    """Press Tab until what is meant has the focus; every stop on the way shows a ring."""
    for _press in range(most):
        page.keyboard.press("Tab")
        assert page.evaluate(RING), f"no ring on: {page.evaluate('document.activeElement.outerHTML.slice(0, 120)')}"
        if page.evaluate("(selector) => document.activeElement.matches(selector)", selector):
            return
    raise AssertionError(f"{most} presses of Tab did not reach {selector}.")


def test_the_first_stop_skips_to_the_content(desk):
    desk.goto("/")
    desk.keyboard.press("Tab")
    assert focused(desk) == "Skip to the content"
    expect(desk.locator(".skip")).to_be_in_viewport()
    assert desk.locator(".skip").bounding_box()["height"] >= 40
    desk.keyboard.press("Enter")
    assert desk.evaluate("document.activeElement.id") == "main"
    desk.keyboard.press("Tab")
    assert focused(desk) == "Read it"


def test_the_menu_opens_walks_and_shuts(desk):
    desk.goto("/")
    tab_to(desk, ".who summary")
    desk.keyboard.press("Enter")
    expect(desk.get_by_role("link", name="Settings")).to_be_visible()
    desk.keyboard.press("Tab")
    assert focused(desk) == "Settings"
    desk.keyboard.press("Tab")
    assert focused(desk) == "Calculators"
    desk.keyboard.press("Escape")
    expect(desk.get_by_role("link", name="Settings")).to_be_hidden()
    assert desk.evaluate("document.activeElement.tagName") == "SUMMARY"
    desk.keyboard.press("Enter")
    desk.keyboard.press("Tab")
    desk.keyboard.press("Enter")
    expect(desk.locator("h1")).to_have_text("Settings")


def test_a_menu_left_open_shuts_when_the_keys_go_on(desk):
    desk.goto("/")
    tab_to(desk, ".who summary")
    desk.keyboard.press("Enter")
    for _press in range(5):
        desk.keyboard.press("Tab")
    expect(desk.get_by_role("link", name="Settings")).to_be_hidden()


def test_a_calculator_answers_under_the_keys_and_keeps_the_focus(desk):
    desk.goto("/calculators/dew_point/")
    tab_to(desk, "[name=air_degc]")
    desk.keyboard.type("20")
    desk.keyboard.press("Tab")
    desk.keyboard.type("60")
    expect(desk.locator("output").first).to_have_text("12.0\u00a0°C")
    assert desk.evaluate("document.activeElement.name") == "air_rh"
    desk.keyboard.press("Enter")
    expect(desk.locator("output").first).to_have_text("12.0\u00a0°C")
    assert desk.evaluate("document.activeElement.name") == "air_rh"


def test_an_attempt_is_answered_and_handed_in_by_keys(desk, trainee):
    attempt = opened(trainee)
    desk.goto(f"/attempts/{attempt.pk}/")
    tab_to(desk, "#a-dew_point")
    desk.keyboard.type("9,3")
    tab_to(desk, "#a-margin")
    desk.keyboard.type("2.5")
    desk.keyboard.press("Enter")
    tab_to(desk, "#task-decision [value=coat_now]")
    desk.keyboard.press("ArrowDown")
    desk.keyboard.press("ArrowDown")
    tab_to(desk, "#task-next_steps [value=trial_section]")
    desk.keyboard.press("Tab")
    desk.keyboard.press("Space")
    tab_to(desk, "#a-why")
    desk.keyboard.type("Cold panel.")
    tab_to(desk, "[data-hand-in] button")
    expect(desk.locator(".strip")).to_contain_text("5 of 5 answered")
    desk.keyboard.press("Enter")
    expect(desk.locator(".verdict")).to_be_visible()
    assert rows(attempt, "dew_point")[-1][0] == 9.3
    assert rows(attempt, "margin") == [(2.5, 1)]
    assert rows(attempt, "decision")[-1][0] == "warm_the_panel"
    assert rows(attempt, "next_steps") == [(["keep_shut_and_wait"], 1)]


def test_none_of_these_and_a_step_shut_each_other_out(desk, trainee):
    attempt = opened(trainee)
    desk.goto(f"/attempts/{attempt.pk}/")
    box = desk.locator("#task-next_steps")
    box.locator("[value=tell_owner]").focus()
    desk.keyboard.press("Space")
    box.locator("[data-none]").focus()
    desk.keyboard.press("Space")
    expect(box.locator("[value=tell_owner]")).not_to_be_checked()
    expect(box.locator("[data-state]")).to_contain_text("Saved")
    box.locator("[value=tell_owner]").focus()
    desk.keyboard.press("Space")
    expect(box.locator("[data-none]")).not_to_be_checked()
    expect(box.locator("[data-state]")).to_contain_text("Saved")
    assert rows(attempt, "next_steps")[-1][0] == ["tell_owner"]


def test_the_lighting_is_chosen_by_arrows_and_the_page_stays(desk, trainee):
    desk.goto("/scenarios/")
    tab_to(desk, "[name=theme]")
    desk.keyboard.press("ArrowRight")
    expect(desk.locator("html")).to_have_attribute("data-theme", "light")
    desk.keyboard.press("ArrowRight")
    expect(desk.locator("html")).to_have_attribute("data-theme", "dark")
    assert desk.url.endswith("/scenarios/")
    trainee.refresh_from_db()
    assert trainee.theme == "dark"


def test_a_check_question_is_answered_by_keys(desk):
    desk.goto("/lessons/dew-point/")
    tab_to(desk, "form.check [name=pick]")
    desk.keyboard.press("Space")
    desk.keyboard.press("ArrowDown")
    desk.keyboard.press("Enter")
    expect(desk.locator("form.check").first.locator(".alert")).to_contain_text("That holds.")
    assert desk.evaluate("document.activeElement.name") == "pick"


@pytest.mark.parametrize("path", ["/", "/lessons/", "/settings/", "/calculators/dew_margin/", "/scenarios/COA-01/"])
def test_on_a_phone_every_stop_is_in_sight_and_none_is_a_trap(open_page, sign_in, trainee, path):
    page = sign_in(open_page(*PHONE), trainee)
    page.goto(path)
    seen = []
    for _press in range(200):
        page.keyboard.press("Tab")
        stop = page.evaluate("document.activeElement === document.body ? '' : document.activeElement.outerHTML")
        if not stop or stop in seen[:1]:
            break
        seen.append(stop)
        box = page.evaluate("(({top, bottom}) => [top, bottom])(document.activeElement.getBoundingClientRect())")
        assert -1 <= box[0] <= PHONE[1], stop
    else:
        raise AssertionError("200 presses of Tab did not come round.")
    assert len(seen) > 5
