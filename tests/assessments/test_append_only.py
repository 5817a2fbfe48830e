"""The guard in the database: what stands in the log and on the record can't be changed there either."""

import pytest
from django.db import DatabaseError, connection, transaction

from assessments import append_only, log
from assessments.models import LogEntry, TreeHead


@pytest.fixture
def entered(school, now):
    return log.enter(log.SCHOOL, "signed", {}, now=now)


def refusal(statement):
    """Return what the database says to a statement."""
    with pytest.raises(DatabaseError) as refused, transaction.atomic(), connection.cursor() as cursor:
        cursor.execute(statement)
    return str(refused.value).splitlines()[0]


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE assessments_logentry SET kind = 'x'",
        "DELETE FROM assessments_logentry",
        "UPDATE assessments_treehead SET root = 'x'",
        "DELETE FROM assessments_treehead",
    ],
)
def test_a_change_and_a_removal_are_refused_with_a_sentence(entered, statement):
    table = next(word for word in statement.split() if word.startswith("assessments_"))
    assert refusal(statement) == f"Rows of {table} are neither changed nor removed; add another."
    assert (LogEntry.objects.get(), TreeHead.objects.count()) == (entered, 1)


@pytest.mark.parametrize("verb", ["UPDATE", "DELETE"])
def test_evidence_and_decisions_are_guarded_in_the_same_way(signed, verb):
    for table in ("assessments_evidence", "assessments_decision"):
        statement = f"UPDATE {table} SET id = id" if verb == "UPDATE" else f"DELETE FROM {table}"
        assert refusal(statement) == f"Rows of {table} are neither changed nor removed; add another."


def test_a_row_is_not_replaced_or_emptied_out_either(entered):
    if connection.vendor == "postgresql":
        said = refusal("TRUNCATE assessments_treehead")
    else:
        said = refusal("INSERT OR REPLACE INTO assessments_treehead SELECT * FROM assessments_treehead")
    assert said == "Rows of assessments_treehead are neither changed nor removed; add another."


def test_a_guard_that_is_lifted_is_missed_and_put_back(db):
    assert append_only.unguarded() == []
    append_only.lift()
    assert append_only.unguarded() == sorted(append_only.KEPT)
    append_only.guard()
    append_only.guard()
    assert append_only.unguarded() == []
