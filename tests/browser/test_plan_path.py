"""A plan is built, a spot is laid, both are handed in and read: by touch, by keys, and without script."""

import pytest
from playwright.sync_api import Locator, Page, expect

from assessments.answers.sheet import written
from assessments.forms.building import builder_of
from assessments.journey import answers_of
from assessments.models import Attempt
from tests.browser.answering import answers_like
from tests.browser.looking import axe
from tests.browser.stage import press

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]
DESK, PHONE = (1280, 800), (360, 740)


def lines(page: Page) -> Locator:
    """Return the steps as they stand in the list."""
    return page.locator("#task-steps [data-steps] > li")


def pick(form: Locator, token: str) -> None:
    """Choose a step and its settings; what is folded away is opened first."""
    op, *said = token.split()
    form.locator("[name=pick-op]").select_option(op)
    shape = form.locator(f"[data-ops~={op}]")
    for name, value in (one.split("=") for one in said):
        field = shape.locator(f"[name=pick-{name}]")
        if not field.is_visible():
            shape.locator("summary").click()
        if field.evaluate("one => one.tagName") == "SELECT":
            field.select_option(value)
        else:
            field.fill(value)


def kept(attempt: Attempt) -> list[str]:
    """Return the plan that counts, as a page sends it."""
    task = attempt.scenario.spec.task("steps")
    return written(task, answers_of(attempt)["steps"])


def saved(page: Page) -> None:
    """Wait until the plan is kept."""
    expect(page.locator("#task-steps [data-state]")).to_contain_text("Saved")


def in_words(attempt: Attempt, token: str) -> str:
    """Return a step as the list says it."""
    return builder_of(attempt.scenario.spec.task("steps")).words(token)


def test_a_spot_is_laid_a_plan_built_by_touch_handed_in_and_read(paper, begin):
    attempt = begin("PLN-03")
    page = paper(attempt, PHONE)
    spots = page.locator("#task-trials")
    pick(spots, "spot_sand grade=P1500 sets=1")
    press(page, "#task-trials [data-add]")
    expect(spots.locator(".readings > li").last).to_contain_text("P1500")
    assert answers_of(attempt)["trials"] == [{"op": "spot_sand", "grade": "P1500", "sets": "1"}]
    form = page.locator("#task-steps")
    for token in ("wash", "tape", "sand grade=P2000 passes=4", "dry", "inspect"):
        pick(form, token)
        form.locator("[data-add]").click()
    expect(lines(page)).to_have_count(5)
    lines(page).nth(2).locator("summary").click()
    lines(page).nth(2).locator("[data-do=change]").click()
    lines(page).nth(2).locator("fieldset:not([hidden]) [name=pick-grade]").select_option("P1500")
    lines(page).nth(2).locator("[data-add]").click()
    expect(lines(page).nth(2)).to_contain_text("Sand, P1500")
    lines(page).nth(1).locator("summary").click()
    lines(page).nth(1).locator("[data-do=twice]").click()
    expect(lines(page)).to_have_count(6)
    lines(page).nth(2).locator("summary").click()
    lines(page).nth(2).locator("[data-do=out]").click()
    for token in ("cut", "wipe", "refine", "wipe", "wipe", "finish"):
        pick(form, token)
        form.locator("[data-add]").click()
    lines(page).last.locator("summary").click()
    lines(page).last.locator("[data-do=up]").click()
    saved(page)
    axe(page)
    words = lines(page).locator("[data-words]").all_inner_texts()
    page.reload()
    assert (
        lines(page).locator("[data-words]").all_inner_texts()
        == words
        == [in_words(attempt, one) for one in kept(attempt)]
    )
    page.get_by_role("button", name="Hand in for marking").click()
    expect(page.get_by_role("heading", name="What the plan did")).to_be_visible()
    expect(page.locator(".panels img").first).to_be_visible()
    expect(page.locator(".panels").first).to_contain_text("Before")
    expect(page.get_by_role("heading", name="What was found")).to_be_visible()
    axe(page)


def test_a_plan_built_by_keys(paper, begin):
    attempt = begin("PLN-01")
    page = paper(attempt, DESK)
    form = page.locator("#task-steps")
    wanted = written(attempt.scenario.spec.task("steps"), answers_like(attempt, "key")["steps"])
    for token in wanted:
        pick(form, token)
        form.locator("[name=pick-op]").focus()
        page.keyboard.press("Enter")
    expect(lines(page)).to_have_count(len(wanted))
    lines(page).first.locator("summary").focus()
    page.keyboard.press("Alt+ArrowDown")
    expect(page.locator("#task-steps [data-moved]")).to_contain_text("is now number 2")
    page.keyboard.press("Alt+ArrowUp")
    expect(page.locator("#task-steps [data-moved]")).to_contain_text("is now number 1")
    saved(page)
    axe(page)
    plain = [one.split()[0] for one in kept(attempt)]
    assert plain == [one.split()[0] for one in wanted]
    page.get_by_role("button", name="Hand in for marking").click()
    expect(page.get_by_text("Pass.")).to_be_visible()


def test_a_spot_and_a_plan_without_script(paper, begin):
    attempt = begin("PLN-03")
    page = paper(attempt, PHONE, script=False)
    page.locator("#task-trials [name=pick-op]").select_option("spot_sand")
    press(page, "#task-trials [data-add]")  # its settings come with the next page
    page.locator("#task-trials [data-ops~=spot_sand] [name=pick-grade]").select_option("P1500")
    press(page, "#task-trials [data-add]")
    assert answers_of(attempt)["trials"] == [{"op": "spot_sand", "grade": "P1500", "sets": "1"}]
    for op in ("wash", "sand"):
        page.locator("#task-steps [name=pick-op]").select_option(op)
        press(page, "#task-steps [data-add]")
        if page.locator(f"#task-steps [data-ops~={op}]").is_visible():
            press(page, "#task-steps [data-add]")
    lines(page).nth(1).locator("summary").click()
    press(page, "#task-steps li:nth-child(2) [data-do=change]")
    lines(page).nth(1).locator("[data-ops~=sand] [name=pick-passes]").select_option("6")
    press(page, "#task-steps li:nth-child(2) [data-add]")
    expect(lines(page).nth(1)).to_contain_text("6 passes")
    lines(page).nth(1).locator("summary").click()
    press(page, "#task-steps li:nth-child(2) [data-do=twice]")
    assert [one.split()[0] for one in kept(attempt)] == ["wash", "sand", "sand"]


def test_what_no_step_takes_is_said_beside_the_list_and_nothing_is_lost(paper, begin, screens):
    screens.allow("status of 422")
    attempt = begin("PLN-01")
    page = paper(attempt, PHONE)
    form = page.locator("#task-steps")
    pick(form, "wash")
    form.locator("[data-add]").click()
    saved(page)
    pick(form, "refine speeds_rpm=90000")
    form.locator("[data-add]").click()
    expect(page.locator("#task-steps [data-state]")).to_contain_text("90000")
    assert kept(attempt) == ["wash"]
    expect(lines(page)).to_have_count(2)
