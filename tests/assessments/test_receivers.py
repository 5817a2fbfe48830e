"""What the ground floor tells stands in the log: roles and erasures."""

import json

import pytest

from assessments import append_only, log
from assessments.agreement import first_disagreement
from assessments.models import LogEntry
from assessments.receivers import guard
from courses import actions
from tests.factories import PersonFactory

pytestmark = pytest.mark.django_db


def told(person):
    """Return kind and content of each entry of a person."""
    found = LogEntry.objects.filter(stream=log.stream_of(person)).order_by("stream_seq")
    return [(one.kind, json.loads(one.body)["what"]) for one in found]


def test_a_role_is_entered_as_it_is_given_changed_and_ended(remote, outsider, now):
    manager = PersonFactory()
    role = actions.enrol(outsider, "instructor", remote, now=now, by=manager, may_sign=["COA2"], teaches=[])
    said = {"membership": role.pk, "role": "instructor", "cohort": remote.pk, "teaches": []}
    by = {"by": log.stream_of(manager)}
    actions.enrol(outsider, "instructor", remote, now=now, by=manager, may_sign=["COA2"], teaches=[])
    actions.enrol(outsider, "instructor", remote, now=now, may_sign=["COA"], teaches=[])
    actions.end_role(role, by=manager, now=now)
    assert told(outsider) == [
        ("role_given", {**said, "may_sign": ["COA2"], **by}),
        ("role_changed", {**said, "may_sign": ["COA"], "by": ""}),
        ("role_ended", {**said, "may_sign": ["COA"], **by}),
    ]
    assert first_disagreement() is None


def test_an_erasure_ends_roles_drops_words_and_leaves_the_log_provable(signed, trainee, now):
    log.begin(now)
    manager = PersonFactory()
    assert first_disagreement() is not None  # the roles of the factories were never entered, and the log has begun
    actions.erase_person(trainee, by=manager, now=now)
    kinds = [kind for kind, _what in told(trainee)]
    assert kinds == ["evidence", "signed", "role_ended", "erased"]
    assert told(trainee)[-1][1] == {"by": log.stream_of(manager)}
    assert log.chain_of(log.stream_of(trainee)) == log.Chain(4, True)


def test_every_migration_ends_with_the_guard(db):
    append_only.lift()
    guard(None, using="default")
    assert append_only.unguarded() == []
