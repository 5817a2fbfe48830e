"""Every address against every role, in one table. An address without a row fails.

Columns: anonymous, owner, other trainee, own instructor, other instructor, examiner, manager.
Numbers are answers: 200 shown, 302 led on (to signing in, for whoever is not signed in), 400 nothing written,
403 not yours, 404 not told, 405 not by looking.
"""

from collections.abc import Iterator

import pytest
from django.urls import URLPattern, URLResolver, get_resolver, reverse

from assessments import drafting, journey
from assessments.models import Attempt, Scenario
from courses import gallery
from courses.actions import keep_estimate
from courses.trade.quote import Quote
from tests.factories import CohortFactory, InvitationFactory, MembershipFactory, PersonFactory

pytestmark = pytest.mark.django_db
WHO = ("anonymous", "owner", "other", "own_instructor", "other_instructor", "examiner", "manager")

SMALL = {"substrate": "gel_coat", "colour": "navy", "size": [96, 64], "defects": [{"kind": "swirl"}]}

EMPTY = Quote("T1", 14.16, (), (), None, ())

OPEN = "200 200 200 200 200 200 200"
SIGNED_IN = "302 200 200 200 200 200 200"
OWNER = "302 200 404 404 404 404 404"
RECORD = "302 200 404 200 404 200 200"
SIGNER = "302 403 404 200 404 403 403"
STAFF = "302 404 404 200 200 200 200"
COHORT = "302 404 404 200 404 200 200"
MANAGER = "302 404 404 404 404 404 200"
AUTHOR = "302 404 404 302 302 302 302"
"""What is sent by those who teach, examine or manage; whoever they are, the page answers with where to go on."""

LOOKED_AT = {
    "home": ([], SIGNED_IN),
    "settings": ([], SIGNED_IN),
    "lesson-list": ([], SIGNED_IN),
    "lesson-detail": (["lesson"], SIGNED_IN),
    "lesson-check": (["lesson"], "302 405 405 405 405 405 405"),
    "look-alikes": ([], SIGNED_IN),
    "picture": (["picture", "place"], "302 200 404 200 200 200 200"),
    "sum-list": ([], SIGNED_IN),
    "sum-detail": (["sum"], SIGNED_IN),
    "plan-try": ([], SIGNED_IN),
    "estimate-list": ([], SIGNED_IN),
    "estimate-make": ([], SIGNED_IN),
    "estimate-detail": (["estimate"], OWNER),
    "estimate-used": (["estimate"], OWNER),
    "parts": ([], STAFF),
    "invitation-accept": (["token"], OPEN),
    "scenario-list": ([], SIGNED_IN),
    "scenario-detail": (["scenario"], SIGNED_IN),
    "attempt-detail": (["open"], OWNER),
    "attempt-verdict": (["attempt"], RECORD),
    "record": ([], "302 200 200 404 404 404 404"),
    "record-detail": (["handle"], RECORD),
    "cohort-list": ([], "302 404 404 302 302 200 200"),
    "cohort-board": (["cohort"], COHORT),
    "sign-off": (["handle", "element"], SIGNER),
    "element-decline": (["handle", "element"], SIGNER),
    "element-ask": (["handle", "element"], SIGNER),
    "decision-detail": (["decision"], RECORD),
    "decision-withdraw": (["decision"], "302 403 404 200 404 200 403"),
    "book-list": ([], STAFF),
    "book-detail": (["scenario"], STAFF),
    "draft-detail": (["draft"], STAFF),
    "rule-write": (["draft"], STAFF),
    "rule-detail": (["draft", "rule"], STAFF),
    "school-detail": ([], MANAGER),
    "person-list": ([], MANAGER),
    "person-detail": (["handle"], MANAGER),
    "role-give": (["handle"], MANAGER),
    "role-change": (["handle", "role"], MANAGER),
    "role-end": (["handle", "role"], MANAGER),
    "person-erase": (["handle"], MANAGER),
    "school-cohorts": ([], MANAGER),
    "cohort-make": ([], MANAGER),
    "cohort-change": (["cohort"], MANAGER),
    "invitation-list": ([], MANAGER),
    "invitation-make": ([], MANAGER),
}
"""Pages: what each role is answered when it looks."""

SENT = {
    "display-set": ([], "400 400 400 400 400 400 400"),
    "lesson-read": (["lesson"], "302 302 302 302 302 302 302"),
    "attempt-open": (["scenario"], "302 400 400 400 400 400 400"),
    "answer-save": (["open"], "302 400 404 404 404 404 404"),
    "attempt-hand-in": (["attempt"], "302 302 404 404 404 404 404"),
    "attempt-describe": (["open"], "302 302 404 404 404 404 404"),
    "attempt-put-away": (["attempt"], "302 302 404 404 404 404 404"),
    "book-begin": (["scenario"], AUTHOR),
    "book-put-back": (["scenario"], AUTHOR),
    "draft-share": (["draft"], AUTHOR),
    "draft-settle": (["draft"], AUTHOR),
    "draft-send": (["draft"], AUTHOR),
    "draft-give-back": (["draft"], AUTHOR),
    "draft-publish": (["draft"], AUTHOR),
    "rule-take-out": (["draft", "rule"], AUTHOR),
    "draft-throw-away": (["draft"], AUTHOR),
    "person-deactivate": (["handle"], "302 404 404 404 404 404 302"),
    "person-activate": (["handle"], "302 404 404 404 404 404 302"),
    "invitation-end": (["invitation"], "302 404 404 404 404 404 302"),
}
"""Addresses that only take what is sent: what each role is answered when it sends nothing but itself."""

ACCOUNT = ("account_", "mfa_")
"""Pages of signing in, which are the same for everybody: the library's own, tried in tests/safety and tests/courses."""


def named(patterns: list[URLPattern | URLResolver]) -> Iterator[str]:
    """Yield the name of every address there is."""
    for one in patterns:
        if isinstance(one, URLResolver):
            yield from named(one.url_patterns)
        elif not str(one.name or one.pattern).startswith(ACCOUNT):
            yield str(one.name or one.pattern)


@pytest.fixture
def world(client, trainee, other, remote, sit, signer, shown, now):
    """Everybody, and one of each thing that an address can name."""
    from courses.proofs import Proof

    people = {
        "owner": trainee,
        "other": other,
        "own_instructor": signer,
        "other_instructor": MembershipFactory(
            role="instructor", cohort=CohortFactory(course=remote.course), may_sign=["COA"]
        ).person,
        "examiner": MembershipFactory(role="examiner", cohort=None, may_sign=["INS"]).person,
        "manager": MembershipFactory(role="manager", cohort=None).person,
    }
    CohortFactory(course=remote.course)
    attempt = sit(trainee)
    decision = journey.sign(signer, trainee, shown(signer, trainee), Proof("totp", now), now=now)
    going_on = journey.open_attempt(trainee, Scenario.objects.get(code="COA-01"), Attempt.Mode.PRACTICE, now=now)
    invitation = InvitationFactory(token="a-token", cohort=remote)
    things = {
        "lesson": "dew-point",
        "sum": "dew_margin",
        "picture": gallery.hang(SMALL, "point", [(0.5, 0.42)], "paper", owner=trainee).code,
        "place": 1,
        "estimate": keep_estimate(trainee, {"name": "Runabout", "asked": {}, "worked": EMPTY.as_json()}, now=now).pk,
        "token": "a-token",
        "scenario": "COA-01",
        "open": going_on.pk,
        "attempt": attempt.pk,
        "handle": trainee.handle,
        "cohort": remote.pk,
        "element": "COA2",
        "decision": decision.pk,
        "role": trainee.memberships.get().pk,
        "invitation": invitation.pk,
        "draft": drafting.begin_draft(Scenario.objects.get(code="COA-01"), signer, now=now).pk,
        "rule": "COA-01.2",
    }
    return people, things


def answered(client, people, things, name, args, act):
    """Return what each role is answered, in the order of the columns."""
    found = []
    for who in WHO:
        client.logout()
        if who in people:
            client.force_login(people[who])
        url = reverse(name, args=[things[one] for one in args])
        found.append(str(getattr(client, act)(url).status_code))
    return " ".join(found)


@pytest.mark.parametrize("name", LOOKED_AT)
def test_who_sees_a_page(client, world, name):
    args, wanted = LOOKED_AT[name]
    assert answered(client, *world, name, args, "get") == wanted


@pytest.mark.parametrize("name", SENT)
def test_who_may_send(client, world, name):
    args, wanted = SENT[name]
    assert answered(client, *world, name, args, "post") == wanted


@pytest.mark.parametrize("name", SENT)
def test_nothing_is_changed_by_looking(client, world, name):
    people, things = world
    client.force_login(people["manager" if SENT[name][1].startswith("302 404") else "owner"])
    answer = client.get(reverse(name, args=[things[one] for one in SENT[name][0]]))
    assert answer.status_code in (404, 405)


def test_every_address_has_a_row():
    assert sorted(set(named(get_resolver().url_patterns))) == sorted({*LOOKED_AT, *SENT})


def test_nobody_who_left_the_school_gets_in(client, world):
    people, _things = world
    person = people["owner"]
    client.force_login(person)
    person.is_active = False
    person.save()
    assert client.get(reverse("record")).status_code == 302


def test_a_stranger_with_an_account_sees_nothing_of_anybody(client, world):
    _people, things = world
    client.force_login(PersonFactory())
    for name, (args, wanted) in LOOKED_AT.items():
        if wanted in (OWNER, RECORD, SIGNER, STAFF, COHORT, MANAGER):
            assert client.get(reverse(name, args=[things[one] for one in args])).status_code == 404, name
