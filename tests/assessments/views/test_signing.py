"""Signing as pages: each refusal its own sentence, and nothing written."""

import re
from html import unescape

import pytest
from allauth.mfa.totp.internal.auth import TOTP, generate_totp_secret
from django.core.cache import cache
from django.urls import reverse

from assessments import journey
from assessments.models import Decision
from courses.proofs import Proof
from tests.sittings import code_now

pytestmark = pytest.mark.django_db


@pytest.fixture
def device(signer):
    """Return a function that gives the code the signer's device shows."""
    secret = generate_totp_secret()
    TOTP.activate(signer, secret)
    return lambda: code_now(secret)


@pytest.fixture
def ready(sit, trainee):
    """A trainee whose COA2 waits for a signature."""
    sit(trainee)
    return trainee


@pytest.fixture
def page(client, signer, ready):
    """The page to sign: its address, and a function that sends it."""
    client.force_login(signer)
    url = reverse("sign-off", args=[ready.handle, "COA2"])

    class Page:
        shown = sealed(client.get(url))

        def send(self, **given):
            answer = client.post(url, {"shown": self.shown, "read": "on", **given})
            text = unescape(answer.content.decode())
            return answer.status_code, text

        def open_again(self):
            self.shown = sealed(client.get(url))

    return Page()


def sealed(answer):
    found = re.search(r'name="shown" value="([^"]+)"', answer.content.decode())
    return unescape(found[1]) if found else ""


def test_whoever_has_no_device_is_led_to_set_one_up(client, signer, ready):
    client.force_login(signer)
    text = client.get(reverse("sign-off", args=[ready.handle, "COA2"])).content.decode()
    assert reverse("mfa_activate_totp") in text
    assert 'name="code"' not in text


def test_the_page_says_exactly_what_is_signed(client, signer, device, ready):
    client.force_login(signer)
    text = unescape(client.get(reverse("sign-off", args=[ready.handle, "COA2"])).content.decode())
    words = "I, <b>Sigrid Signer</b>, have examined the evidence listed here and judge <b>Tara Trainee</b> competent in"
    assert words in text
    assert "requirement version 0" in text
    assert reverse("attempt-verdict", args=[ready.attempts.get().pk]) in text


def test_a_code_signs(page, device, signer, ready):
    page.open_again()
    status, _text = page.send(code=device())
    made = Decision.objects.get()
    assert (status, made.kind, made.by, made.proof) == (302, "signed", signer, "totp")


@pytest.mark.parametrize(
    ("given", "status", "sentence"),
    [
        ({"code": "12345"}, 422, "The code has six digits. This one has five."),
        ({"code": "000000"}, 422, "That code is not right or has been used"),
        ({"code": ""}, 422, "Enter the six digits your code device shows."),
        ({"read": "", "code": "000000"}, 422, "Read the evidence first"),
        ({"shown": "forged", "code": "000000"}, 409, "words that are not ours"),
    ],
)
def test_what_does_not_prove_signs_nothing(page, device, given, status, sentence):
    page.open_again()
    found, text = page.send(**given)
    assert (found, Decision.objects.count()) == (status, 0)
    assert sentence in text


def test_a_code_is_good_once(page, device, signer, ready, sit):
    page.open_again()
    code = device()
    page.send(code=code)
    sit(ready)
    page.open_again()
    status, text = page.send(code=code)
    assert (status, Decision.objects.count()) == (422, 1)
    assert "has been used" in text


def test_the_same_page_sent_twice_signs_once(page, device):
    page.open_again()
    page.send(code=device())
    cache.clear()
    status, text = page.send(code=device())
    assert (status, Decision.objects.count()) == (409, 1)
    assert "You have signed exactly this already" in text


def test_a_record_that_changed_is_shown_with_what_changed_and_the_code_stays_good(page, device, sit, ready):
    page.open_again()
    sit(ready, answers={})
    code = device()
    status, text = page.send(code=code)
    assert (status, Decision.objects.count()) == (409, 0)
    assert "The record changed since you opened this page" in text
    page.open_again()
    assert page.send(code=code)[0] == 302


def test_a_membership_ended_in_between_is_told(page, device, signer):
    page.open_again()
    signer.memberships.update(may_sign=[])
    status, text = page.send(code=device())
    assert (status, Decision.objects.count()) == (403, 0)
    assert "You may not sign COA2 for Tara Trainee" in text


def test_a_page_of_another_element_does_not_sign_this_one(client, page, device, ready, signer):
    page.open_again()
    signer.memberships.update(may_sign=["COA"])
    url = reverse("sign-off", args=[ready.handle, "COA3"])
    answer = client.post(url, {"shown": page.shown, "read": "on", "code": device()})
    assert (answer.status_code, Decision.objects.count()) == (409, 0)


@pytest.mark.parametrize("element", ["COA9", "coa2", "COA0"])
def test_there_is_no_such_element(client, signer, ready, element):
    client.force_login(signer)
    assert client.get(reverse("sign-off", args=[ready.handle, element])).status_code == 404


@pytest.mark.parametrize(("name", "kind"), [("element-decline", "declined"), ("element-ask", "more_asked")])
def test_it_is_turned_down_with_a_reason(client, signer, ready, name, kind):
    client.force_login(signer)
    url = reverse(name, args=[ready.handle, "COA2"])
    shown = sealed(client.get(url))
    assert client.post(url, {"shown": shown, "reason": " "}).status_code == 422
    answer = client.post(url, {"shown": shown, "reason": "Sit one more."})
    made = Decision.objects.get()
    assert (answer.status_code, made.kind, made.note.text) == (302, kind, "Sit one more.")
    client.force_login(ready)
    assert "Sit one more." in client.get(reverse("record")).content.decode()


def test_a_forged_page_turns_nothing_down(client, signer, ready):
    client.force_login(signer)
    url = reverse("element-decline", args=[ready.handle, "COA2"])
    answer = client.post(url, {"shown": "forged", "reason": "No."})
    assert (answer.status_code, Decision.objects.count()) == (409, 0)


def test_a_signature_is_withdrawn_with_a_reason_and_a_code(client, signed, signer, trainee, device):
    client.force_login(signer)
    url = reverse("decision-withdraw", args=[signed.pk])
    assert client.post(url, {"reason": "Wrong person.", "code": "000000"}).status_code == 422
    assert client.post(url, {"reason": "Wrong person.", "code": device()}).status_code == 302
    text = client.get(reverse("decision-detail", args=[signed.pk])).content.decode()
    assert "Wrong person." in text
    assert Decision.objects.filter(withdraws=signed).count() == 1
    cache.clear()
    assert client.post(url, {"reason": "Again.", "code": device()}).status_code == 409


def test_only_its_signer_or_an_examiner_withdraws(client, signed, instructor, trainee):
    for person, status in ((instructor, 403), (trainee, 403)):
        client.force_login(person)
        assert client.get(reverse("decision-withdraw", args=[signed.pk])).status_code == status


def test_a_proof_that_is_stale_by_the_time_it_signs_is_refused(signer, ready, shown, now):
    with pytest.raises(Exception, match="older than five minutes"):
        journey.sign(signer, ready, shown(signer, ready), Proof("webauthn", now.replace(hour=1)), now=now)
