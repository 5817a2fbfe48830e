"""The whole way of one trainee, from the invitation to a paper that holds: on a desk, and on a phone without script."""

from datetime import timedelta

import pytest
from django.utils import timezone
from playwright.sync_api import Page, expect

from assessments.models import Attempt
from courses.actions import invite
from courses.models import Invitation, LessonRead, Person
from courses.models.enrolment import Role
from tests.browser.answering import answers_like, rows, write
from tests.browser.screens import DESK, PHONE

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]

EMAIL, PASSWORD = "new.hand@test.example", "gel coat under a lamp"


def come_in(page: Page, cohort) -> Person:
    """Follow an invitation link and become somebody."""
    invitation, token = invite(role=Role.TRAINEE, cohort=cohort, email="", by=None, now=timezone.now())
    page.goto(f"/come-in/{token}/")
    expect(page.locator("h1")).to_have_text("Come in")
    expect(page.locator(".lead")).to_contain_text("Test Yard")
    page.get_by_label("Email").fill(EMAIL)
    page.get_by_label("Your name").fill("Nell Newhand")
    page.get_by_label("Password").fill(PASSWORD)
    page.get_by_text("Metric", exact=True).click()
    page.get_by_role("button", name="Come in").click()
    expect(page.locator("h1")).to_have_text("Today")
    person = Person.objects.get(email=EMAIL)
    assert Invitation.objects.get(pk=invitation.pk).used_by == person
    assert (person.temperature, person.memberships.get().cohort) == ("degc", cohort)
    return person


def sign_in_by_form(page: Page) -> None:
    """Leave and come back with the password."""
    page.locator(".who summary").click()
    page.get_by_role("button", name="Sign out").click()
    expect(page.locator("h1")).to_have_text("Sign in")
    page.get_by_label("Email").fill(EMAIL)
    page.get_by_label("Password").fill(PASSWORD)
    page.locator("main").get_by_role("button", name="Sign in").click()
    expect(page.locator("h1")).to_have_text("Today")


def answer_a_check(page: Page, script: bool) -> None:
    """Answer a check question wrongly, then rightly; with script the page stays."""
    lesson = page.url
    for pick, said in [("is over the line", "That doesn’t hold."), ("Measure again: contact probe", "That holds.")]:
        check = page.locator("form.check").first
        check.get_by_label(pick).check()
        check.get_by_role("button", name="See what follows").click()
        expect(page.locator("form.check").first.locator(".alert")).to_contain_text(said)
        assert (page.url == lesson) == script
    if not script:
        page.get_by_role("link", name="Back to the lesson").click()
        expect(page.locator("h1")).to_have_text("Air, surface and the three-degree rule")


def work_out(page: Page, script: bool) -> None:
    """Use the first calculator of the lesson; with script it answers in place."""
    lesson = page.url
    form = page.locator("form[data-live]").first
    form.get_by_label("Air temperature").fill("20")
    form.get_by_label("humidity").fill("60")
    form.get_by_label("Surface").fill("53.6 °F")
    if not script:
        form.get_by_role("button", name="Work it out").click()
    answer = page.locator(".read").first
    expect(answer.locator("output").first).to_have_text("0.0\u00a0K")
    expect(answer).to_contain_text("12.0\u00a0°C")
    assert (page.url == lesson) == script
    if not script:
        page.go_back()


def read_lesson(page: Page, title: str) -> None:
    """Say that the lesson on the page was read."""
    expect(page.locator("h1")).to_have_text(title)
    page.get_by_role("button", name="I have read this").click()


def answer_all(page: Page, attempt: Attempt, answers, script: bool) -> None:
    """Give every answer; each is kept by itself, and the strip counts it."""
    for number, (task, value) in enumerate(answers.items(), start=1):
        write(page, attempt, task, value)
        form = page.locator(f"#task-{task} form[data-answer]")
        if script:
            page.keyboard.press("Tab")
        else:
            form.get_by_role("button", name="Keep this answer").click()
        expect(form.locator("[data-state]")).to_contain_text("Saved")
        expect(page.locator(".strip")).to_contain_text(f"{number} of 5 answered")
        assert rows(attempt, task)[-1][0] == (pytest.approx(value) if isinstance(value, float) else kept(value))


def kept(value):
    """Return an answer as a row keeps it."""
    return list(value) if isinstance(value, tuple) else value


def begin(page: Page, person: Person, button: str, mode: str) -> Attempt:
    """Begin an attempt on the page of the scenario."""
    expect(page.locator("h1")).to_have_text("Two thermometers")
    page.get_by_role("button", name=button).click()
    expect(page.locator(".strip")).to_contain_text(f"{mode}, attempt 1")
    return Attempt.objects.by(person).open().get()


def hand_in(page: Page, attempt: Attempt, outcome: str, word: str) -> None:
    """Hand in and read how it came out."""
    page.get_by_role("button", name="Hand in for marking").click()
    expect(page.locator(".verdict .word")).to_have_text(word)
    attempt.refresh_from_db()
    assert (attempt.is_open, attempt.outcome) == (False, outcome)
    assert attempt.findings.count() == 15
    assert attempt.digest == attempt.rule_book.digest


@pytest.mark.parametrize(("size", "script"), [(DESK, True), (PHONE, False)], ids=["desk", "phone without script"])
def test_from_the_invitation_to_a_paper_that_holds(open_page, remote, size, script):
    page = open_page(*size, script=script)
    person = come_in(page, remote)
    learn(page, person, script)
    sign_in_by_form(page)
    practise(page, person, script)
    sit_the_paper(page, person, script)
    page.get_by_role("link", name="Today").click()
    expect(page.locator("main .list li").first).to_be_visible()
    assert [one.outcome for one in Attempt.objects.by(person)] == ["satisfactory", "critical_fail"]


def learn(page: Page, person: Person, script: bool) -> None:
    """Begin where Today points, then read both lessons on the air, trying what is in them."""
    expect(page.get_by_role("link", name="Read it")).to_have_attribute("href", "/lessons/three-lights/")
    page.goto("/lessons/dew-point/")
    expect(page.locator("h1")).to_have_text("Air, surface and the three-degree rule")
    answer_a_check(page, script)
    work_out(page, script)
    read_lesson(page, "Air, surface and the three-degree rule")
    read_lesson(page, "When the reading is wrong")
    assert set(LessonRead.objects.filter(person=person).values_list("lesson__code", flat=True)) == {"L24", "L25"}


def practise(page: Page, person: Person, script: bool) -> None:
    """Practise with one critical mistake, and be told which and why."""
    page.goto("/scenarios/COA-01/")
    attempt = begin(page, person, "Draw facts and begin", "Practice")
    expect(page.locator("[data-left]")).to_have_count(0)
    answers = answers_like(attempt, "right decision, fuel heater ticked")
    answer_all(page, attempt, answers, script)
    hand_in(page, attempt, "critical_fail", "Failed on a critical rule")
    finding = page.locator(".finding.f-miss").first
    expect(finding).to_contain_text("critical")
    expect(finding).to_contain_text("No fuel heater in the shut shed")
    expect(finding).to_contain_text("Carbon monoxide, a flame in solvent vapour, and water into the air.")


def sit_the_paper(page: Page, person: Person, script: bool) -> None:
    """Sit the paper under its clock, with every answer right."""
    page.get_by_role("link", name="Scenarios").first.click()
    page.locator("main").get_by_role("link", name="Two thermometers").click()
    attempt = begin(page, person, "Sit the paper, 12 min", "Paper")
    expect(page.locator("[data-left]")).to_have_text("12\u00a0min left")
    assert attempt.deadline - attempt.opened_at == timedelta(minutes=12)
    answer_all(page, attempt, answers_like(attempt, "key"), script)
    hand_in(page, attempt, "satisfactory", "Satisfactory")
    expect(page.locator(".verdict")).to_contain_text("Every rule that applies is met.")
