"""Every page in three lightings, on a desk, on a phone and on a narrow phone: readable, reachable, nothing inline."""

import re

import pytest
from django.core import mail
from django.utils import timezone

from assessments import journey
from courses.models import Lesson, LessonRead, Person
from courses.trade.sums import SUMS
from tests.browser.answering import CODE, answers_like, give, judged, opened
from tests.browser.looking import low, wide
from tests.browser.screens import PHONE
from tests.browser.stage import Stage, at, look, press
from tests.factories import InvitationFactory

pytestmark = [pytest.mark.browser, pytest.mark.looks, pytest.mark.django_db(transaction=True)]

MID = {
    "air_degc": "18",
    "air_rh": "65",
    "surface_degc": "13",
    "around_degc": "18",
    "emissivity": "0.2",
    "before_um": "92,95,90,94,96",
    "after_um": "88,91,87,90,91",
    "index": "1.5",
    "rq_nm": "50",
    "corr_um": "3",
    "angle_deg": "60",
}
OUTCOMES = {
    "satisfactory": "key",
    "not_yet_satisfactory": "no next step at all",
    "critical_fail": "right decision, fuel heater ticked",
    "cannot_certify": "nothing answered",
}


@pytest.fixture
def visitor(open_page, site):
    """Somebody who has not signed in."""
    return Stage(open_page(), site)


@pytest.fixture
def learner(open_page, site, sign_in, trainee):
    """A trainee who has read the first lesson, with one attempt judged and none open."""
    lesson = Lesson.objects.get(code="L24")
    LessonRead.objects.create(person=trainee, lesson=lesson, version=lesson.version, read_at=trainee.joined_at)
    return Stage(sign_in(open_page(), trainee), site, trainee)


def come_in_wrongly(stage: Stage) -> None:
    """Take up an invitation with a password that is too short."""
    stage.go("invitation-accept", "token-of-a-test")
    stage.page.fill("[name=email]", "new@test.example")
    stage.page.fill("[name=name]", "New")
    stage.page.fill("[name=password]", "short")
    press(stage.page, "main [type=submit]")


def sign_in_wrongly(stage: Stage) -> None:
    """Sign in with a password that nobody has."""
    stage.go("account_login")
    stage.page.fill("[name=login]", "nobody@test.example")
    stage.page.fill("[name=password]", "nobody has this one")
    press(stage.page, "main [type=submit]")


def ask_for_a_link(stage: Stage) -> None:
    """Ask for a new password."""
    stage.go("account_reset_password")
    stage.page.fill("[name=email]", "nobody@test.example")
    press(stage.page, "main [type=submit]")


VISITED = {
    "sign-in": at("account_login"),
    "sign-in refused": sign_in_wrongly,
    "invitation": at("invitation-accept", "token-of-a-test"),
    "invitation refused": come_in_wrongly,
    "410": at("invitation-accept", "a-token-nobody-made"),
    "forgotten password": at("account_reset_password"),
    "look into your mail": ask_for_a_link,
    "a used link": at("account_reset_password_from_key", "1", "set-password"),
    "password changed": at("account_reset_password_from_key_done"),
    "by invitation": at("account_signup"),
    "404 of a visitor": lambda stage: stage.page.goto("/nowhere/"),
}


@pytest.mark.parametrize("name", VISITED)
def test_a_page_that_anybody_sees(screens, visitor, name):
    screens.allow("status of 404", "status of 410", "status of 422", "status of 429")
    InvitationFactory()
    assert look(visitor, VISITED[name]) == []


def test_the_page_of_a_new_password(screens, visitor, outsider):
    visitor.go("account_reset_password")
    visitor.page.fill("[name=email]", outsider.email)
    press(visitor.page, "main [type=submit]")
    link = re.search(r"http://\S+", mail.outbox[-1].body)[0]
    assert link.startswith(visitor.site)
    assert look(visitor, lambda stage: stage.page.goto(link)) == []


def with_menu(stage: Stage) -> None:
    """Open the menu of the person."""
    stage.go("home")
    stage.page.locator(".who summary").click()


def with_a_long_name(stage: Stage) -> None:
    """Look at the page as somebody whose name fills a line."""
    Person.objects.filter(pk=stage.person.pk).update(name="Maximiliana Konstantinopoulou-Featherstonehaugh")
    stage.go("home")


def answer_check(stage: Stage) -> None:
    """Answer the first check questions of a lesson, one wrongly."""
    stage.go("lesson-detail", "dew-point")
    for place in (0, 1):
        form = stage.page.locator("form.check").nth(place)
        form.locator("[name=pick]").first.check()
        form.locator("[type=submit]").click()
        stage.page.locator("form.check").nth(place).locator(".alert").wait_for()


def answer_check_on_its_page(stage: Stage) -> None:
    """Answer a check question as a browser without script does."""
    stage.go("lesson-detail", "dew-point")
    stage.page.locator("form.check [name=pick]").first.check()
    with stage.page.expect_navigation():
        stage.page.evaluate("document.querySelector('form.check').submit()")


def look_up(stage: Stage) -> None:
    """Choose the last of everything in the finder of a lesson."""
    stage.go("lesson-detail", "instruments-lie")
    finder = stage.page.locator("[id^=finder-]")
    for box in finder.locator("select").all():
        box.select_option(index=box.locator("option").count() - 1)
    finder.locator("dl.kv").wait_for()


def keep_settings_wrongly(stage: Stage) -> None:
    """Keep settings without a name."""
    stage.go("settings")
    stage.page.evaluate("document.querySelector('[name=name]').required = false")
    stage.page.fill("[name=name]", "")
    press(stage.page, "[name=keep]")


READ = {
    "home": at("home"),
    "menu": with_menu,
    "long name": with_a_long_name,
    "lessons": at("lesson-list"),
    "lesson": at("lesson-detail", "dew-point"),
    "lesson with answers": answer_check,
    "check on its own page": answer_check_on_its_page,
    "second lesson": at("lesson-detail", "instruments-lie"),
    "finder": look_up,
    "calculators": at("sum-list"),
    "scenarios": at("scenario-list"),
    "scenario": at("scenario-detail", CODE),
    "settings": at("settings"),
    "settings refused": keep_settings_wrongly,
    "change the password": at("account_change_password"),
    "sign out": at("account_logout"),
    "404": lambda stage: stage.page.goto("/nowhere/"),
}


@pytest.mark.parametrize("name", READ)
def test_a_page_of_a_trainee(screens, learner, name):
    screens.allow("status of 404", "status of 422")
    judged(learner.person, OUTCOMES["not_yet_satisfactory"])
    assert look(learner, READ[name]) == []


@pytest.mark.parametrize(
    "path", ["/", "/lessons/dew-point/", "/calculators/dew_point/", "/settings/", "attempt", "INS-04"]
)
def test_a_page_without_script(screens, open_page, sign_in, trainee, path):
    screens.allow("status of 503", "webp net::ERR_ABORTED")
    page = sign_in(open_page(*PHONE, script=False), trainee)
    codes = {"attempt": CODE, "INS-04": "INS-04"}
    page.goto(f"/attempts/{opened(trainee, code=codes[path], seed=11).pk}/" if path in codes else path)
    assert wide(page) + low(page) == []


@pytest.mark.parametrize("name", SUMS)
def test_a_calculator_worked_out(learner, name):
    query = "?" + "&".join(f"{one.name}={MID[one.name]}" for one in SUMS[name].inputs if one.name in MID)
    assert look(learner, at("sum-detail", name, query=query)) == []


def test_a_calculator_that_refuses(learner):
    assert look(learner, at("sum-detail", "dew_point", query="?air_degc=warm&air_rh=140")) == []


@pytest.mark.parametrize("mode", ["practice", "paper"])
def test_an_attempt_with_an_answer_kept(learner, mode):
    attempt = opened(learner.person, mode)
    give(attempt, "dew_point", 9.3)
    give(attempt, "next_steps", ["tell_owner"])
    assert look(learner, at("attempt-detail", attempt.pk)) == []
    assert look(learner, at("scenario-detail", CODE)) == []


def test_an_attempt_with_a_value_that_cannot_be_read(screens, learner):
    screens.allow("status of 422")
    attempt = opened(learner.person)

    def type_nonsense(stage: Stage) -> None:
        stage.go("attempt-detail", attempt.pk)
        stage.page.fill("#a-margin", "damp")
        stage.page.locator("#task-margin .st-miss").wait_for()

    def send_nonsense(stage: Stage) -> None:
        stage.go("attempt-detail", attempt.pk)
        stage.page.wait_for_load_state("networkidle")  # what was typed in the last moment of the page before goes first
        with stage.page.expect_navigation():
            stage.page.evaluate("""() => {
                document.querySelector("#a-margin").value = "damp";
                document.querySelector("#task-margin form").submit();
            }""")

    assert look(learner, type_nonsense) == []
    assert look(learner, send_nonsense) == []


def test_an_attempt_with_two_answers_from_two_tabs(learner):
    attempt = opened(learner.person)
    for task, first, second in [("dew_point", 9.3, 8.1), ("decision", "wait", "measure_again")]:
        give(attempt, task, first)
        give(attempt, task, second)
    assert look(learner, at("attempt-detail", attempt.pk)) == []


@pytest.mark.parametrize("outcome", OUTCOMES)
def test_a_verdict(learner, outcome):
    attempt = judged(learner.person, OUTCOMES[outcome], "paper")
    assert attempt.outcome == outcome
    assert look(learner, at("attempt-verdict", attempt.pk)) == []


SEEN = {"INS-04": ["asked", "steps", "zones"], "INS-09": ["asked", "patches"], "INS-01": ["looks"]}
"""Scenarios whose pages hold lists: cells with verdicts, acts, rows, readings, a lamp that moves."""


@pytest.mark.parametrize("code", SEEN)
def test_an_attempt_and_a_verdict_with_something_to_look_at(screens, learner, code):
    screens.allow("status of 503", "webp net::ERR_ABORTED")
    attempt = opened(learner.person, code=code, seed=11)
    key = answers_like(attempt, "key")
    for task in SEEN[code]:
        give(attempt, task, key[task])
    assert look(learner, at("attempt-detail", attempt.pk)) == []
    if attempt.pictures:
        journey.describe(attempt)
        assert look(learner, at("attempt-detail", attempt.pk)) == []
    journey.hand_in(attempt, now=timezone.now())
    assert look(learner, at("attempt-verdict", attempt.pk)) == []


@pytest.mark.parametrize("status", [400, 403, 429, 500])
def test_a_refusal(screens, learner, settings, status):
    settings.ROOT_URLCONF = "tests.browser.broken_urls"
    screens.allow(f"status of {status}")
    faults = look(learner, lambda stage: stage.page.goto(f"/broken/{status}/"), themed=status != 500)
    assert faults == []


def test_the_sheet_of_parts(open_page, site, sign_in, instructor):
    assert look(Stage(sign_in(open_page(), instructor), site, instructor), at("parts")) == []
