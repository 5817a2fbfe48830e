"""The size and shape of the code: the limits of docs/house.md."""

from textwrap import dedent

from tests.house import measure
from tests.house.measure import STOREYS, Function, Twin, all_functions, lines_of, named, p95, sources


def test_no_file_is_longer_than_400_lines() -> None:
    assert {named(path): lines_of(path) for path in sources(*STOREYS) if lines_of(path) > 400} == {}


def test_files_stay_within_300_lines() -> None:
    assert p95(lines_of(path) for path in sources(*STOREYS)) <= 300


def test_no_function_is_longer_than_60_lines() -> None:
    assert {one.place: one.lines for one in all_functions(*STOREYS) if one.lines > 60} == {}


def test_functions_stay_within_30_lines() -> None:
    assert p95(one.lines for one in all_functions(*STOREYS)) <= 30


def test_no_view_is_longer_than_20_lines() -> None:
    views = [one for one in all_functions(*STOREYS) if one.view]
    assert views
    assert {f"{one.place} {one.name}": one.lines for one in views if one.lines > 20} == {}


def test_blocks_stay_within_two_levels() -> None:
    assert p95(one.nesting for one in all_functions(*STOREYS)) <= 2


def test_every_function_is_typed() -> None:
    assert [f"{one.place} {one.name}" for one in all_functions(*STOREYS) if not one.typed] == []


def test_every_public_name_of_the_pure_packages_is_explained() -> None:
    pure = sources(*measure.PURE)
    assert [name for path in pure for name in measure.unexplained(path.read_text(encoding="utf-8"), named(path))] == []


def test_no_six_lines_stand_twice() -> None:
    texts = {named(path): path.read_text(encoding="utf-8") for path in sources(*STOREYS)}
    assert measure.twins(texts, 6) == []


def test_templates_stay_within_120_lines() -> None:
    assert p95(lines_of(path) for path in measure.templates()) <= 120


def test_the_95th_of_a_hundred_is_what_p95_returns() -> None:
    assert (p95(range(1, 102)), p95([7]), p95([])) == (96, 7, 0)


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


def test_imports_and_lone_brackets_are_no_repetition() -> None:
    text = "from a import (\n    b,\n    c,\n    d,\n    e,\n    f,\n)\n" + "(\n)\n" * 8
    assert measure.twins({"a.py": text, "b.py": text}, 6) == []
