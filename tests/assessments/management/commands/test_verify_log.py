"""The door `verify_log`: one changed column in any row of the log is found, and an independent verifier agrees."""

import json

import pytest
from django.conf import settings
from django.db import connection

from assessments import log
from assessments.competence.log import Entry
from assessments.models import LogEntry, Salt, TreeHead
from courses import actions
from courses.keys import public_keys
from tests.assessments import independent
from tests.factories import PersonFactory

SQLITE = connection.vendor == "sqlite"
ENTRY = [
    ("seq", 99),
    ("stream", "nobody"),
    ("stream_seq", 77),
    ("kind", "withdrawn"),
    ("body", "{}"),
    ("body", "no JSON at all"),
    ("leaf_hash", "0" * 64),
    ("prev_hash", "1" * 64),
    ("created_at", "2026-04-14 14:05:00.000001+00:00"),
]
HEAD = [
    ("size", 99),
    ("root", "0" * 64),
    ("peaks", ""),
    ("signed_at", "2026-04-14 14:05:00.000001+00:00"),
    ("key_id", "nobody"),
    ("signature", "0" * 128),
]
UNREADABLE = [("created_at", "yesterday"), ("body", b"\xff\xfe"), ("stream_seq", "many"), ("kind", b"\xff")]
"""What SQLite keeps in any column; PostgreSQL refuses to."""


@pytest.fixture
def people(school, now):
    """Two people with a log of seven entries over their streams; the second of each stands in the middle."""
    first, second = PersonFactory(), PersonFactory()
    for number, person in enumerate([first, second, first, second, first, second, first]):
        log.enter(log.stream_of(person), "role_noted", {"n": number}, now=now)
    return first, second


def change(table, column, value, key, number=3):
    """Change one column of a row as somebody would who holds the database."""
    with connection.cursor() as cursor:
        cursor.execute(f"UPDATE {table} SET {column} = %s WHERE {key} = %s", [value, number])


@pytest.fixture
def answer(shell):
    """Return a function that runs the door and gives its exit code and its answer."""

    def verify(*arguments):
        run = shell("verify_log", *arguments)
        return run.code, json.loads(run.out)

    return verify


def test_a_whole_log_is_said_to_be_whole(people, answer):
    assert answer() == (0, {"entries": 7, "heads": 7, "ok": True, "first_broken": None})
    assert independent.is_good(public_keys(settings.VAR))


def test_an_empty_log_is_whole(school, answer):
    assert answer() == (0, {"entries": 0, "heads": 0, "ok": True, "first_broken": None})


@pytest.mark.parametrize(("column", "value"), ENTRY)
def test_a_change_of_any_column_of_an_entry_is_named(people, unguarded, answer, column, value):
    change("assessments_logentry", column, value, "seq")
    code, said = answer()
    found = said["first_broken"]
    assert (code, said["ok"], found["seq"]) == (1, False, 3)
    assert found["stream"] == log.stream_of(people[0])
    assert found["why"]
    assert not independent.is_good(public_keys(settings.VAR))


@pytest.mark.parametrize(("column", "value"), HEAD)
def test_a_change_of_any_column_of_a_head_is_named(people, unguarded, answer, column, value):
    change("assessments_treehead", column, value, "size")
    code, said = answer()
    assert (code, said["first_broken"]["stream"], said["first_broken"]["seq"]) == (1, "heads", 3)
    assert not independent.is_good(public_keys(settings.VAR))


def test_every_column_is_among_those_that_are_changed():
    assert {name for name, _value in ENTRY} == {one.column for one in LogEntry._meta.fields}
    assert {name for name, _value in HEAD} == {one.column for one in TreeHead._meta.fields}


@pytest.mark.parametrize("place", [0, 20, 60, 120, -2])
def test_one_flipped_bit_of_a_body_is_found(people, unguarded, answer, place):
    body = bytearray(LogEntry.objects.get(seq=3).body.encode())
    body[place] ^= 1
    change("assessments_logentry", "body", body.decode(), "seq")
    code, said = answer()
    assert (code, said["first_broken"]["stream"], said["first_broken"]["seq"]) == (1, log.stream_of(people[0]), 3)


def test_what_cannot_be_read_is_a_finding(people, unguarded, answer):
    for column, value in UNREADABLE if SQLITE else [("body", "\\xff"), ("kind", "\\x00")]:
        kept = getattr(LogEntry.objects.get(seq=3), column)
        change("assessments_logentry", column, value, "seq")
        code, said = answer()
        assert (code, said["first_broken"]["stream"], said["first_broken"]["seq"]) == (1, log.stream_of(people[0]), 3)
        change("assessments_logentry", column, kept, "seq")
    assert answer()[0] == 0


def test_an_entry_that_was_forged_with_a_hash_to_match_is_caught_by_the_heads(people, unguarded, answer):
    row = LogEntry.objects.get(seq=7)
    said = Entry.of(row.body)
    forged = Entry(said.seq, said.stream, said.stream_seq, said.kind, said.at, said.prev, {"n": 1})
    LogEntry.objects.filter(seq=7).update(body=forged.body, leaf_hash=forged.hash)
    assert log.chain_of(said.stream).whole
    assert answer()[1]["first_broken"] == {
        "stream": "heads",
        "seq": 7,
        "why": "Its root is not what the 7 entries come to: an entry up to here, or the head, was altered.",
    }
    assert not independent.is_good(public_keys(settings.VAR))


@pytest.mark.parametrize("seq", [1, 4, 7])
def test_an_entry_that_was_removed_is_missed(people, unguarded, answer, seq):
    LogEntry.objects.filter(seq=seq).delete()
    code, said = answer()
    assert (code, said["entries"], said["heads"], said["first_broken"]["seq"]) == (1, 6, 7, seq)
    assert not independent.is_good(public_keys(settings.VAR))


@pytest.fixture
def begun(trainee, signer, now):
    """A log that begins with the roles of a trainee and of who signs for them."""
    log.begin(now)


def test_the_record_is_held_against_a_log_that_is_whole(begun, signed, trainee, unguarded, answer):
    assert answer()[0] == 0
    type(signed).objects.filter(pk=signed.pk).update(role="examiner")
    why = "Its row has role 'examiner'; 'instructor' was entered."
    entered = LogEntry.objects.get(kind="signed").seq
    assert answer()[1]["first_broken"] == {"stream": log.stream_of(trainee), "seq": entered, "why": why}


def test_after_an_erasure_the_log_is_as_provable_as_before(people, answer, now):
    assert log.salt_of(people[0])
    actions.erase_person(people[0], by=people[1], now=now)
    assert not Salt.objects.filter(person=people[0]).exists()
    assert answer() == (0, {"entries": 8, "heads": 8, "ok": True, "first_broken": None})
    assert independent.is_good(public_keys(settings.VAR))


def test_a_head_that_was_kept_shows_that_nothing_before_it_changed(people, shell, answer, tmp_path, now):
    kept = tmp_path / "head.json"
    kept.write_text(shell("log_head").out)
    log.enter(log.SCHOOL, "noted", {}, now=now)
    assert answer("--kept", str(kept))[0] == 0


def test_a_log_that_lost_its_end_is_caught_by_a_head_that_was_kept(people, shell, answer, unguarded, tmp_path):
    kept = tmp_path / "head.json"
    kept.write_text(shell("log_head").out)
    LogEntry.objects.filter(seq__gt=5).delete()
    TreeHead.objects.filter(size__gt=5).delete()
    assert answer()[0] == 0
    code, said = answer("--kept", str(kept))
    assert (code, said["first_broken"]["seq"]) == (1, 7)
    assert said["first_broken"]["why"].startswith("The head that was kept covers 7 entries; the log has 5.")


def test_a_guard_that_is_missing_is_said_beside_the_answer(people, shell, unguarded):
    run = shell("verify_log")
    assert (run.code, json.loads(run.out)["ok"]) == (0, True)
    assert "assessments_logentry lacks its guard against changes. Run 'python manage.py migrate'" in run.err


def test_without_its_tables_a_sentence_says_what_to_do(db, shell, unguarded):
    with connection.cursor() as cursor:
        cursor.execute("ALTER TABLE assessments_treehead RENAME TO elsewhere")
    run = shell("verify_log")
    with connection.cursor() as cursor:
        cursor.execute("ALTER TABLE elsewhere RENAME TO assessments_treehead")
    assert (run.code, run.out, run.err) == (
        2, "", "There is no log here yet. Run 'python manage.py setup' once.\n"
    )  # fmt: skip


def test_a_public_key_that_cannot_be_read_is_refused(people, shell, settings, tmp_path):
    settings.VAR = tmp_path
    (tmp_path / "keys").mkdir()
    (tmp_path / "keys" / "ab.pub").write_text("nonsense")
    run = shell("verify_log")
    assert (run.code, run.err) == (2, "ab.pub in keys is no Ed25519 key. Put the file back from a backup.\n")
