"""Coming in is by invitation; signing in is limited; mail waits in a folder."""

import pytest
from allauth.mfa.models import Authenticator
from allauth.mfa.recovery_codes.internal.auth import RecoveryCodes
from allauth.mfa.totp.internal.auth import TOTP
from django.core import mail
from django.urls import reverse

from courses.accounts import Devices
from courses.models import Person
from tests.factories import PASSWORD, PersonFactory

pytestmark = pytest.mark.django_db


def sign_in(client, email="pia@test.example", password=PASSWORD):
    return client.post(reverse("account_login"), {"login": email, "password": password})


def test_the_street_door_is_shut(client, school):
    form = {"email": "new@test.example", "password1": "a long enough one"}
    pages = [client.get(reverse("account_signup")), client.post(reverse("account_signup"), form)]
    assert all("invitation" in page.content.decode() for page in pages)
    assert not Person.objects.exists()


def test_a_person_signs_in_by_address_whatever_its_capitals(client, school):
    PersonFactory(email="pia@test.example")
    answer = sign_in(client, "PIA@test.example")
    assert (answer.status_code, answer.url) == (302, "/")


def test_a_wrong_password_says_nothing_of_whether_the_address_belongs_here(client, school):
    PersonFactory(email="pia@test.example")
    pages = [sign_in(client, password="wrong"), sign_in(client, "nobody@test.example", "wrong")]
    said = [page.context["form"].non_field_errors() for page in pages]
    assert said[0] == said[1]
    assert said[0]


def test_too_many_wrong_passwords_shut_the_door_for_a_while(client, school):
    PersonFactory(email="pia@test.example")
    for _try in range(6):
        sign_in(client, password="wrong")
    page = sign_in(client)
    assert page.status_code == 200
    assert "Too many" in page.content.decode()


def test_a_person_who_left_cannot_sign_in(client, school):
    PersonFactory(email="pia@test.example", is_active=False)
    sign_in(client)
    assert client.get(reverse("home")).status_code == 302


def test_a_new_session_begins_at_sign_in_and_ends_at_sign_out(client, school):
    PersonFactory(email="pia@test.example")
    client.get(reverse("account_login"))
    client.session["kept"] = 1
    before = client.session.session_key
    sign_in(client)
    assert client.session.session_key != before
    client.post(reverse("account_logout"))
    assert client.get(reverse("home")).status_code == 302


def test_a_forgotten_password_sends_a_link_and_tells_no_stranger(client, school):
    PersonFactory(email="pia@test.example")
    answers = [
        client.post(reverse("account_reset_password"), {"email": email})
        for email in ("pia@test.example", "nobody@test.example")
    ]
    assert answers[0].url == answers[1].url
    (letter,) = [one for one in mail.outbox if one.to == ["pia@test.example"]]
    assert "/account/password/reset/key/" in letter.body


SECRET = "JBSWY3DPEHPK3PXPJBSWY3DPEHPK3PXP"


@pytest.fixture
def holder(school):
    """Somebody with a code device and recovery codes."""
    person = PersonFactory(email="pia@test.example")
    TOTP.activate(person, SECRET)
    RecoveryCodes.activate(person)
    return person


def test_secrets_of_devices_are_sealed_and_open_again(holder):
    kept = {one.type: one.data for one in Authenticator.objects.filter(user=holder)}
    assert SECRET not in str(kept)
    assert Devices().decrypt(kept["totp"]["secret"]) == SECRET


def test_an_earlier_key_of_the_site_still_opens_them(holder, settings):
    settings.SECRET_KEY_FALLBACKS = [settings.SECRET_KEY]
    settings.SECRET_KEY = "another key of the site, 32 characters or more"
    assert Devices().decrypt(Authenticator.objects.get(type="totp").data["secret"]) == SECRET


def test_under_a_lost_key_no_code_fits(holder, settings):
    settings.SECRET_KEY = "another key of the site, 32 characters or more"
    sealed = Authenticator.objects.get(type="totp").data["secret"]
    tries = {Devices().decrypt(sealed) for _try in range(3)}
    assert len(tries) == 3
    assert SECRET not in tries


def test_after_a_lost_key_a_person_comes_in_and_is_told_to_set_up_again(client, holder, settings):
    sign_in(client)
    assert "_auth_user_id" not in client.session
    settings.SECRET_KEY = "another key of the site, 32 characters or more"
    client.cookies.clear()
    page = sign_in(client)
    assert (page.status_code, page.url) == (302, "/")
    assert "your code device no longer counts" in client.get(page.url).content.decode()
    assert not Authenticator.objects.exists()


def test_a_wrong_password_puts_no_device_away(client, holder, settings):
    settings.SECRET_KEY = "another key of the site, 32 characters or more"
    sign_in(client, password="wrong")
    assert Authenticator.objects.count() == 2


def test_a_stranger_who_guesses_does_not_shut_out_the_owner(client, school):
    PersonFactory(email="pia@test.example")
    for _try in range(8):
        client.post(
            reverse("account_login"), {"login": "pia@test.example", "password": "wrong"}, REMOTE_ADDR="192.0.2.66"
        )
    assert sign_in(client).status_code == 302


def test_devices_are_named_after_the_school_and_bound_to_its_name(holder, settings):
    settings.SITE_URL = "https://school.example"
    assert Devices().get_public_key_credential_rp_entity() == {"id": "school.example", "name": "Test Yard"}
    assert Devices().generate_authenticator_name(holder, "webauthn") == "Passkey 1"


def test_ways_of_proving_it_again_have_our_names(client, holder):
    client.force_login(holder)
    page = client.get(reverse("account_reauthenticate"))
    assert "A code of your device, or a recovery code" in page.content.decode()
