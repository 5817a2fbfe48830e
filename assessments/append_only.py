"""The guard in the database itself: the log, the record and published rule books are neither changed nor removed."""

from django.db import connections

from assessments.models import Decision, Evidence, LogEntry, Rejudgement, RuleBook, TreeHead

KEPT = {
    model._meta.db_table: model._meta.pk.column
    for model in (LogEntry, TreeHead, Evidence, Decision, RuleBook, Rejudgement)
}
VERBS = {
    "sqlite": ("UPDATE", "DELETE", "INSERT"),  # INSERT OR REPLACE removes a row and asks no other trigger
    "postgresql": ("UPDATE", "DELETE", "TRUNCATE"),
}
STANDING = {
    "sqlite": "SELECT name FROM sqlite_master WHERE type = 'trigger'",
    "postgresql": "SELECT tgname FROM pg_trigger WHERE tgenabled IN ('O', 'A')",
}
SENTENCE = "Rows of {table} are neither changed nor removed; add another."
FUNCTION = """
CREATE OR REPLACE FUNCTION assessments_append_only() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN RAISE EXCEPTION 'Rows of % are neither changed nor removed; add another.', TG_TABLE_NAME; END $$"""


def guard(using: str = "default") -> None:
    """Refuse changes and removals from here on, wherever that is not done yet."""
    connection = connections[using]
    stand = set(connection.introspection.table_names())
    with connection.cursor() as cursor:
        if connection.vendor == "postgresql":
            cursor.execute(FUNCTION)
        for table, verb in _guarded(connection.vendor):
            if table in stand:
                cursor.execute(_made(connection.vendor, table, verb))


def lift(using: str = "default") -> None:
    """Take the guard away."""
    connection = connections[using]
    with connection.cursor() as cursor:
        if connection.vendor == "postgresql":
            cursor.execute(
                "SET CONSTRAINTS ALL IMMEDIATE"
            )  # a trigger doesn't go while a foreign key waits to be checked
        for table, verb in _guarded(connection.vendor):
            cursor.execute(_dropped(connection.vendor, table, verb))


def unguarded(using: str = "default") -> list[str]:
    """Return the tables that lack some of their guard."""
    connection = connections[using]
    with connection.cursor() as cursor:
        cursor.execute(STANDING[connection.vendor])
        found = {str(name) for (name,) in cursor.fetchall()}
    return sorted({table for table, verb in _guarded(connection.vendor) if _name(table, verb) not in found})


def _guarded(vendor: str) -> list[tuple[str, str]]:
    return [(table, verb) for table in KEPT for verb in VERBS[vendor]]


def _name(table: str, verb: str) -> str:
    return f"{table}_no_{verb.lower()}"


def _made(vendor: str, table: str, verb: str) -> str:
    name = _name(table, verb)
    if vendor == "sqlite":
        where = f"WHEN NEW.{KEPT[table]} IN (SELECT {KEPT[table]} FROM {table})" if verb == "INSERT" else ""  # noqa: S608
        act = f"SELECT RAISE(ABORT, '{SENTENCE.format(table=table)}')"
        return f"CREATE TRIGGER IF NOT EXISTS {name} BEFORE {verb} ON {table} {where} BEGIN {act}; END"
    each = "STATEMENT" if verb == "TRUNCATE" else "ROW"
    made = f"TRIGGER {name} BEFORE {verb} ON {table} FOR EACH {each} EXECUTE FUNCTION assessments_append_only()"
    return f"CREATE OR REPLACE {made}"


def _dropped(vendor: str, table: str, verb: str) -> str:
    return f"DROP TRIGGER IF EXISTS {_name(table, verb)}" + (f" ON {table}" if vendor == "postgresql" else "")
