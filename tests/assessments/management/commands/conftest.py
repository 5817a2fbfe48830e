"""A door as a shell sees it: standard output, standard error, exit code."""

import io
from collections.abc import Callable
from dataclasses import dataclass

import pytest
from django.core.management import BaseCommand, get_commands, load_command_class


@dataclass(frozen=True, slots=True)
class Run:
    """What one run of a command left behind."""

    out: str
    err: str
    code: int


Shell = Callable[..., Run]


@pytest.fixture
def shell(monkeypatch: pytest.MonkeyPatch) -> Shell:
    """Run a command with its arguments, and with a text on standard input."""

    def run(name: str, *arguments: str, stdin: str = "") -> Run:
        monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(stdin.encode())))
        app = get_commands()[name]
        command = app if isinstance(app, BaseCommand) else load_command_class(app, name)
        out, err, code = io.StringIO(), io.StringIO(), 0
        command.stdout._out, command.stderr._out = out, err
        try:
            command.run_from_argv(["manage.py", name, *arguments])
        except SystemExit as ended:
            code = int(ended.code or 0)
        return Run(out.getvalue(), err.getvalue(), code)

    return run
