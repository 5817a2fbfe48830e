"""Every module has its test file, and every test file its module."""

import ast
from pathlib import Path

import pytest

from tests.house.measure import ROOT, STOREYS, named, sources

UNTESTED = {
    "courses/server/wsgi.py",  # the load tests start the server through it
    "courses/server/urls.py",  # tables of addresses: the tests of each view go through them
    "courses/urls.py",
    "assessments/urls.py",
    "courses/apps.py",  # names for the framework
    "assessments/apps.py",
}
"""Modules that only name things; whatever asks for a page runs them."""


def has_code(text: str) -> bool:
    """Say whether a module does more than import, name what it gives away and declare classes that do nothing."""
    return any(_does_something(node) for node in ast.parse(text).body)


def _does_something(node: ast.stmt) -> bool:
    if isinstance(node, ast.Assign):
        return [ast.unparse(one) for one in node.targets] != ["__all__"]
    if isinstance(node, ast.ClassDef):
        return any(not isinstance(one, ast.Expr | ast.AnnAssign | ast.Pass) for one in node.body)
    return not isinstance(node, ast.Expr | ast.Import | ast.ImportFrom)


def mirror_of(module: Path) -> Path:
    """Return where the tests of `module` stand: courses/trade/air.py has tests/courses/trade/test_air.py."""
    name = module.parent.name if module.name == "__init__.py" else module.stem
    return Path("tests") / module.parent / f"test_{name}.py"


def wanted_mirrors() -> dict[str, Path]:
    """Return module to test file, for every module with code of its own."""
    modules = [path for path in sources(*STOREYS) if has_code(path.read_text(encoding="utf-8"))]
    return {named(path): mirror_of(path.relative_to(ROOT)) for path in modules if named(path) not in UNTESTED}


def test_every_module_has_its_test_file() -> None:
    wanting = {module: str(test) for module, test in wanted_mirrors().items() if not (ROOT / test).is_file()}
    assert wanting == {}


def test_every_test_file_stands_in_a_folder_of_the_house() -> None:
    mirrored = [path for storey in STOREYS for path in (ROOT / "tests" / storey).rglob("test_*.py")]
    astray = [named(path) for path in mirrored if not (ROOT / path.parent.relative_to(ROOT / "tests")).is_dir()]
    assert mirrored
    assert astray == []


@pytest.mark.parametrize(
    ("module", "test"),
    [
        ("courses/trade/air.py", "tests/courses/trade/test_air.py"),
        ("courses/figures/__init__.py", "tests/courses/figures/test_figures.py"),
    ],
)
def test_a_test_stands_where_its_module_stands(module: str, test: str) -> None:
    assert mirror_of(Path(module)) == Path(test)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", False),
        ('"""Words."""\nfrom a import b\n__all__ = ["b"]\n', False),
        ('class Refused(Exception):\n    """A change that may not be made."""\n', False),
        ("LIMIT = 3\n", True),
        ("class Panel:\n    film_um: float\n    def left(self) -> float: ...\n", True),
        ("def a() -> None: ...\n", True),
    ],
)
def test_a_module_without_code_of_its_own_needs_no_tests(text: str, *, code: bool) -> None:
    assert has_code(text) is code
