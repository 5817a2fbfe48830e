"""The shape every command-line door shares: JSON alone on standard output, one sentence and exit 2 for bad input."""

from __future__ import annotations

import io
import json
import math
import sys
import warnings
from abc import ABC, abstractmethod
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from django.core.management.base import BaseCommand, CommandError, handle_default_options

__all__ = ["Door", "DoorError", "read_json", "read_text"]


class DoorError(ValueError):
    """Bad input at a door: its text is the one sentence that is printed, saying what, where and what would be right."""


class Door(BaseCommand, ABC):
    """A command that answers with JSON (exit 0), finds something wanting (1) or refuses its input in one line (2).

    A door says what it takes in `add_arguments` and gives its answer from `answer`; any `ValueError` raised there
    (each refusal of the pure packages is one) becomes the line on standard error.
    """

    requires_system_checks = ()
    found_wanting = False

    @abstractmethod
    def answer(self, **options: Any) -> object:
        """What the door prints: text as it stands, anything else as JSON."""

    def wanting(self) -> None:
        """Make this run end with exit 1: its answer is printed, and what was checked falls short."""
        self.found_wanting = True

    def handle(self, *args: Any, **options: Any) -> None:
        self.found_wanting = False
        try:
            found = self.answer(**options)
        except ValueError as refusal:
            raise CommandError(_one_line(refusal), returncode=2) from refusal
        self.stdout.write(_printed(found))

    def run_from_argv(self, argv: list[str]) -> None:
        # Not flagged as called from the command line, Django's parser raises its errors instead of printing the usage.
        warnings.simplefilter("ignore")
        for stream in (sys.stdout, sys.stderr):
            if isinstance(stream, io.TextIOWrapper):
                stream.reconfigure(encoding="utf-8", errors="backslashreplace")
        try:
            given = self._parsed(argv)
            self.execute(*given.pop("args", ()), **given)
        except CommandError as refusal:
            self.stderr.write(_one_line(refusal))
            sys.exit(2)
        if self.found_wanting:
            sys.exit(1)

    def _parsed(self, argv: list[str]) -> dict[str, Any]:
        try:
            options = self.create_parser(argv[0], argv[1]).parse_args(argv[2:])
        except CommandError as wrong:
            said = str(wrong).removeprefix("Error: ")
            raise CommandError(f"{argv[1]}: {said}; {argv[1]} --help shows what it takes.") from wrong
        handle_default_options(options)
        return vars(options)


def read_text(source: str) -> str:
    """The text of the file named ``source``, or of standard input for ``-``; a `DoorError` says why there is none."""
    try:
        raw = sys.stdin.buffer.read() if source == "-" else Path(source).read_bytes()
    except OSError as wrong:
        raise DoorError(f"{source} cannot be read: {wrong.strerror}; name a file, or - for standard input.") from wrong
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as wrong:
        raise DoorError(f"{_named(source)}: byte {wrong.start} is not UTF-8; save the file as UTF-8 text.") from wrong


def read_json(source: str) -> object:
    """The JSON value in the file ``source`` or on standard input (``-``); NaN, infinity, repeated keys are refused."""
    text = read_text(source)
    try:
        return json.loads(text, parse_constant=_no_constant, parse_float=_finite, object_pairs_hook=_each_key_once)
    except json.JSONDecodeError as wrong:
        place = f"{_named(source)}, line {wrong.lineno}, column {wrong.colno}"
        raise DoorError(f"{place}: this is not JSON: {wrong.msg}.") from wrong
    except ValueError as wrong:
        raise DoorError(f"{_named(source)}: {wrong}") from wrong
    except RecursionError as wrong:
        raise DoorError(f"{_named(source)}: the JSON is nested too deep to be read.") from wrong


def _named(source: str) -> str:
    return "standard input" if source == "-" else source


def _no_constant(word: str) -> float:
    raise DoorError(f"{word} is not a number here; leave the key out where nothing was measured.")


def _finite(digits: str) -> float:
    value = float(digits)
    if not math.isfinite(value):
        raise DoorError(f"{digits} is too large to be a number here.")
    return value


def _each_key_once(pairs: Iterable[tuple[str, object]]) -> dict[str, object]:
    read: dict[str, object] = {}
    for key, value in pairs:
        if key in read:
            raise DoorError(f"the key {key!r} stands twice in one object; keep one.")
        read[key] = value
    return read


def _printed(found: object) -> str:
    return found if isinstance(found, str) else json.dumps(found, ensure_ascii=False, allow_nan=False, indent=2)


def _one_line(refusal: Exception) -> str:
    return " ".join(str(refusal).split())
