"""From a paper that holds to a signature, and back: board, device, sign-off, record, withdrawal; desk and phone."""

import re

import pytest
from django.core.cache import cache
from playwright.sync_api import Page, expect

from assessments.models import Decision
from tests.browser.answering import judged
from tests.browser.looking import axe_faults, wide
from tests.browser.screens import DESK, PHONE
from tests.factories import PASSWORD
from tests.sittings import code_now

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]


def code_of(key: str) -> str:
    """Return what a device shows now; a code that was used a moment ago may be used again."""
    cache.clear()
    return code_now(key, seconds=12)


def set_up_device(page: Page) -> str:
    """Set up a code device on the way to a signature; return its key."""
    page.get_by_role("link", name="Set up your code device first").click()
    if page.get_by_role("button", name="It is me").count():
        page.get_by_label("Password").fill(PASSWORD)
        page.get_by_role("button", name="It is me").click()
    expect(page.locator("h1")).to_have_text("Set up a code device")
    page.get_by_text("Type the key instead").click()
    key = re.sub(r"\s", "", page.locator("p.code").inner_text())
    page.get_by_label("Code").fill(code_of(key))
    page.get_by_role("button", name="Set it up").click()
    expect(page.locator("h1")).to_have_text("Recovery codes")
    page.get_by_role("link", name="I have kept them. Go on").click()
    return key


def sign(page: Page, key: str) -> None:
    """Sign, once without having read, once rightly."""
    expect(page.locator("h1")).to_have_text("COA2 Read the day: sign for Tara Trainee")
    expect(page.locator(".deed")).to_contain_text("judge Tara Trainee competent in COA2 Read the day")
    page.get_by_label("I have read the evidence").check()
    page.get_by_label("Six-digit code").fill("12345")
    page.get_by_role("button", name="Sign COA2 for Tara Trainee").click()
    expect(page.locator("main")).to_contain_text("The code has six digits. This one has five.")
    page.get_by_label("Six-digit code").fill(code_of(key))
    page.get_by_role("button", name="Sign COA2 for Tara Trainee").click()
    expect(page.locator("main")).to_contain_text("Signed. It stands on the record of Tara Trainee.")


def withdraw(page: Page, key: str) -> None:
    """Take the signature back, with a reason."""
    page.get_by_role("link", name="Withdraw").click()
    page.get_by_label("Why").fill("I opened the wrong record.")
    page.get_by_label("Six-digit code").fill(code_of(key))
    page.locator("main").get_by_role("button", name="Withdraw").click()
    expect(page.locator("main")).to_contain_text("both stay on the record")


@pytest.mark.parametrize("size", [DESK, PHONE], ids=["desk", "phone"])
def test_from_a_paper_to_a_signature_and_back(screens, open_page, sign_in, remote, trainee, signer, size):
    screens.allow("status of 422")
    judged(trainee, "key", "paper")
    page = sign_in(open_page(*size), signer)
    page.goto("/cohorts/")
    expect(page.locator("h1")).to_have_text("Lantern")
    page.get_by_role("link", name="Look and sign").click()
    key = set_up_device(page)
    assert (axe_faults(page), wide(page)) == ([], [])
    sign(page, key)
    page.goto(f"/record/{trainee.handle}/")
    expect(page.locator("main")).to_contain_text("1 of 31 elements is signed.")
    expect(page.locator("main")).to_contain_text("none altered")
    page.get_by_role("link", name="See what was decided").first.click()
    withdraw(page, key)
    page.goto(f"/record/{trainee.handle}/")
    expect(page.locator("main")).to_contain_text("I opened the wrong record.")
    expect(page.locator("main")).to_contain_text("0 of 31 elements are signed. One waits for a signature.")
    assert [one.kind for one in Decision.objects.all()] == ["signed", "withdrawn"]
