"""The record as pages: whose it is, what it shows, and how many queries it takes."""

import pytest
from django.urls import reverse

from courses.models import Membership
from tests.factories import CohortFactory, MembershipFactory

pytestmark = pytest.mark.django_db


def staff(role, cohort):
    return MembershipFactory(role=role, cohort=cohort).person


def test_ones_own_record_names_every_unit_and_what_is_missing(client, trainee):
    client.force_login(trainee)
    page = client.get(reverse("record")).content.decode()
    for words in ("Inspect", "Coat and cure", "Hand over and maintain", "0 of 31 elements are signed"):
        assert words in page
    assert "Look and sign" not in page


@pytest.mark.parametrize(
    ("role", "here", "status"),
    [("instructor", True, 200), ("instructor", False, 404), ("examiner", None, 200), ("manager", None, 200)],
)
def test_the_trainees_own_staff_see_it(client, trainee, remote, role, here, status):
    client.force_login(staff(role, {True: remote, False: CohortFactory(), None: None}[here]))
    assert client.get(reverse("record-detail", args=[trainee.handle])).status_code == status


def test_another_trainee_and_whoever_teaches_nobody_do_not(client, trainee, other, outsider):
    for person in (other, outsider):
        client.force_login(person)
        assert client.get(reverse("record-detail", args=[trainee.handle])).status_code == 404
    assert client.get(reverse("record")).status_code == 404


def test_what_was_signed_leads_to_the_words_and_back_to_the_attempt(client, trainee, signed):
    client.force_login(trainee)
    page = client.get(reverse("record")).content.decode()
    assert reverse("decision-detail", args=[signed.pk]) in page
    assert reverse("attempt-verdict", args=[trainee.attempts.get().pk]) in page
    assert "Sigrid Signer" in page
    assert "none altered" in page


def test_a_decision_shows_what_was_signed_how_it_was_proved_and_who_may_withdraw(client, trainee, signed, signer):
    away = reverse("decision-withdraw", args=[signed.pk])
    for person, offered in ((trainee, False), (signer, True)):
        client.force_login(person)
        page = client.get(reverse("decision-detail", args=[signed.pk])).content.decode()
        assert "judge <b>Tara Trainee</b> competent in" in page
        assert "a code from their device" in page
        assert (away in page) is offered


def test_a_decision_of_another_is_not_found(client, other, signed):
    client.force_login(other)
    assert client.get(reverse("decision-detail", args=[signed.pk])).status_code == 404


def test_staff_read_the_attempt_that_evidence_leads_to(client, sit, trainee, signer, other):
    attempt = sit(trainee)
    client.force_login(signer)
    page = client.get(reverse("attempt-verdict", args=[attempt.pk])).content.decode()
    assert "The facts and what was answered" in page
    assert "Try again with new facts" not in page
    client.force_login(other)
    assert client.get(reverse("attempt-verdict", args=[attempt.pk])).status_code == 404


def test_an_attempt_that_is_open_stays_its_owners(client, trainee, signer, remote):
    client.force_login(trainee)
    client.post(reverse("attempt-open", args=["COA-01"]), {"mode": "practice"})
    attempt = trainee.attempts.get()
    client.force_login(signer)
    assert client.get(reverse("attempt-verdict", args=[attempt.pk])).status_code == 404


def test_records_are_not_kept_by_the_browser(client, trainee, signed):
    client.force_login(trainee)
    for name, args in (("record", []), ("decision-detail", [signed.pk])):
        assert "no-store" in client.get(reverse(name, args=args))["Cache-Control"]


def test_the_number_of_queries_does_not_grow_with_the_record(client, sit, trainee):
    from django.db import connection
    from django.test.utils import CaptureQueriesContext

    client.force_login(trainee)
    counts = []
    for _time in range(2):
        sit(trainee)
        client.get(reverse("record"))
        with CaptureQueriesContext(connection) as taken:
            client.get(reverse("record"))
        counts.append(len(taken))
    assert counts[0] == counts[1]
    assert Membership.objects.count() == 1
