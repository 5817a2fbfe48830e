"""The rows of the log as text, whatever the database holds."""

import os
import subprocess
import sys

import pytest
from django.conf import settings

from assessments import log
from assessments.management.log_rows import pairs
from assessments.models import LogEntry, TreeHead


@pytest.fixture
def entries(school, now):
    return [log.enter(log.SCHOOL, "noted", {"n": number}, now=now) for number in range(3)]


def test_every_entry_comes_with_its_head_in_order(entries):
    found = list(pairs())
    assert [(row.seq, row.stream, row.stream_seq, row.kind, row.body) for row, _head in found] == [
        (str(one.seq), "school", str(one.stream_seq), "noted", one.body) for one in entries
    ]
    assert [head.root for _row, head in found] == list(TreeHead.objects.values_list("root", flat=True))


def test_an_entry_without_a_head_and_a_head_without_an_entry_come_alone(entries, unguarded):
    TreeHead.objects.filter(size=2).delete()
    LogEntry.objects.filter(seq=1).delete()
    found = [(row and row.seq, head and head.size) for row, head in pairs()]
    assert found == [("2", None), ("3", "3"), (None, "1")]


def test_a_log_longer_than_a_page_is_read_to_its_end(school, now):
    LogEntry.objects.bulk_create(
        LogEntry(seq=seq, stream="school", stream_seq=seq, kind="noted", body="", created_at=now)
        for seq in range(1, 1002)
    )
    assert [row.seq for row, _head in pairs()] == [str(seq) for seq in range(1, 1002)]


def test_where_there_is_no_database_a_sentence_says_so(tmp_path):
    answer = subprocess.run(
        [sys.executable, "manage.py", "verify_log"],
        cwd=settings.BASE_DIR,
        env={"RAKING_VAR": str(tmp_path / "nowhere"), "PATH": os.environ["PATH"]},
        capture_output=True,
        text=True,
        check=False,
    )
    assert (answer.returncode, answer.stdout) == (2, "")
    assert answer.stderr.startswith("The database doesn't answer: ")
    assert answer.stderr.endswith("If there is none, run 'manage.py setup' once.\n")
