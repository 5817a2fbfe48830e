"""What the documents say is there, and what is there is said: commands, addresses, variables, checks, figures."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.house import measure
from tests.house.measure import ROOT, STOREYS, kept_files, sources

VARIABLE = re.compile(r"\b(?:RAKING_[A-Z_]+[A-Z]|DATABASE_URL)\b")
CHECK = re.compile(r"\b(?:courses|assessments)\.[EWI]\d{3}\b")
ADDRESS = re.compile(r"path\(.*\bname=\"([a-z-]+)\"")
PLACE = re.compile(r"`((?:courses|assessments|tests|fixtures|docs|\.ci)/[\w./-]+)`")
DOCUMENTS = [ROOT / "README.md", ROOT / "DEVELOPERS.md", *sorted((ROOT / "docs").rglob("*.md"))]


def page(name: str) -> str:
    """Return the text of a document."""
    return (ROOT / name).read_text(encoding="utf-8")


def in_code(pattern: re.Pattern[str], *folders: str) -> set[str]:
    """Return every match of `pattern` in the Python files below `folders`."""
    return {found for path in sources(*folders) for found in pattern.findall(path.read_text(encoding="utf-8"))}


def commands() -> set[str]:
    """Return the name of every management command."""
    files = [path for storey in STOREYS for path in (ROOT / storey / "management" / "commands").glob("*.py")]
    return {path.stem for path in files} - {"__init__"}


def quoted(text: str) -> set[str]:
    """Return every word that stands in backticks, a command without `manage.py` and its arguments."""
    spans = re.findall(r"`([^`\n]+)`", text)
    return {re.split(r"[ \[]", span.removeprefix("python ").removeprefix("manage.py "))[0] for span in spans}


def links(document: Path) -> Iterator[Path]:
    """Yield every file that a document links to."""
    for target in re.findall(r"\]\(([^)#\s]+)", document.read_text(encoding="utf-8")):
        if "://" not in target:
            yield (document.parent / target).resolve()


def paths_named(text: str) -> set[str]:
    """Return every path of the project that stands in backticks and has no placeholder."""
    return {one.rstrip("/") for one in PLACE.findall(text)}


def block_after(heading: str, text: str) -> dict[str, str]:
    """Return the NAME=value lines of the first code block below a heading."""
    below = text.split(heading, 1)[1]
    body = re.split(r"^```\w*$", below, flags=re.MULTILINE)[1]
    return dict(line.split("=", 1) for line in body.split())


def test_every_command_is_described_for_whoever_runs_the_site() -> None:
    assert commands() - quoted(page("docs/operating.md")) == set()


def test_every_address_stands_on_the_page_of_the_house() -> None:
    assert in_code(ADDRESS, *STOREYS) ^ (quoted(page("docs/house.md")) & _address_like()) == set()


def _address_like() -> set[str]:
    table = page("docs/house.md").split("## Addresses", 1)[1]
    return {name for line in table.splitlines() if line.startswith("| `") for name in quoted(line.split("|")[1])}


def test_every_variable_is_explained_and_none_is_invented() -> None:
    rows = [line.split("|")[1] for line in page("docs/operating.md").splitlines() if line.startswith("| `")]
    explained = {found for row in rows for found in VARIABLE.findall(row)}
    assert explained == in_code(VARIABLE, *STOREYS)


def test_every_system_check_is_explained_and_none_is_invented() -> None:
    assert set(CHECK.findall(page("docs/operating.md"))) == in_code(CHECK, *STOREYS)


def test_the_production_environment_is_the_one_that_quality_tries() -> None:
    from courses.management.commands.quality import PRODUCTION

    assert block_after("## On a server", page("docs/operating.md")) == dict(PRODUCTION)


@pytest.mark.parametrize("document", DOCUMENTS, ids=lambda path: path.name)
def test_every_link_leads_to_a_file(document: Path) -> None:
    assert [str(target) for target in links(document) if not target.exists()] == []


@pytest.mark.parametrize("document", DOCUMENTS, ids=lambda path: path.name)
def test_every_path_that_is_named_stands(document: Path) -> None:
    assert [one for one in paths_named(document.read_text(encoding="utf-8")) if not (ROOT / one).exists()] == []


@pytest.mark.parametrize(
    "name",
    ["house", "journey", "operating", "glossary", "changelog", "trade", "rulebook", "decisions/0001-two-storeys"],
)
def test_the_documents_stand(name: str) -> None:
    assert f"docs/{name}.md" in kept_files()


def test_the_page_of_the_house_tells_the_limits_of_the_rulers() -> None:
    table = page("docs/house.md").split("## Limits", 1)[1]
    rows = [line.split("|")[1:3] for line in table.splitlines() if line.count("|") == 4]
    told = {figure.strip(): int(limit.split()[0]) for figure, limit in rows if limit.strip()[:1].isdigit()}
    assert told == measure.LIMITS


def test_readme_and_developers_hold_each_command_in_one_line() -> None:
    lines = page("README.md").splitlines()
    assert [line for line in lines if line.endswith("manage.py demo")]
    assert [line for line in lines if "'.[test,browser]'" in line and line.endswith("-m pytest")]


def test_a_path_that_is_gone_and_a_command_in_backticks_are_seen() -> None:
    text = "Run `python manage.py demo [--port N]`, see `courses/gone.py`, `docs/x/` and `tests/<name>.py`."
    assert (paths_named(text), quoted("Run `manage.py demo [--port N]` or `sum`")) == (
        {"courses/gone.py", "docs/x"},
        {"demo", "sum"},
    )


def test_a_block_is_read_as_an_environment() -> None:
    assert block_after("## B", "## A\n```sh\nC=no\n```\n## B\nwords\n```sh\nA=1\nB=x=y\n```\n") == {
        "A": "1",
        "B": "x=y",
    }
