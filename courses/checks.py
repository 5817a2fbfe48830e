"""System checks of the ground floor: what is said at every start."""

import sqlite3
from collections.abc import Sequence
from typing import Any

from django.core.checks import CheckMessage, Error, Info, register
from django.db import connection

from courses.content.errors import FileRefused
from courses.shipped import shelf


@register("database")
def journal_mode(app_configs: Any, **_kwargs: Any) -> Sequence[CheckMessage]:
    """Name the journal that SQLite was given, and why."""
    if connection.vendor != "sqlite":
        return []
    wal = "journal_mode=WAL" in str(connection.settings_dict["OPTIONS"].get("init_command", ""))
    journal = "a write-ahead log" if wal else "a rollback journal, cut off after each change"
    why = "From 3.51.3 on, two writers that meet at a reset of the write-ahead log can't corrupt it; before, they can."
    return [Info(f"SQLite {sqlite3.sqlite_version} keeps {journal}. {why}", id="courses.I001")]


@register("content")
def shipped_packs(app_configs: Any, **_kwargs: Any) -> Sequence[CheckMessage]:
    """Read every shipped course and lesson."""
    try:
        shelf()
    except FileRefused as fault:
        return [Error(str(fault), hint="Mend the file; setup changes nothing until it reads.", id="courses.E001")]
    return []
