"""Every check of the house, one exit code."""

import sys

import pytest
from django.core.management import CommandError, call_command

from courses.management.commands import quality


def test_what_falls_short_is_named_and_the_rest_still_runs(monkeypatch, capsys):
    sound, broken = [sys.executable, "-c", "print('fine')"], [sys.executable, "-c", "import sys; sys.exit('crooked')"]
    monkeypatch.setattr(quality, "CHECKS", {"first": sound, "second": broken, "third": sound})
    with pytest.raises(CommandError, match="Wanting: second.") as refusal:
        call_command("quality")
    said = capsys.readouterr().out
    assert refusal.value.returncode == 1
    assert "crooked" in said
    assert "third" in said
    assert "fine" not in said


def test_when_all_holds_it_says_so(monkeypatch, capsys):
    monkeypatch.setattr(quality, "CHECKS", {"one": [sys.executable, "-c", ""]})
    call_command("quality")
    assert "All 1 hold." in capsys.readouterr().out


def test_it_covers_what_the_house_asks():
    assert list(quality.CHECKS) == [
        "format",
        "lint",
        "templates",
        "types",
        "import contracts",
        "system checks",
        "migrations up to date",
        "safe to deploy",
        "house",
    ]
    assert quality.CHECKS["safe to deploy"][3:] == ["--deploy", "--fail-level", "WARNING"]
