"""A phone with weak signal, two tabs, a clock that ran out: nothing typed is lost, kept twice or told wrongly."""

from datetime import timedelta
from urllib.parse import parse_qs

import pytest
from django.utils import timezone
from playwright.sync_api import Page, expect

from assessments.models import Attempt
from tests.browser.answering import give, opened, rows
from tests.browser.screens import PHONE

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]

UNSENT = "Not sent yet, kept on this device"
GONE = ("ERR_INTERNET_DISCONNECTED", "ERR_FAILED")


@pytest.fixture
def attempt(trainee):
    """A practice attempt that was just opened."""
    return opened(trainee)


@pytest.fixture
def phone(open_page, sign_in, trainee, attempt):
    """The page of the attempt on a phone."""
    page = sign_in(open_page(*PHONE), trainee)
    page.goto(address(attempt))
    return page


def address(attempt: Attempt) -> str:
    return f"/attempts/{attempt.pk}/"


def state(page: Page, task: str):
    """Return what the page says of one answer."""
    return page.locator(f"#task-{task} [data-state]")


def give_on(page: Page, task: str, text: str) -> None:
    """Type an answer and leave its field."""
    page.fill(f"#a-{task}", text)
    page.locator(f"#a-{task}").blur()


def pick(page: Page, decision: str) -> None:
    page.locator(f"#task-decision [value={decision}]").check()


def shut(attempt: Attempt, ago: timedelta) -> None:
    """Let the clock of a paper have run out a while ago."""
    Attempt.objects.filter(pk=attempt.pk).update(deadline=timezone.now() - ago)


def test_what_is_typed_before_the_script_has_come_is_kept_when_it_comes(open_page, sign_in, trainee, attempt):
    page = sign_in(open_page(*PHONE), trainee)
    held = []
    page.route("**/attempt*.js", lambda route: held.append(route))
    page.goto(address(attempt), wait_until="commit")
    page.fill("#a-dew_point", "9.3 °C")
    page.locator("#task-decision [value=wait]").check()
    expect(state(page, "dew_point")).to_contain_text("Not answered")
    held[0].continue_()
    expect(state(page, "dew_point")).to_contain_text("Saved")
    expect(state(page, "decision")).to_contain_text("Saved")
    assert rows(attempt, "dew_point") == [(9.3, 1)]
    assert rows(attempt, "decision") == [("wait", 1)]
    assert attempt.answers.count() == 2


def test_without_signal_answers_stay_are_said_to_wait_and_go_by_themselves(screens, phone, attempt):
    screens.allow(*GONE)
    phone.context.set_offline(True)
    give_on(phone, "dew_point", "9.3")
    pick(phone, "wait")
    expect(state(phone, "dew_point")).to_have_text(UNSENT)
    expect(phone.get_by_text("No signal. Go on working.")).to_be_visible()
    expect(phone.get_by_role("button", name="Hand in for marking")).to_be_disabled()
    assert phone.input_value("#a-dew_point") == "9.3"
    assert not attempt.answers.exists()
    phone.context.set_offline(False)
    expect(state(phone, "dew_point")).to_contain_text("Saved")
    expect(state(phone, "decision")).to_contain_text("Saved")
    expect(phone.get_by_text("No signal. Go on working.")).to_be_hidden()
    expect(phone.get_by_role("button", name="Hand in for marking")).to_be_enabled()
    assert (rows(attempt, "dew_point"), rows(attempt, "decision")) == ([(9.3, 1)], [("wait", 1)])
    phone.wait_for_function("localStorage.length === 0")  # the browser writes it in its own time


def test_what_waits_outlives_the_page(screens, phone, attempt):
    screens.allow(*GONE)
    context = phone.context
    context.set_offline(True)
    give_on(phone, "dew_point", "9.3")
    phone.locator("#task-next_steps [value=tell_owner]").check()
    phone.fill("#a-why", "The panel is colder than the air.")
    phone.locator("#a-why").blur()
    expect(state(phone, "why")).to_have_text(UNSENT)
    phone.close()
    context.set_offline(False)
    again = context.new_page()
    again.goto(address(attempt))
    for task in ("dew_point", "next_steps", "why"):
        expect(state(again, task)).to_contain_text("Saved")
    assert again.input_value("#a-dew_point") == "9.3"
    assert again.locator("#task-next_steps [value=tell_owner]").is_checked()
    assert rows(attempt, "why") == [("The panel is colder than the air.", 1)]
    assert rows(attempt, "next_steps") == [(["tell_owner"], 1)]


def test_a_reply_lost_on_the_way_makes_no_second_row(screens, phone, attempt):
    screens.allow(*GONE)
    sent = []

    def lose(route):
        sent.append(parse_qs(route.request.post_data))
        route.fetch()
        route.abort() if len(sent) == 1 else route.continue_()

    phone.route("**/answer/", lambda route: lose(route) if not sent else route.continue_())
    give_on(phone, "dew_point", "9.3")
    expect(state(phone, "dew_point")).to_have_text(UNSENT)
    expect(state(phone, "dew_point")).to_contain_text("Saved")
    assert rows(attempt, "dew_point") == [(9.3, 1)]


def test_an_answer_changed_after_a_lost_reply_is_no_conflict(screens, phone, attempt):
    screens.allow(*GONE)
    lost = []

    def lose(route):
        if lost:
            return route.continue_()
        lost.append(route.fetch())
        return route.abort()

    phone.route("**/answer/", lose)
    give_on(phone, "dew_point", "9.3")
    expect(state(phone, "dew_point")).to_have_text(UNSENT)
    give_on(phone, "dew_point", "8.1")
    expect(state(phone, "dew_point")).to_contain_text("Saved")
    assert rows(attempt, "dew_point") == [(9.3, 1), (8.1, 2)]
    assert phone.get_by_text("This was answered in two tabs.").count() == 0


@pytest.mark.parametrize(
    ("button", "take", "counts"),
    [("Take the later one", "8.1", 8.1), ("Take the one that counts now", "9.3", 9.3)],
    ids=["the later", "the one that counts"],
)
def test_two_tabs_with_two_answers_are_asked_which_one_counts(screens, phone, attempt, button, take, counts):
    screens.allow("status of 409")
    beside = phone.context.new_page()
    beside.goto(address(attempt))
    give_on(phone, "dew_point", "9.3")
    expect(state(phone, "dew_point")).to_contain_text("Saved")
    give_on(beside, "dew_point", "8.1")
    box = beside.locator("#task-dew_point .alert")
    expect(box).to_contain_text("This was answered in two tabs.")
    expect(box).to_contain_text("9.3\u00a0°C")
    expect(box).to_contain_text("8.1\u00a0°C")
    assert rows(attempt, "dew_point") == [(9.3, 1), (8.1, None)]
    box.get_by_role("button", name=button).click()
    expect(box).to_have_count(0)
    assert attempt.answers.newest()["dew_point"].value == counts
    assert beside.input_value("#a-dew_point") == take


def test_a_tab_that_saves_leaves_what_another_one_still_keeps(screens, phone, attempt):
    screens.allow(*GONE)
    beside = phone.context.new_page()
    beside.goto(address(attempt))
    phone.route("**/answer/", lambda route: route.abort())
    give_on(phone, "dew_point", "9.3")
    expect(state(phone, "dew_point")).to_have_text(UNSENT)
    pick(beside, "wait")
    expect(state(beside, "decision")).to_contain_text("Saved")
    phone.close()
    again = beside.context.new_page()
    again.goto(address(attempt))
    expect(state(again, "dew_point")).to_contain_text("Saved")
    assert rows(attempt, "dew_point") == [(9.3, 1)]


def test_the_same_answer_in_two_tabs_asks_nothing(phone, attempt):
    beside = phone.context.new_page()
    beside.goto(address(attempt))
    for page in (phone, beside):
        pick(page, "wait")
        expect(state(page, "decision")).to_contain_text("Saved")
    assert beside.get_by_text("This was answered in two tabs.").count() == 0


def test_answers_after_time_are_kept_and_told_to_be_late(screens, open_page, sign_in, trainee):
    screens.allow("status of 410", *GONE)
    paper = opened(trainee, "paper")
    page = sign_in(open_page(*PHONE), trainee)
    page.goto(address(paper))
    page.context.set_offline(True)
    give_on(page, "dew_point", "9.3")
    pick(page, "wait")
    expect(state(page, "decision")).to_have_text(UNSENT)
    shut(paper, timedelta(minutes=2))
    page.context.set_offline(False)
    expect(page.locator(".verdict")).to_be_visible()
    expect(page.get_by_text("2 answers came after time. They are kept and your instructor sees them.")).to_be_visible()
    assert list(paper.answers.values_list("task", "sequence", "late")) == [
        ("dew_point", None, True),
        ("decision", None, True),
    ]


def test_what_still_waited_when_the_paper_was_closed_goes_from_its_verdict(screens, open_page, sign_in, trainee):
    screens.allow("status of 410", *GONE)
    paper = opened(trainee, "paper")
    page = sign_in(open_page(*PHONE), trainee)
    page.goto(address(paper))
    page.context.set_offline(True)
    give_on(page, "dew_point", "9.3")
    expect(state(page, "dew_point")).to_have_text(UNSENT)
    page.close()
    shut(paper, timedelta(minutes=2))
    again = page.context.new_page()
    page.context.set_offline(False)
    again.goto(address(paper))
    expect(again.locator(".verdict")).to_be_visible()
    expect(again.get_by_text("One answer came after time. It is kept and your instructor sees it.")).to_be_visible()
    assert list(paper.answers.values_list("value", "sequence", "late")) == [(9.3, None, True)]
    again.wait_for_function("localStorage.length === 0")  # the browser writes it in its own time


def test_in_the_half_minute_of_grace_the_page_stands_and_answers_count(screens, open_page, sign_in, trainee):
    paper = opened(trainee, "paper")
    page = sign_in(open_page(*PHONE), trainee)
    shut(paper, timedelta(seconds=3))
    page.goto(address(paper))
    expect(page.locator("[data-left]")).to_have_text("0\u00a0min left")
    page.evaluate("window.stands = true")
    page.wait_for_timeout(2500)
    pick(page, "wait")
    expect(state(page, "decision")).to_contain_text("Saved")
    assert page.evaluate("window.stands") is True
    assert rows(paper, "decision") == [("wait", 1)]


def test_handing_in_waits_for_the_answer_that_is_on_its_way(phone, attempt):
    phone.route("**/answer/", lambda route: (phone.wait_for_timeout(400), route.continue_()))
    phone.fill("#a-dew_point", "9.3")
    phone.get_by_role("button", name="Hand in for marking").click()
    expect(phone.locator(".verdict")).to_be_visible()
    assert rows(attempt, "dew_point") == [(9.3, 1)]


def test_without_signal_handing_in_waits(screens, phone, attempt):
    screens.allow(*GONE)
    phone.context.set_offline(True)
    phone.fill("#a-dew_point", "9.3")
    phone.get_by_role("button", name="Hand in for marking").click(force=True)
    expect(state(phone, "dew_point")).to_have_text(UNSENT)
    attempt.refresh_from_db()
    assert attempt.is_open
    assert phone.input_value("#a-dew_point") == "9.3"


def test_a_value_that_cannot_be_read_keeps_its_text_and_says_why(screens, phone, attempt):
    screens.allow("status of 422")
    give(attempt, "margin", 4.0)
    phone.reload()
    give_on(phone, "margin", "quite a bit")
    expect(state(phone, "margin")).to_contain_text("quite a bit")
    assert phone.input_value("#a-margin") == "quite a bit"
    expect(phone.locator("#a-margin")).to_have_attribute("aria-invalid", "true")
    assert rows(attempt, "margin") == [(4.0, 1)]
    give_on(phone, "margin", "4,5")
    expect(state(phone, "margin")).to_contain_text("Saved")
    expect(phone.locator("#a-margin")).to_have_attribute("aria-invalid", "false")
    assert rows(attempt, "margin")[-1] == (4.5, 2)


def test_handing_in_stops_once_at_a_value_that_cannot_be_read(screens, phone, attempt):
    screens.allow("status of 422")
    phone.fill("#a-margin", "quite a bit")
    phone.get_by_role("button", name="Hand in for marking").click()
    expect(phone.locator("#a-margin")).to_be_focused()
    attempt.refresh_from_db()
    assert attempt.is_open
    phone.get_by_role("button", name="Hand in for marking").click()
    expect(phone.locator(".verdict")).to_be_visible()


def test_of_a_quick_change_the_newest_counts(phone, attempt):
    for decision in ("coat_now", "wait", "warm_the_panel", "measure_again"):
        pick(phone, decision)
    for text in ("9", "9.", "9.3"):
        phone.fill("#a-dew_point", text)
    phone.locator("#a-dew_point").blur()
    expect(state(phone, "dew_point")).to_contain_text("Saved")
    expect(state(phone, "decision")).to_contain_text("Saved")
    assert rows(attempt, "decision")[-1][0] == "measure_again"
    assert rows(attempt, "dew_point") == [(9.3, 1)]
    phone.reload()
    assert phone.locator("#task-decision [value=measure_again]").is_checked()


def test_saved_is_not_said_while_a_newer_answer_is_on_its_way(phone, attempt):
    held = []
    phone.route(
        "**/answer/", lambda route: held.append(route) if len(held) == 1 else (held.append(None), route.continue_())
    )
    pick(phone, "coat_now")
    pick(phone, "wait")
    phone.wait_for_timeout(500)
    expect(state(phone, "decision")).to_have_text("Sending")
    held[1].continue_()
    expect(state(phone, "decision")).to_contain_text("Saved")
    assert [value for value, _sequence in rows(attempt, "decision")] == ["coat_now", "wait"]


def test_signed_out_meanwhile_nothing_typed_is_lost(screens, phone, attempt, sign_in, trainee):
    screens.allow("status of 403")
    phone.context.clear_cookies()
    give_on(phone, "dew_point", "9.3")
    expect(phone.locator("h1")).to_have_text("Sign in")
    sign_in(phone, trainee).goto(address(attempt))
    expect(state(phone, "dew_point")).to_contain_text("Saved")
    assert rows(attempt, "dew_point") == [(9.3, 1)]
