"""Words that may not be used, and entries that may not stand in the project."""

import ast
import re
from collections.abc import Iterator

import pytest

from tests.house.measure import ROOT, STOREYS, kept_files, named, sources

TOP = {
    "README.md", "DEVELOPERS.md", "manage.py", "pyproject.toml", "courses", "assessments", "tests", "fixtures", "docs",
    ".ci", ".gitignore",
}  # fmt: skip
HOMELESS = re.compile(r"^_*(utils?|helpers?|common|misc|managers?)(_|$)|_(utils?|helpers?)$")
VAGUE = re.compile(r"^_*(handle|process|do|perform)_")
PATHS = re.compile(r"(?<![\w.])/(work|root|home|Users|opt|srv)/\w|\b[A-Z]:\\Users|\.\./shared\b")
KNOWN = r"localhost|127\.0\.0\.1|www\.w3\.org|json-schema\.org|([\w-]+\.)*example(\.org)?\b"
REGISTRIES = re.compile(r"--(extra-)?index-url|--find-links|--trusted-host|https?://(?!" + KNOWN + r")\w[\w-]*\.\w")
UNFINISHED = re.compile(r"\b(TODO|FIXME|XXX)\b|pytest\.mark\.(skip|xfail)\b")
TEXT = (".py", ".toml", ".txt", ".md", ".html", ".css", ".js", ".svg", ".cfg", ".sh", "run")
QUOTING = {"tests/house/test_words.py", "tests/house/test_constraints.py"}
"""Files that name what is forbidden, to look for it."""


def vague_names(text: str, place: str) -> Iterator[str]:
    """Yield each function or class whose name says that something is done and not what."""
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef) and VAGUE.search(node.name):
            yield f"{place}:{node.lineno} {node.name}"


def lines_with(pattern: re.Pattern[str], files: list[str]) -> list[str]:
    """Return every line of a kept text file in which `pattern` stands."""
    found = []
    for name in files:
        if name.endswith(TEXT) and name not in QUOTING:
            lines = (ROOT / name).read_text(encoding="utf-8").splitlines()
            found += [f"{name}:{at}: {line.strip()}" for at, line in enumerate(lines, start=1) if pattern.search(line)]
    return found


def test_the_top_level_holds_the_named_entries_and_no_other() -> None:
    assert {name.split("/")[0] for name in kept_files()} - TOP == set()


def test_every_module_is_named_for_its_noun() -> None:
    parts = {part for path in sources(*STOREYS) for part in [path.stem, *path.relative_to(ROOT).parts[1:-1]]}
    assert {part for part in parts if HOMELESS.search(part)} - {"management"} == set()


def test_no_function_handles_or_processes() -> None:
    found = [one for path in sources(*STOREYS) for one in vague_names(path.read_text(encoding="utf-8"), named(path))]
    assert found == []


def test_no_kept_file_names_a_folder_of_this_machine() -> None:
    assert lines_with(PATHS, kept_files()) == []


def test_no_kept_file_names_a_package_registry() -> None:
    assert lines_with(REGISTRIES, kept_files()) == []


def test_nothing_is_left_unfinished_or_switched_off() -> None:
    assert lines_with(UNFINISHED, [name for name in kept_files() if not name.endswith(".md")]) == []


@pytest.mark.parametrize("name", ["utils", "form_helpers", "common", "manager", "misc"])
def test_a_homeless_module_is_seen(name: str) -> None:
    assert HOMELESS.search(name)


@pytest.mark.parametrize("name", ["air", "commands", "units", "uncommon"])
def test_a_module_with_a_noun_is_left_alone(name: str) -> None:
    assert not HOMELESS.search(name)


def test_a_vague_name_is_seen() -> None:
    assert list(vague_names("def process_answer(): ...\ndef hand_in(): ...\n", "a.py")) == ["a.py:1 process_answer"]


@pytest.mark.parametrize(
    "line", ["cd /" + "root/site", "see ../" + "shared/a.md", "C:\\" + "Users\\me", "/" + "home/me"]
)
def test_a_machine_path_is_seen(line: str) -> None:
    assert PATHS.search(line)


@pytest.mark.parametrize("line", ["lessons/work/", "/usr/lib/postgresql", "GET /work", "courses/home/x"])
def test_a_plain_path_is_left_alone(line: str) -> None:
    assert not PATHS.search(line)


@pytest.mark.parametrize("line", ["--index-url x", "https://packages.invalid/simple", "http://mirror.invalid/a"])
def test_a_registry_is_seen(line: str) -> None:
    assert REGISTRIES.search(line)


@pytest.mark.parametrize("line", ["# TODO later", "@pytest.mark.skip", "@pytest.mark.xfail(strict=True)"])
def test_unfinished_work_is_seen(line: str) -> None:
    assert UNFINISHED.search(line)
