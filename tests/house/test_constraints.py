"""The locked versions: exact, complete, and free of anything that says where they were fetched."""

import re
import tomllib

import pytest

from tests.house.measure import ROOT

LOCK = ROOT / ".ci" / "constraints.txt"
PIN = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*==[0-9][0-9a-z.]*")
ADDRESSES = ("://", "file:", "index-url", "find-links", "trusted-host", "@")


def astray(text: str) -> list[str]:
    """Return the lines that are no plain `name==version`."""
    return [line for line in text.splitlines() if not PIN.fullmatch(line) or any(mark in line for mark in ADDRESSES)]


def wanted_names() -> set[str]:
    """Return the names of all that pyproject.toml asks for, extras included."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    asked = [*project["dependencies"], *(one for extra in project["optional-dependencies"].values() for one in extra)]
    return {re.split(r"[\[<>=!~ ;]", one, maxsplit=1)[0].lower() for one in asked}


def test_every_locked_line_is_a_name_and_a_version() -> None:
    assert astray(LOCK.read_text(encoding="utf-8")) == []


def test_everything_asked_for_is_locked() -> None:
    locked = {line.split("==")[0] for line in LOCK.read_text(encoding="utf-8").splitlines()}
    assert wanted_names() - locked == set()


@pytest.mark.parametrize(
    "line",
    [
        "--index-url https://packages.example/simple",
        "--find-links /srv/wheels",
        "django @ file:///srv/django-5.2.whl",
        "django>=5.2",
        "",
    ],
)
def test_a_line_that_names_a_place_or_no_version_is_seen(line: str) -> None:
    assert astray(f"django==5.2.1\n{line}\n") == [line]
