"""The board as a page: whose it is, and how many queries it takes."""

from datetime import timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext
from django.urls import reverse
from django.utils import timezone

from tests.factories import CohortFactory, MembershipFactory, PersonFactory

pytestmark = pytest.mark.django_db


def test_whoever_has_one_cohort_goes_straight_to_its_board(client, signer, remote):
    client.force_login(signer)
    assert client.get(reverse("cohort-list")).url == reverse("cohort-board", args=[remote.pk])


def test_whoever_answers_for_several_chooses(client, instructor, remote, trainee):
    CohortFactory(name="Quay", course=remote.course)
    client.force_login(instructor)
    text = client.get(reverse("cohort-list")).content.decode()
    assert ("Lantern" in text, "Quay" in text, "1 trainee, remote" in text) == (True, True, True)


def test_the_board_takes_the_same_queries_for_ten_as_for_two_hundred(client, signer, remote, sit, trainee):
    sit(trainee)
    client.force_login(signer)
    counts = []
    for size in (10, 200):
        for number in range(remote.memberships.count(), size):
            person = PersonFactory(email=f"many{number}@test.example", password=None)
            MembershipFactory(person=person, cohort=remote)
        with CaptureQueriesContext(connection) as taken:
            assert client.get(reverse("cohort-board", args=[remote.pk])).status_code == 200
        counts.append(len(taken))
    assert counts[0] == counts[1] <= 20


def test_who_waits_stands_first_with_one_amber_act(client, signer, remote, trainee, other, sit):
    sit(other, at=timezone.now() - timedelta(days=1))
    sit(trainee, at=timezone.now() - timedelta(days=2))
    client.force_login(signer)
    text = client.get(reverse("cohort-board", args=[remote.pk])).content.decode()
    assert text.count("btn-primary") == 1
    assert text.index("Tara Trainee") < text.index("Otto Other")
    assert reverse("sign-off", args=[trainee.handle, "COA2"]) in text
    assert "2 wait for you" in text


def test_whoever_may_not_sign_sees_the_record_instead(client, remote, trainee, sit):
    sit(trainee)
    client.force_login(MembershipFactory(role="instructor", cohort=remote).person)
    text = client.get(reverse("cohort-board", args=[remote.pk])).content.decode()
    assert reverse("sign-off", args=[trainee.handle, "COA2"]) not in text
    assert "Nobody waits for you" in text
