"""Setting up a code device, its recovery codes, and coming back."""

import base64
import hashlib
import hmac
import time

import pytest
from allauth.mfa.models import Authenticator
from django.core.cache import cache
from django.urls import reverse

from courses import proofs
from tests.factories import PASSWORD, PersonFactory

pytestmark = pytest.mark.django_db
BACK = "/settings/?from=sign-off"


def code_of(secret, at=None):
    """Return the code of a secret now, worked out after RFC 4226, section 5.3."""
    step = int((time.time() if at is None else at) // 30)
    mac = hmac.new(base64.b32decode(secret), step.to_bytes(8, "big"), hashlib.sha1).digest()
    place = mac[-1] & 15
    return f"{(int.from_bytes(mac[place : place + 4], 'big') & 0x7FFFFFFF) % 10**6:06d}"


@pytest.fixture
def person(client, school):
    """Somebody who is signed in and has just shown to be themselves."""
    person = PersonFactory()
    client.force_login(person)
    client.post(reverse("account_reauthenticate"), {"password": PASSWORD})
    return person


def set_up(client, url):
    """Set a code device up from `url`; return the secret and the answer."""
    secret = client.get(url).context["form"].secret
    return secret, client.post(url, {"code": code_of(secret)})


def test_the_key_stands_as_a_picture_and_in_groups_of_letters(client, person):
    page = client.get(proofs.setup_url(BACK))
    secret = page.context["form"].secret
    text = page.content.decode()
    assert "".join(page.context["groups"]) == secret
    assert [len(group) for group in page.context["groups"]] == [4] * 8
    assert 'src="data:image/svg+xml;base64,' in text
    assert f'<span class="nb">{secret[:4]}</span>' in text


def test_a_device_is_set_up_by_its_first_code_which_is_used_up_by_that(client, person, rf):
    secret, answer = set_up(client, reverse("mfa_activate_totp"))
    assert (answer.status_code, answer.url) == (302, reverse("mfa_view_recovery_codes"))
    assert proofs.has_device(person)
    assert secret not in str(Authenticator.objects.get(type="totp").data)
    request = rf.post("/")
    request.user, request.session = person, client.session
    with pytest.raises(proofs.ProofRefused, match="has been used"):
        proofs.by_code(request, code_of(secret), now=None)


def test_whoever_came_to_set_up_a_device_goes_back_where_they_were(client, person):
    _secret, answer = set_up(client, proofs.setup_url(BACK))
    codes = client.get(answer.url)
    assert codes.context["back"] == BACK
    assert f'href="{BACK}"' in codes.content.decode()


def test_where_the_codes_exist_the_way_back_is_straight(client, person):
    client.post(
        reverse("mfa_activate_totp"), {"code": code_of(client.get(reverse("mfa_activate_totp")).context["form"].secret)}
    )
    Authenticator.objects.filter(type="totp").delete()
    cache.clear()
    _secret, answer = set_up(client, proofs.setup_url(BACK))
    assert answer.url == BACK


@pytest.mark.parametrize("away", ["https://elsewhere.example/", "//elsewhere.example/", "javascript:alert(1)"])
def test_nobody_is_led_to_another_host(client, person, away):
    _secret, answer = set_up(client, proofs.setup_url(away))
    assert answer.url == reverse("mfa_view_recovery_codes")
    page = client.get(f"{answer.url}?next={away}")
    assert page.context["back"] is None
    assert f'href="{away}"' not in page.content.decode()


def test_a_wrong_code_sets_up_nothing_and_says_so(client, person):
    client.get(reverse("mfa_activate_totp"))
    page = client.post(reverse("mfa_activate_totp"), {"code": "000000"})
    assert "That code is not right or has been used." in page.content.decode()
    assert not proofs.has_device(person)


def test_setting_up_asks_first_whether_it_is_still_the_same_person(client, school):
    client.force_login(PersonFactory())
    answer = client.get(proofs.setup_url(BACK))
    assert answer.url.startswith(reverse("account_reauthenticate"))
    done = client.post(answer.url, {"password": PASSWORD})
    assert done.url == proofs.setup_url(BACK)


def test_recovery_codes_are_shown_renewed_and_downloaded(client, person):
    set_up(client, reverse("mfa_activate_totp"))
    first = client.get(reverse("mfa_view_recovery_codes")).context["unused_codes"]
    assert len(first) == 10
    download = client.get(reverse("mfa_download_recovery_codes"))
    assert download.content.decode().split() == first
    client.post(reverse("mfa_generate_recovery_codes"))
    second = client.get(reverse("mfa_view_recovery_codes")).context["unused_codes"]
    assert set(first).isdisjoint(second)


def test_removing_the_device_takes_the_recovery_codes_along(client, person):
    set_up(client, reverse("mfa_activate_totp"))
    page = client.get(reverse("mfa_deactivate_totp"))
    assert "Recovery codes go with the last device." in page.content.decode()
    client.post(reverse("mfa_deactivate_totp"))
    assert not Authenticator.objects.exists()


def test_the_page_of_signing_in_says_what_stands_and_what_is_left(client, person):
    assert "None yet. An app on your phone" in client.get(reverse("mfa_index")).content.decode()
    set_up(client, reverse("mfa_activate_totp"))
    text = client.get(reverse("mfa_index")).content.decode()
    assert "Remove the code device" in text
    assert "10 codes are left." in text
    assert reverse("mfa_add_webauthn") in text


def test_a_passkey_is_listed_renamed_and_removed(client, person):
    key = Authenticator.objects.create(user=person, type="webauthn", data={"name": "Shop phone", "credential": {}})
    assert "Shop phone" in client.get(reverse("mfa_list_webauthn")).content.decode()
    client.post(reverse("mfa_edit_webauthn", args=[key.pk]), {"name": "<b>Old</b>"})
    assert "Remove &lt;b&gt;Old&lt;/b&gt;" in client.get(reverse("mfa_remove_webauthn", args=[key.pk])).content.decode()
    client.post(reverse("mfa_remove_webauthn", args=[key.pk]))
    assert not proofs.has_passkey(person)


def test_another_persons_passkey_is_not_there(client, person):
    key = Authenticator.objects.create(user=PersonFactory(), type="webauthn", data={"name": "Theirs", "credential": {}})
    for name in ("mfa_edit_webauthn", "mfa_remove_webauthn"):
        assert client.get(reverse(name, args=[key.pk])).status_code == 404
        assert client.post(reverse(name, args=[key.pk]), {"name": "Mine"}).status_code == 404
    assert Authenticator.objects.get().data["name"] == "Theirs"


ADDRESSES = [
    "mfa_index",
    "mfa_activate_totp",
    "mfa_deactivate_totp",
    "mfa_view_recovery_codes",
    "mfa_generate_recovery_codes",
    "mfa_download_recovery_codes",
    "mfa_reauthenticate",
    "mfa_list_webauthn",
    "mfa_add_webauthn",
    "mfa_reauthenticate_webauthn",
]


@pytest.mark.parametrize("name", ADDRESSES)
def test_a_visitor_is_sent_to_the_sign_in(client, school, name):
    answer = client.get(reverse(name))
    assert (answer.status_code, answer.url.split("?")[0]) == (302, reverse("account_login"))


def test_secrets_are_kept_by_no_cache(client, person):
    set_up(client, reverse("mfa_activate_totp"))
    names = ["mfa_view_recovery_codes", "mfa_download_recovery_codes"]
    pages = [client.get(reverse(name)) for name in names]
    Authenticator.objects.filter(type="totp").delete()
    pages.append(client.get(reverse("mfa_activate_totp")))
    assert ["no-store" in page["Cache-Control"] for page in pages] == [True] * 3
