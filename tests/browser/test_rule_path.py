"""A rule from words to version: written without a line of code, tried, kept with an answer, reviewed, published."""

import pytest
from playwright.sync_api import Page, expect

from assessments.models import RuleBook, Scenario
from tests.browser.looking import axe_faults, wide

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]
RULE = "Dew point not over the air"
TEST = "answer.dew_point <= facts.air_degc"
MOVING = ".htmx-request, .htmx-swapping, .htmx-settling, .htmx-added"
"""What is being put into the page and takes no events yet."""


def choose(page: Page, label: str, option: str) -> None:
    """Choose an option of a gap and wait until what depends on it has come."""
    with page.expect_response(lambda answer: answer.request.method == "POST"):
        page.get_by_label(label, exact=True).select_option(label=option)
    expect(page.locator(MOVING)).to_have_count(0)


def write(page: Page) -> None:
    """Put the test together from a phrase."""
    page.get_by_label("What is right, as the trainee reads it").fill(RULE)
    choose(page, "A phrase", "… is at most …")
    choose(page, "Which number", "the trainee’s dew point")
    choose(page, "What the limit is", "“Air in the shed”")
    page.get_by_role("button", name="Put it in").click()
    expect(page.get_by_label("Met when")).to_have_value(TEST)
    expect(page.locator("#at-test")).to_contain_text("The trainee’s dew point is at most “Air in the shed”.")


def break_and_mend(page: Page) -> None:
    """Type a mistake: it is marked at its characters, with what was meant; then take it back."""
    page.get_by_label("Met when").fill("answer.dew_pont <= facts.air_degc")
    expect(page.locator("#at-test .wrong-at u")).to_have_text("dew_pont")
    expect(page.locator("#at-test")).to_contain_text("There is no field 'dew_pont'; did you mean 'dew_point'?")
    expect(page.locator("#tried")).to_contain_text("Write a test that is sound, and its verdict stands here.")
    page.get_by_label("Met when").fill(TEST)
    expect(page.locator("#tried .st")).to_have_text("Met")


def try_own(page: Page) -> None:
    """Try an answer of one's own that breaks the rule; the verdict and the step that decided come at once."""
    choose(page, "With this answer", "My own")
    page.get_by_label("Dew point", exact=True).fill("40")
    expect(page.locator("#tried .st")).to_have_text("Not met")
    expect(page.locator("#tried .trace")).to_contain_text("dew point 40.0\u00a0°C is not at most")


def test_a_rule_is_written_tried_reviewed_and_published_without_typing_code(open_page, site, sign_in, author, reviewer):
    page = sign_in(open_page(), author)
    page.goto(f"{site}/rules/")
    page.get_by_role("link", name="Two thermometers").click()
    page.get_by_role("button", name="Write version 2").click()
    expect(page.locator("main")).to_contain_text("Sound, and nothing is changed yet.")
    with page.expect_event("load"):
        page.get_by_role("link", name="Write a rule").click()
    write(page)
    break_and_mend(page)
    try_own(page)
    page.get_by_label("Points", exact=True).last.fill("1")
    page.get_by_label("The reason, as the trainee reads it").fill("No air holds more water than it can.")
    page.get_by_label("What it stands on").select_option("practice")
    page.get_by_label("Keep this answer as known, named").fill("a dew point over the air")
    assert (axe_faults(page), wide(page)) == ([], [])
    page.get_by_role("button", name="Keep rule and answer").click()
    expect(page.locator("main")).to_contain_text("Sound. It can go to review.")
    expect(page.locator("main")).to_contain_text("a dew point over the air")
    page.get_by_role("button", name="Send it to review").click()
    expect(page.locator("main")).to_contain_text("You wrote in it, so somebody else publishes it.")

    other = sign_in(open_page(), reviewer)
    other.goto(page.url)
    expect(other.get_by_role("listitem").filter(has_text=RULE)).to_contain_text("new")
    other.get_by_role("button", name="Publish it as version 2").click()
    expect(other.locator("main")).to_contain_text("COA-01, version 2, in use.")
    expect(other.locator("main")).to_contain_text("written by Ada Author, reviewed by Rhea Reviewer")
    book = RuleBook.objects.get(code="COA-01", version=2)
    assert (Scenario.objects.get(code="COA-01").rule_book, book.book.rules[-1].test) == (book, TEST)


def test_without_script_a_rule_is_kept_and_tried_by_buttons(open_page, site, sign_in, draft, author):
    page = sign_in(open_page(script=False), author)
    page.goto(f"{site}/drafts/{draft.pk}/rules/COA-01.2/")
    page.get_by_label("With this answer").select_option("nothing answered")
    page.get_by_role("button", name="Try it").click()
    expect(page.locator("#tried .st")).to_have_text("Not answered")
    page.get_by_text("Write it in words").click()
    page.get_by_label("A phrase").select_option("at_least")
    page.get_by_role("button", name="Show its gaps").click()
    page.get_by_label("Which number").select_option("answer.margin")
    page.get_by_role("button", name="Show its gaps").click()
    page.get_by_label("or typed").fill("3")
    page.get_by_label("How it joins what stands there").select_option("instead")
    page.get_by_role("button", name="Put it in").click()
    expect(page.get_by_label("Met when")).to_have_value("answer.margin >= 3")
    page.get_by_label("Points", exact=True).last.fill("3")
    page.get_by_role("button", name="Keep the rule").click()
    expect(page.locator("main")).to_contain_text("COA-01.2 is kept.")
    draft.refresh_from_db()
    assert draft.row("COA-01.2")["points"] == 3
