"""The pages of a code device and its recovery codes, in three lightings, on a desk, a phone and a narrow phone."""

import pytest
from allauth.mfa.recovery_codes.internal.auth import RecoveryCodes
from allauth.mfa.totp.internal.auth import TOTP, generate_totp_secret

from tests.browser.stage import Stage, at, look, press
from tests.factories import PASSWORD

pytestmark = [pytest.mark.browser, pytest.mark.looks, pytest.mark.django_db(transaction=True)]


@pytest.fixture
def stage(open_page, site, sign_in, instructor):
    """The screen of an instructor who has just given the password again."""
    page = sign_in(open_page(), instructor)
    page.goto("/account/reauthenticate/")
    page.fill("[name=password]", PASSWORD)
    press(page, "main [type=submit]")
    return Stage(page, site, instructor)


@pytest.mark.parametrize("name", ["mfa_index", "mfa_activate_totp"])
def test_before_there_is_a_device(stage, name):
    assert look(stage, at(name)) == []


@pytest.mark.parametrize(
    "name", ["mfa_index", "mfa_view_recovery_codes", "mfa_generate_recovery_codes", "mfa_deactivate_totp"]
)
def test_once_there_is_one(stage, name):
    TOTP.activate(stage.person, generate_totp_secret())
    RecoveryCodes.activate(stage.person)
    assert look(stage, at(name)) == []
