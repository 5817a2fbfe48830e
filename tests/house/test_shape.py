"""The size and shape of the code: the limits of docs/house.md."""

from textwrap import dedent

import pytest

from tests.house import measure
from tests.house.measure import LIMITS, REPEATED, STOREYS, Function, Twin, all_functions, lines_of, named, sources


@pytest.fixture(scope="module")
def figures() -> dict[str, int]:
    """Return the house in numbers."""
    return measure.figures()


@pytest.mark.parametrize("figure", LIMITS)
def test_a_figure_stays_within_its_limit(figure: str, figures: dict[str, int]) -> None:
    assert figures[figure] <= LIMITS[figure], SUSPECTS[figure]()


def longest_files() -> dict[str, int]:
    """Return the files that are longer than most may be."""
    return {named(path): lines_of(path) for path in sources(*STOREYS) if lines_of(path) > LIMITS["file p95"]}


def longest_functions() -> dict[str, int]:
    """Return the functions that are longer than most may be."""
    long = [one for one in all_functions(*STOREYS) if one.lines > LIMITS["function p95"]]
    return {f"{one.place} {one.name}": one.lines for one in long}


def longest_views() -> dict[str, int]:
    """Return the views that are too long."""
    views = [one for one in all_functions(*STOREYS) if one.view and one.lines > LIMITS["view longest"]]
    return {f"{one.place} {one.name}": one.lines for one in views}


def deepest_functions() -> dict[str, int]:
    """Return the functions that are deeper than most may be."""
    deep = [one for one in all_functions(*STOREYS) if one.nesting > LIMITS["nesting p95"]]
    return {f"{one.place} {one.name}": one.nesting for one in deep}


def untyped_functions() -> list[str]:
    """Return the functions that don't say what goes in or what comes out."""
    return [f"{one.place} {one.name}" for one in all_functions(*STOREYS) if not one.typed]


def longest_templates() -> dict[str, int]:
    """Return the templates that are longer than most may be."""
    long = [path for path in measure.templates() if lines_of(path) > LIMITS["template p95"]]
    return {named(path): lines_of(path) for path in long}


def repeated_blocks() -> list[Twin]:
    """Return the blocks that stand twice."""
    return measure.twins({named(path): path.read_text(encoding="utf-8") for path in sources(*STOREYS)}, REPEATED)


SUSPECTS = {
    "file p95": longest_files,
    "file longest": longest_files,
    "function p95": longest_functions,
    "function longest": longest_functions,
    "view longest": longest_views,
    "nesting p95": deepest_functions,
    "untyped functions": untyped_functions,
    "unexplained public names": measure.all_unexplained,
    "template p95": longest_templates,
    "blocks standing twice": repeated_blocks,
}
"""Where to look when a figure is over its limit."""


def test_there_are_views_and_templates_to_measure() -> None:
    assert [one for one in all_functions(*STOREYS) if one.view]
    assert measure.templates()


def test_the_95th_of_a_hundred_is_what_p95_returns() -> None:
    assert (measure.p95(range(1, 102)), measure.p95([7]), measure.p95([])) == (96, 7, 0)


def test_a_function_is_measured_without_its_docstring() -> None:
    text = dedent('''\
        def found(what, where: str = "") -> int:
            """Two lines

            that don't count."""
            for one in where:
                if one:
                    with one:
                        return 1
            return 0
    ''')
    assert list(measure.functions(text, "a.py")) == [Function("a.py:1", "found", 6, 3, typed=False, view=False)]


def test_what_takes_a_request_in_a_views_folder_is_a_view() -> None:
    text = "def show(request): ...\ndef words(person): ...\n"
    assert [one.view for one in measure.functions(text, "courses/views/a.py")] == [True, False]
    assert [one.view for one in measure.functions(text, "courses/middleware.py")] == [False, False]


def test_self_needs_no_type_and_a_missing_answer_type_is_seen() -> None:
    text = "class A:\n    def one(self) -> None: ...\n    async def two(self): ...\n"
    assert [one.typed for one in measure.functions(text, "a.py")] == [True, False]


def test_a_public_name_without_docstring_is_seen() -> None:
    text = 'class Panel:\n    """A piece."""\n    def film(self): ...\n    def _own(self): ...\ndef _inner(): ...\n'
    assert measure.unexplained(text, "a.py") == ["a.py: the module", "a.py:3 film"]


def test_a_module_without_code_needs_no_docstring() -> None:
    assert measure.unexplained("", "a.py") == []


def test_a_block_that_stands_twice_is_seen_once_and_whole() -> None:
    block = "\n".join(f"x{n} = {n}" for n in range(8))
    texts = {"a.py": f"import os\n{block}\n", "b.py": f"import os\n\ny = 1\n{block}\nz = 2\n"}
    assert measure.twins(texts, 6) == [Twin("a.py:2", "b.py:4", 8)]


def test_imports_parameters_and_lone_brackets_are_no_repetition() -> None:
    names = "".join(f"    {letter},\n" for letter in "bcdefgh")
    text = f"from a import (\n{names})\ndef work(\n{names}) -> int:\n    return b\n" + "(\n)\n" * 8
    assert measure.twins({"a.py": text, "b.py": text}, 6) == []
