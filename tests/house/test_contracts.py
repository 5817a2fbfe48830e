"""The import contracts of pyproject.toml hold, and each sees a fault that is planted in a copy of the code."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from tests.house.measure import ROOT, STOREYS

pytest.importorskip("importlinter", reason="the extra 'lint' is not installed; .ci/run has it")

LINT = "from importlinter.cli import lint_imports_command; lint_imports_command()"
FAULTS = {
    "1 Two storeys": ("courses/trade/errors.py", "import assessments.errors"),
    "2a The ground floor": ("courses/trade/errors.py", "import courses.content.errors"),
    "2b The upper floor": ("assessments/scenarios/errors.py", "import assessments.answers"),
    "3 The core is plain Python": ("courses/trade/errors.py", "import django.db"),
    "4 The rule engine knows no panels": ("assessments/rules/faults.py", "import courses.trade.errors"),
    "5 numpy": ("courses/actions.py", "import numpy"),
    "6 Nobody imports the server package": ("courses/actions.py", "import courses.server.env"),
    "7 No cycles": ("courses/models/catalogue.py", "import courses.models.enrolment"),
}


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """Return a copy of both storeys and their contracts."""
    for storey in STOREYS:
        leave = shutil.ignore_patterns("__pycache__", "static", "templates")
        shutil.copytree(ROOT / storey, tmp_path / storey, ignore=leave)
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    return tmp_path


def lint(folder: Path) -> subprocess.CompletedProcess[str]:
    """Return how the contracts come out in `folder`."""
    line = [sys.executable, "-c", LINT, "--no-cache"]
    paths = {"PYTHONPATH": str(folder), "PATH": "", "COLUMNS": "200", "PYTHONDONTWRITEBYTECODE": "1"}
    return subprocess.run(line, cwd=folder, env=paths, capture_output=True, text=True, check=False)


def test_the_contracts_are_kept() -> None:
    run = lint(ROOT)
    assert run.returncode == 0, run.stdout + run.stderr


@pytest.mark.parametrize("contract", FAULTS)
def test_a_contract_sees_its_fault(contract: str, copy: Path) -> None:
    place, fault = FAULTS[contract]
    module = copy / place
    module.write_text(f"{module.read_text(encoding='utf-8')}\n{fault}\n", encoding="utf-8")
    run = lint(copy)
    broken = [line for line in run.stdout.splitlines() if line.startswith(contract) and line.endswith("BROKEN")]
    assert run.returncode == 1
    assert broken


def test_a_new_folder_is_seen_until_it_has_a_place(copy: Path) -> None:
    (copy / "courses" / "odds").mkdir()
    (copy / "courses" / "odds" / "__init__.py").touch()
    run = lint(copy)
    assert run.returncode == 1
    assert "courses.odds" in run.stdout


def test_no_import_is_exempted() -> None:
    text = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
    assert "ignore_imports" not in text
