"""Rulers of the house: `python tests/house/measure.py` prints one line per figure."""

import ast
import re
import subprocess
import sys
from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
STOREYS = ("courses", "assessments")
PURE = (
    "courses/trade",
    "courses/content",
    "courses/figures",
    "courses/pictures",
    "assessments/scenarios",
    "assessments/answers",
    "assessments/rules",
    "assessments/marking",
    "assessments/competence",
    "assessments/quality",
    "assessments/credentials",
)
LIMITS: dict[str, int] = {
    "file p95": 300,
    "file longest": 400,
    "function p95": 30,
    "function longest": 60,
    "view longest": 20,
    "nesting p95": 2,
    "untyped functions": 0,
    "unexplained public names": 0,
    "template p95": 120,
    "blocks standing twice": 0,
}
"""What a figure may be at most. Raised by a decision in docs/decisions, or not at all."""
REPEATED = 6
"""So many lines that stand twice are a block."""
BLOCKS = (ast.If, ast.For, ast.While, ast.With, ast.Try)
Def = ast.FunctionDef | ast.AsyncFunctionDef


@dataclass(frozen=True, slots=True)
class Function:
    """One function: where, how long without its docstring, how deep, typed throughout or not, a view or not."""

    place: str
    name: str
    lines: int
    nesting: int
    typed: bool
    view: bool


@dataclass(frozen=True, slots=True)
class Twin:
    """A block of lines that stands in two places."""

    first: str
    second: str
    lines: int


def p95(values: Iterable[int]) -> int:
    """Return the value that ninety-five of a hundred don't exceed; 0 for none."""
    ordered = sorted(values)
    return ordered[int(0.95 * (len(ordered) - 1))] if ordered else 0


def sources(*folders: str, root: Path = ROOT) -> list[Path]:
    """Return the Python files below `folders`, migrations left out."""
    found = (path for folder in folders for path in (root / folder).rglob("*.py"))
    return sorted(path for path in found if "migrations" not in path.parts)


def templates(root: Path = ROOT) -> list[Path]:
    """Return every template of both storeys."""
    return sorted(path for storey in STOREYS for path in (root / storey).rglob("templates/**/*") if path.is_file())


def named(path: Path, root: Path = ROOT) -> str:
    """Return `path` as seen from the top of the project."""
    return path.relative_to(root).as_posix()


def lines_of(path: Path) -> int:
    """Return how many lines a file has."""
    return len(path.read_text(encoding="utf-8").splitlines())


def nesting(node: ast.AST) -> int:
    """Return how many blocks stand in each other below `node`; an `elif` counts as one deeper."""
    inner = max((nesting(child) for child in ast.iter_child_nodes(node)), default=0)
    return isinstance(node, BLOCKS) + inner


def code_lines(function: Def) -> int:
    """Return the lines of a function, decorators and docstring left out."""
    lines = (function.end_lineno or function.lineno) - function.lineno + 1
    if ast.get_docstring(function) is None:
        return lines
    words = function.body[0]
    return lines - ((words.end_lineno or words.lineno) - words.lineno + 1)


def is_typed(function: Def) -> bool:
    """Say whether what goes in and what comes out is annotated; `self` and `cls` say it themselves."""
    given = function.args
    named_ones = [*given.posonlyargs, *given.args, *given.kwonlyargs, given.vararg, given.kwarg]
    wanting = [one.arg for one in named_ones if one is not None and one.annotation is None]
    return function.returns is not None and not [name for name in wanting if name not in {"self", "cls"}]


def functions(text: str, place: str) -> Iterator[Function]:
    """Yield every function in `text`, methods and inner ones too; a view is what answers a request in `views/`."""
    for node in ast.walk(ast.parse(text)):
        if isinstance(node, Def):
            answers = "request" in [one.arg for one in node.args.args] and "/views/" in place
            size = code_lines(node), nesting(node)
            yield Function(f"{place}:{node.lineno}", node.name, *size, is_typed(node), answers)


def all_functions(*folders: str) -> list[Function]:
    """Return every function below `folders`."""
    return [one for path in sources(*folders) for one in functions(path.read_text(encoding="utf-8"), named(path))]


def unexplained(text: str, place: str) -> list[str]:
    """Return the public names of a module that have no docstring, the module itself included."""
    tree = ast.parse(text)
    if not tree.body:
        return []
    wanting = [] if ast.get_docstring(tree) else [f"{place}: the module"]
    return wanting + [f"{place}:{node.lineno} {node.name}" for node in _public(tree) if not ast.get_docstring(node)]


def all_unexplained() -> list[str]:
    """Return the public names of the pure chapters that have no docstring."""
    return [line for path in sources(*PURE) for line in unexplained(path.read_text(encoding="utf-8"), named(path))]


def _public(tree: ast.Module | ast.ClassDef) -> Iterator[Def | ast.ClassDef]:
    for node in tree.body:
        if not isinstance(node, Def | ast.ClassDef) or node.name.startswith("_"):
            continue
        yield node
        if isinstance(node, ast.ClassDef):
            yield from _public(node)


def twins(texts: dict[str, str], length: int) -> list[Twin]:
    """Return the blocks of at least `length` lines that stand twice.

    Imports, lists of parameters, comments and lone brackets don't count: they declare, they do nothing.
    """
    telling = {place: list(_telling(text)) for place, text in texts.items()}
    seen: dict[tuple[str, ...], list[tuple[str, int]]] = defaultdict(list)
    for place, lines in telling.items():
        for start in range(len(lines) - length + 1):
            seen[tuple(line for _, line in lines[start : start + length])].append((place, start))
    pairs = {(spots[0], spot) for spots in seen.values() for spot in spots[1:]}
    heads = [pair for pair in pairs if _before(pair) not in pairs]
    return sorted((_grown(head, pairs, telling, length) for head in heads), key=lambda twin: (twin.first, twin.second))


Spot = tuple[str, int]


def _before(pair: tuple[Spot, Spot]) -> tuple[Spot, Spot]:
    (one, start), (other, begin) = pair
    return (one, start - 1), (other, begin - 1)


def _grown(
    head: tuple[Spot, Spot], pairs: set[tuple[Spot, Spot]], telling: dict[str, list[tuple[int, str]]], length: int
) -> Twin:
    (one, start), (other, begin) = head
    more = 0
    while ((one, start + more + 1), (other, begin + more + 1)) in pairs:
        more += 1
    first, second = f"{one}:{telling[one][start][0]}", f"{other}:{telling[other][begin][0]}"
    return Twin(first, second, length + more)


def _telling(text: str) -> Iterator[tuple[int, str]]:
    declared = {number for node in ast.walk(ast.parse(text)) for number in _declaring(node)}
    for number, line in enumerate(text.splitlines(), start=1):
        bare = line.strip()
        if number not in declared and re.search(r"\w", bare) and not bare.startswith("#"):
            yield number, bare


def _declaring(node: ast.AST) -> range:
    if isinstance(node, ast.Import | ast.ImportFrom):
        return range(node.lineno, (node.end_lineno or node.lineno) + 1)
    return range(node.lineno + 1, node.body[0].lineno) if isinstance(node, Def) else range(0)


def kept_files(root: Path = ROOT) -> list[str]:
    """Return every file that git keeps or would keep."""
    git = [
        "git",
        "-c",
        "safe.directory=*",
        "-C",
        str(root),
        "ls-files",
        "--cached",
        "--others",
        "--exclude-standard",
        "-z",
    ]
    listed = subprocess.run(git, capture_output=True, text=True, check=True).stdout.split("\0")
    return sorted(name for name in set(listed) if name and (root / name).is_file())


def figures() -> dict[str, int]:
    """Return what docs/house.md shows: the house today, in numbers."""
    texts = {named(path): path.read_text(encoding="utf-8") for path in sources(*STOREYS)}
    sizes = [len(text.splitlines()) for text in texts.values()]
    found = [one for place, text in texts.items() for one in functions(text, place)]
    return {
        "modules": len(texts),
        "lines": sum(sizes),
        "lines of tests": sum(map(lines_of, sources("tests"))),
        "file p95": p95(sizes),
        "file longest": max(sizes, default=0),
        "functions": len(found),
        "function p95": p95(one.lines for one in found),
        "function longest": max((one.lines for one in found), default=0),
        "view longest": max((one.lines for one in found if one.view), default=0),
        "nesting p95": p95(one.nesting for one in found),
        "nesting deepest": max((one.nesting for one in found), default=0),
        "untyped functions": sum(not one.typed for one in found),
        "unexplained public names": len(all_unexplained()),
        "template p95": p95(map(lines_of, templates())),
        "blocks standing twice": len(twins(texts, REPEATED)),
    }


if __name__ == "__main__":
    for figure, value in figures().items():
        limit = f"  of at most {LIMITS[figure]}" if figure in LIMITS else ""
        sys.stdout.write(f"{figure:28}{value}{limit}\n")
