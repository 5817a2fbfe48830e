"""System checks of the ground floor: what is said at every start."""

import sqlite3
from collections.abc import Sequence
from typing import Any

from django.core.checks import CheckMessage, Error, Info, register
from django.db import connection

from courses.content.errors import PackError
from courses.shipped import shelf


@register("database")
def journal_mode(app_configs: Any, **_kwargs: Any) -> Sequence[CheckMessage]:
    """Name the journal that SQLite was given, and why."""
    if connection.vendor != "sqlite":
        return []
    wal = "journal_mode=WAL" in str(connection.settings_dict["OPTIONS"].get("init_command", ""))
    library = sqlite3.sqlite_version
    if wal:
        return [Info(f"SQLite {library} keeps a write-ahead log: from 3.51.3 on it is safe.", id="courses.I001")]
    reason = "before 3.51.3 two writers that meet at a reset of the write-ahead log can corrupt it"
    return [Info(f"SQLite {library} keeps a rollback journal, cut off after each change: {reason}.", id="courses.I001")]


@register("content")
def shipped_packs(app_configs: Any, **_kwargs: Any) -> Sequence[CheckMessage]:
    """Read every shipped course and lesson."""
    try:
        shelf()
    except PackError as fault:
        return [Error(str(fault), hint="Mend the file; setup changes nothing until it reads.", id="courses.E001")]
    return []
