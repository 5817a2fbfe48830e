"""A defect is found on a picture: a reading asked for, cells marked by touch and keys, acts ordered, the truth seen."""

import pytest
from playwright.sync_api import Page, expect

from assessments.journey import answers_of
from assessments.models import Attempt
from tests.browser.answering import answers_like
from tests.browser.looking import axe
from tests.browser.stage import press

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]
DESK, PHONE = (1280, 800), (360, 740)


@pytest.fixture
def attempt(begin):
    """An open attempt at cracks round a cleat."""
    return begin("INS-04")


@pytest.fixture
def paper(paper, attempt):
    """Return a function that opens an attempt, the one at the cleat unless told another."""
    return lambda size, *, script=True, attempt=attempt: paper(attempt, size, script=script)


def ask(page: Page, reading: str) -> None:
    """Ask for a reading; the page comes back with what it tells."""
    press(page, f"#task-asked button[value={reading}]")
    expect(page.locator("#task-asked")).to_contain_text("asked as number")


def frame(page: Page, cells: list[str], verdict: str) -> None:
    """Mark cells as one verdict, the first with a finger, the rest with keys."""
    place = page.locator(".brush label").all_inner_texts().index(verdict) + 1
    page.locator(".brush label").nth(place - 1).click()
    grid = page.locator(f'.zones[data-grid="{place}"]')
    grid.locator(f"[data-cell={cells[0]}]").click()
    for cell in cells[1:]:
        walk(page, cell)
        page.keyboard.press("Space")


def walk(page: Page, cell: str) -> None:
    """Go to a cell from the one that has the focus, by arrow keys alone."""
    here = page.evaluate("document.activeElement.dataset.cell")
    rows, columns = "ABCD".index(cell[0]) - "ABCD".index(here[0]), int(cell[1]) - int(here[1])
    for _ in range(abs(rows)):
        page.keyboard.press("ArrowDown" if rows > 0 else "ArrowUp")
    for _ in range(abs(columns)):
        page.keyboard.press("ArrowRight" if columns > 0 else "ArrowLeft")
    assert page.evaluate("document.activeElement.dataset.cell") == cell


def act(page: Page, op: str, zone: str = "", *, script: bool) -> None:
    """Add an act, with its zone where it has one."""
    lines = page.locator("#task-steps [data-steps] > li")
    before = lines.count()
    page.locator("#task-steps [name=pick-op]").select_option(op)
    button = page.locator("#task-steps [data-add]")
    settings = page.locator(f"#task-steps [data-ops~={op}]")
    if not script and settings.count():  # without script its settings come with the next page
        with page.expect_navigation():
            button.click()
    if zone:
        settings.locator("[name=pick-zone]").select_option(zone)
    if script:
        button.click()
    else:
        with page.expect_navigation():
            button.click()
    expect(lines).to_have_count(before + 1)


def kept(attempt: Attempt, task: str) -> object:
    """Return the answer that counts, as it is kept."""
    return answers_of(attempt).get(task)


def steps(attempt: Attempt) -> list[dict[str, str]]:
    """Return the acts as they are kept; what lies everywhere is what no zone was said of."""
    return [{name: said for name, said in one.items() if said != "all"} for one in kept(attempt, "steps")]


def saved(page: Page, task: str) -> None:
    """Wait until what was answered is kept."""
    expect(page.locator(f"#task-{task} [data-state]")).to_contain_text("Saved")


def hand_in(page: Page) -> None:
    """Hand in and read the verdict."""
    page.get_by_role("button", name="Hand in for marking").click()
    expect(page.locator(".verdict")).to_be_visible()


@pytest.mark.parametrize("size", [DESK, PHONE], ids=["desk", "phone"])
def test_cells_readings_and_acts_by_touch_and_keys(paper, attempt, size):
    page = paper(size)
    wanted = answers_like(attempt, "key")
    (group,) = wanted["zones"]
    words = next(one.words for one in attempt.scenario.spec.task("zones").options if one.id == group["verdict"])
    ask(page, "press")
    assert kept(attempt, "asked") == ["press"]
    frame(page, group["cells"], words)
    saved(page, "zones")
    assert kept(attempt, "zones") == [group]
    for one in wanted["steps"]:
        act(page, one["op"], one.get("zone", ""), script=True)
    page.locator("#task-steps li").last.locator("summary").click()
    page.locator("#task-steps li").last.locator("[data-do=up]").click()
    expect(page.locator("#task-steps [data-moved]")).to_contain_text("is now number")
    page.locator("#task-steps li").nth(-2).locator("[data-do=down]").click()
    saved(page, "steps")
    axe(page)
    page.reload()
    assert steps(attempt) == list(wanted["steps"])
    hand_in(page)
    expect(page.locator(".truth")).to_contain_text(f"Found{', '.join(group['cells'])}")
    axe(page)


def test_a_reading_brings_a_picture_its_lamp_is_moved_and_the_truth_is_seen(paper, begin):
    attempt = begin("INS-06")
    page = paper(PHONE, attempt=attempt)
    expect(page.locator("#task-zones .panel")).to_have_count(0)
    ask(page, "raking")
    track = page.locator("#task-zones .lamp-track")
    track.locator("label").last.click()
    expect(page.locator("#task-zones [data-said]")).to_contain_text("Lamp place")
    last = track.locator("input").count()
    expect(page.locator(f'#task-zones [data-at="{last}"]')).to_be_visible()
    page.locator("#task-zones [data-step='-1']").click()
    expect(track.locator(f'[value="{last - 1}"]')).to_be_checked()
    (group,) = answers_like(attempt, "key")["zones"]
    words = next(one.words for one in attempt.scenario.spec.task("zones").options if one.id == group["verdict"])
    frame(page, group["cells"], words)
    saved(page, "zones")
    assert kept(attempt, "zones") == [group]
    axe(page)
    hand_in(page)
    expect(page.locator(".truth")).to_contain_text(f"Found{', '.join(group['cells'])}")
    expect(page.locator(".truth")).to_contain_text("Missednone")


def test_a_cell_has_one_verdict(paper, attempt):
    page = paper(DESK)
    first, second = attempt.scenario.spec.task("zones").options[:2]
    frame(page, ["A1", "A2"], first.words)
    frame(page, ["A1"], second.words)
    saved(page, "zones")
    page.reload()
    expect(page.locator(".zones input:checked")).to_have_count(2)
    assert {(one["verdict"], *one["cells"]) for one in kept(attempt, "zones")} == {
        (first.id, "A2"),
        (second.id, "A1"),
    }


def test_all_of_it_without_script(paper, attempt):
    page = paper(PHONE, script=False)
    wanted = answers_like(attempt, "key")
    (group,) = wanted["zones"]
    ask(page, "press")
    form = page.locator("#task-zones form")
    place = [one.id for one in attempt.scenario.spec.task("zones").options].index(group["verdict"]) + 1
    page.locator(".brush label").nth(place - 1).click()
    for cell in group["cells"]:
        form.locator(f'[data-grid="{place}"] [data-cell={cell}]').check()
    press(page, "#task-zones [data-keep]")
    assert kept(attempt, "zones") == [group]
    for one in wanted["steps"]:
        act(page, one["op"], one.get("zone", ""), script=False)
    assert steps(attempt) == list(wanted["steps"])
    page.locator("#task-steps li:last-child summary").click()
    press(page, "#task-steps li:last-child [data-do=out]")
    assert steps(attempt) == list(wanted["steps"])[:-1]


def test_who_cannot_see_reads_the_picture_in_words(paper, attempt):
    page = paper(DESK)
    page.get_by_role("button", name="Read the picture in words").first.click()
    expect(page.locator("#task-zones")).to_contain_text("The same picture in words")
    axe(page)
    attempt.refresh_from_db()
    assert attempt.described
    hand_in(page)


def test_a_phone_without_signal_keeps_what_was_marked(screens, paper, attempt):
    screens.allow("ERR_INTERNET_DISCONNECTED", "ERR_FAILED")
    page = paper(PHONE)
    page.context.set_offline(True)
    option = attempt.scenario.spec.task("zones").options[0]
    frame(page, ["B2", "B3"], option.words)
    act(page, "tell", script=True)
    expect(page.locator("#task-zones [data-state]")).to_contain_text("kept on this device")
    page.context.set_offline(False)
    saved(page, "zones")
    saved(page, "steps")
    assert kept(attempt, "zones") == [{"cells": ["B2", "B3"], "verdict": option.id}]
    assert steps(attempt) == [{"op": "tell"}]
