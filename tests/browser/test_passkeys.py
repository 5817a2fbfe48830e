"""A passkey in a real browser, with an authenticator that the browser plays: added, named, pressed, removed."""

import pytest
from django.contrib.sessions.backends.db import SessionStore
from django.urls import reverse
from django.utils import timezone

from courses import proofs
from tests.browser.looking import axe_faults, inline, low, wide
from tests.browser.screens import PHONE
from tests.browser.stage import press
from tests.factories import PASSWORD

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]

FINGER = {
    "protocol": "ctap2",
    "transport": "internal",
    "hasResidentKey": True,
    "hasUserVerification": True,
    "isUserVerified": True,
    "automaticPresenceSimulation": True,
}


@pytest.fixture
def page(open_page, sign_in, instructor):
    """The phone of an instructor, with a finger on its reader."""
    phone = open_page(*PHONE)
    driver = phone.context.new_cdp_session(phone)
    driver.send("WebAuthn.enable")
    driver.send("WebAuthn.addVirtualAuthenticator", {"options": FINGER})
    return sign_in(phone, instructor)


def seen(page):
    """Return what is wrong with the page as it stands."""
    return wide(page) + inline(page) + axe_faults(page) + low(page)


def add(page, name):
    """Add a passkey under a name, with the password where it is asked for."""
    page.goto(reverse("mfa_add_webauthn"))
    if "reauthenticate" in page.url:
        page.fill("[name=password]", PASSWORD)
        press(page, "main [type=submit]")
    assert seen(page) == []
    page.fill("[name=name]", name)
    press(page, "main [type=submit]")


def request_of(page, rf, person):
    """Return a request as the server gets it from this browser."""
    request = rf.post("/")
    cookie = next(one for one in page.context.cookies() if one["name"] == "sessionid")
    request.user, request.session = person, SessionStore(cookie["value"])
    return request


def test_a_passkey_is_added_named_pressed_for_one_signature_and_removed(page, rf, instructor):
    add(page, "Shop phone")
    assert page.url.endswith(reverse("mfa_view_recovery_codes"))
    assert proofs.has_passkey(instructor)
    page.goto(proofs.passkey_url(reverse("settings")))
    assert seen(page) == []
    press(page, "main form[data-passkey] [type=submit]")
    assert page.url.endswith(reverse("settings"))
    assert proofs.by_passkey(request_of(page, rf, instructor), now=timezone.now()).method == "webauthn"
    page.goto(reverse("mfa_list_webauthn"))
    assert seen(page) == []
    press(page, "main li >> text=Rename")
    page.fill("[name=name]", "Old phone")
    press(page, "main [type=submit]")
    press(page, "main li >> text=Remove")
    assert "Remove Old phone" in page.inner_text("h1")
    press(page, "main [type=submit]")
    assert not proofs.has_passkey(instructor)


def test_a_passkey_lets_in_after_the_password(page, instructor):
    add(page, "Shop phone")
    page.context.clear_cookies()
    page.goto(reverse("account_login"))
    page.fill("[name=login]", instructor.email)
    page.fill("[name=password]", PASSWORD)
    press(page, "main [type=submit]")
    assert page.url.endswith(reverse("mfa_authenticate"))
    assert seen(page) == []
    press(page, "main form[data-passkey] [type=submit]")
    assert page.url.removesuffix("/").endswith(page.url.split("/")[2])


def test_a_finger_that_nobody_knows_is_told_so_and_nothing_is_sent(open_page, sign_in, page, instructor):
    add(page, "Shop phone")
    stranger = page.context.new_page()
    driver = page.context.new_cdp_session(stranger)
    driver.send("WebAuthn.enable")
    driver.send("WebAuthn.addVirtualAuthenticator", {"options": FINGER})
    stranger.goto(proofs.passkey_url(reverse("settings")))
    stranger.click("main form[data-passkey] [type=submit]")
    stranger.locator("[data-passkey-said]").wait_for()
    assert "reauthenticate" in stranger.url
