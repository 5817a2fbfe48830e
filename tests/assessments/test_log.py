"""The verbs of the log: what is entered is chained, signed for and numbered without a gap."""

import json
import threading

import pytest
from django.conf import settings
from django.db import connection, transaction

from assessments import log
from assessments.competence.log import LogFault
from assessments.competence.log.verify import first_broken
from assessments.management.log_rows import pairs
from assessments.models import LogEntry, Salt, TreeHead
from courses import actions
from courses.keys import KeyMissing, public_keys
from tests.factories import MembershipFactory, PersonFactory


def whole():
    """Return what is broken in the log, or nothing."""
    return first_broken(pairs(), public_keys(settings.VAR)).broken


@pytest.fixture
def person(school):
    return PersonFactory(name="Tara Trainee")


def test_an_entry_repeats_its_columns_in_its_body_and_follows_the_one_before(person, now):
    first = log.enter(log.stream_of(person), "signed", {"element": "COA2"}, now=now)
    log.enter(log.SCHOOL, "key", {}, now=now)
    second = log.enter(log.stream_of(person), "withdrawn", {"element": "COA2"}, now=now)
    assert json.loads(second.body) == {
        "at": "2026-04-14T14:05:00.000000Z",
        "kind": "withdrawn",
        "prev": first.leaf_hash,
        "seq": 3,
        "stream": str(person.handle),
        "stream_seq": 2,
        "what": {"element": "COA2"},
    }
    assert (first.prev_hash, second.prev_hash) == ("0" * 64, first.leaf_hash)
    assert (second.seq, second.stream_seq, second.kind, second.created_at) == (3, 2, "withdrawn", now)


def test_every_entry_has_a_signed_head_and_the_whole_is_whole(person, now):
    for number in range(9):
        log.enter(log.stream_of(person), "signed", {"n": number}, now=now)
    found = first_broken(pairs(), public_keys(settings.VAR))
    assert (found.entries, found.heads, found.broken) == (9, 9, None)
    assert len(TreeHead.objects.get(size=7).peaks.split()) == 3


def test_an_entry_takes_few_queries(person, now, django_assert_num_queries):
    log.enter(log.stream_of(person), "signed", {}, now=now)
    with django_assert_num_queries(5 if connection.vendor == "postgresql" else 4):
        log.enter(log.stream_of(person), "signed", {}, now=now)


def test_what_no_entry_may_hold_leaves_no_trace(person, now):
    with pytest.raises(LogFault, match="points is 12.5"), transaction.atomic():
        log.enter(log.stream_of(person), "evidence", {"points": 12.5}, now=now)
    assert (LogEntry.objects.count(), TreeHead.objects.count()) == (0, 0)


def test_without_a_key_nothing_is_entered(person, now, settings, tmp_path):
    settings.VAR = tmp_path
    with pytest.raises(KeyMissing, match="There is no signing key"), transaction.atomic():
        log.enter(log.stream_of(person), "signed", {}, now=now)
    assert LogEntry.objects.count() == 0


def test_a_chain_is_whole_until_an_entry_is_rewritten(person, now, unguarded):
    for number in range(3):
        log.enter(log.stream_of(person), "signed", {"n": number}, now=now)
    assert log.chain_of(log.stream_of(person)) == log.Chain(3, True)
    LogEntry.objects.filter(seq=2).update(body=LogEntry.objects.get(seq=1).body)
    assert log.chain_of(log.stream_of(person)) == log.Chain(3, False)
    assert log.chain_of("nobody") == log.Chain(0, True)


def test_a_commitment_needs_the_salt_which_is_made_once(person, school):
    made = log.commitment(person, "name", "Tara Trainee")
    assert len(made) == 64
    assert made == log.commitment(type(person).objects.get(pk=person.pk), "name", "Tara Trainee")
    assert made != log.commitment(PersonFactory(), "name", "Tara Trainee")
    assert Salt.objects.get(person=person).value == log.salt_of(person)


def test_an_erased_person_has_no_salt_and_gets_none(person, now):
    log.salt_of(person)
    erased = actions.erase_person(person, by=None, now=now)
    assert (log.salt_of(erased), log.commitment(erased, "name", "Tara Trainee")) == ("", "")
    assert not Salt.objects.filter(person=person).exists()
    assert LogEntry.objects.get(stream=log.stream_of(person)).kind == "erased"
    assert whole() is None


def test_a_log_begins_with_the_roles_that_stand_and_begins_once(school, now):
    role = MembershipFactory(role="instructor", cohort=None, may_sign=["COA"])
    assert (log.begin(now), log.begin(now)) == (1, 0)
    assert json.loads(LogEntry.objects.get().body)["what"] == {
        "membership": role.pk,
        "role": "instructor",
        "cohort": 0,
        "teaches": [],
        "may_sign": ["COA"],
        "by": "",
    }


@pytest.fixture
def own_keys(settings, tmp_path):
    """A folder of keys for one test."""
    from courses.keys import make_keys

    settings.VAR = tmp_path
    make_keys(tmp_path)
    return tmp_path / "keys"


def test_a_new_key_takes_over_and_the_old_one_is_forgotten(person, now, own_keys, django_capture_on_commit_callbacks):
    log.enter(log.stream_of(person), "signed", {}, now=now)
    (old,) = (path.stem for path in own_keys.glob("*.pem"))
    with django_capture_on_commit_callbacks(execute=True):
        new = log.hand_over(now)
    log.enter(log.stream_of(person), "signed", {}, now=now)
    assert [path.stem for path in own_keys.glob("*.pem")] == [new]
    assert sorted(path.stem for path in own_keys.glob("*.pub")) == sorted([old, new])
    assert list(TreeHead.objects.values_list("key_id", flat=True)) == [old, new, new]
    assert LogEntry.objects.get(seq=2).stream == "school"
    assert whole() is None


def test_a_key_that_no_entry_hands_over_to_is_found(person, now, own_keys):
    from courses.keys import make_signing_key

    log.enter(log.stream_of(person), "signed", {}, now=now)
    log.enter(log.stream_of(person), "signed", {}, now=now, key_id=make_signing_key(settings.VAR))
    assert (whole().stream, whole().seq) == ("heads", 2)
    assert "no entry hands over from it" in whole().why


@pytest.mark.django_db(transaction=True)
def test_two_at_once_take_turns_and_leave_no_gap(now):
    def write(stream):
        try:
            for number in range(10):
                with transaction.atomic():
                    log.enter(stream, "signed", {"n": number}, now=now)
        finally:
            connection.close()

    threads = [threading.Thread(target=write, args=(stream,)) for stream in ("one", "two", "three")]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert list(LogEntry.objects.values_list("seq", flat=True)) == list(range(1, 31))
    assert whole() is None
