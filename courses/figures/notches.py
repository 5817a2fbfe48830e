"""Notches: one mark for each thing asked, filled, next, too old or open."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Notch = Literal["on", "now", "old", "open"]


class NotchError(ValueError):
    """Counts that cannot stand on one board."""


@dataclass(frozen=True, slots=True)
class Notches:
    """A row of notches with the counts that it shows.

    `marks` runs filled, next, open, too old. `has_next` says that one of the open notches is the next act.
    """

    marks: tuple[Notch, ...]
    done: int
    total: int
    old: int
    has_next: bool


def notches(done: int, total: int, *, old: int = 0, next_is_here: bool = False) -> Notches:
    """The row for `done` of `total`, of which `old` are dashed: too old, or not to be had yet.

    The next act is marked only where an open notch is left for it.

    >>> notches(1, 4, old=1, next_is_here=True).marks
    ('on', 'now', 'open', 'old')

    Raises `NotchError` when a count is negative or `done` and `old` together pass `total`.
    """
    if min(done, total, old) < 0 or done + old > total:
        raise NotchError(f"{done} done and {old} too old do not fit into {total} notches.")
    free = total - done - old
    has_next = next_is_here and free > 0
    marks: list[Notch] = ["on"] * done
    marks += ["now"] * has_next
    marks += ["open"] * (free - has_next)
    marks += ["old"] * old
    return Notches(tuple(marks), done, total, old, has_next)


def in_few(row: Notches, most: int) -> Notches:
    """The same row drawn with at most `most` notches, for a cell that has no room for more.

    Anything done fills one notch at least, and only a row that is done fills them all; an open one stands where
    anything is open, and the rest is dashed. `most` is at least 3. Rows that fit stay as they are.

    >>> in_few(notches(1, 18, old=17), 5).marks
    ('on', 'old', 'old', 'old', 'old')
    """
    if row.total <= most:
        return row
    done = _share(row.done, row.total, most)
    left = most - done
    old = min(_share(row.old, row.total, most), left - 1) if row.done + row.old < row.total else left
    return notches(done, most, old=old, next_is_here=row.has_next)


def _share(part: int, whole: int, most: int) -> int:
    if part in (0, whole):
        return most * (part == whole)
    return min(max(1, part * most // whole), most - 1)
