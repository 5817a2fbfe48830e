"""The shape every command-line door shares."""

import io
import json
from pathlib import Path
from typing import Any

import pytest
from django.core.management import CommandError, call_command
from django.core.management.base import CommandParser

from courses.management.door import Door, DoorError, read_json, read_text


class Echo(Door):
    """A door for these tests: it answers with what it was given, or refuses the word `bad`."""

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("word")
        parser.add_argument("--short", action="store_true")

    def answer(self, **options: Any) -> object:
        if options["word"] == "bad":
            raise DoorError("The word is\nbad; give a good one.")
        if options["short"]:
            self.wanting()
        return options["word"] if options["word"] == "plain" else {"word": options["word"]}


def run(capsys: pytest.CaptureFixture[str], *argv: str) -> tuple[int, str, str]:
    code = 0
    try:
        Echo().run_from_argv(["manage.py", "echo", *argv])
    except SystemExit as stop:
        code = int(stop.code or 0)
    said = capsys.readouterr()
    return code, said.out, said.err


def test_an_answer_is_json_alone_with_its_letters_unescaped(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(capsys, "µm")
    assert (code, json.loads(out), err) == (0, {"word": "µm"}, "")
    assert "µm" in out


def test_text_is_printed_as_it_stands(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys, "plain") == (0, "plain\n", "")


def test_bad_input_is_one_line_and_exit_two(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys, "bad") == (2, "", "The word is bad; give a good one.\n")


def test_what_is_found_wanting_is_printed_and_exits_with_one(capsys: pytest.CaptureFixture[str]) -> None:
    code, out, err = run(capsys, "good", "--short")
    assert (code, json.loads(out), err) == (1, {"word": "good"}, "")


@pytest.mark.parametrize(
    ("argv", "sentence"),
    [
        ([], "echo: the following arguments are required: word; echo --help shows what it takes.\n"),
        (["good", "--bogus"], "echo: unrecognized arguments: --bogus; echo --help shows what it takes.\n"),
    ],
)
def test_a_mistyped_line_is_one_line_too(capsys: pytest.CaptureFixture[str], argv: list[str], sentence: str) -> None:
    assert run(capsys, *argv) == (2, "", sentence)


def test_a_door_called_from_code_raises_its_sentence() -> None:
    with pytest.raises(CommandError, match="The word is bad; give a good one") as refusal:
        call_command(Echo(), "bad")
    assert refusal.value.returncode == 2


def test_a_door_without_an_answer_is_a_mistake_of_ours() -> None:
    with pytest.raises(TypeError, match="answer"):
        Door()


def test_doors_run_no_system_checks() -> None:
    assert not Door.requires_system_checks


def written(folder: Path, raw: bytes) -> str:
    path = folder / "in.json"
    path.write_bytes(raw)
    return str(path)


def test_json_is_read_from_a_file_and_from_standard_input(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    raw = '{"air": 12.5, "note": "µm"}'.encode()
    monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(raw)))
    assert read_json(written(tmp_path, b"\xef\xbb\xbf" + raw)) == read_json("-") == {"air": 12.5, "note": "µm"}


@pytest.mark.parametrize(
    ("raw", "sentence"),
    [
        (b'{"a": 1 "b"}', ", line 1, column 9: this is not JSON: "),
        (b"", ", line 1, column 1: this is not JSON: Expecting value."),
        (b'{"a":\nNaN}', ": NaN is not a number here; leave the key out where nothing was measured."),
        (b'{"a": -Infinity}', ": -Infinity is not a number here; leave the key out where nothing was measured."),
        (b'{"a": 1e999}', ": 1e999 is too large to be a number here."),
        (b'{"a": 1, "a": 2}', ": the key 'a' stands twice in one object; keep one."),
        (b'{"a": "\xff"}', ": byte 7 is not UTF-8; save the file as UTF-8 text."),
        (b"[" * 100_000, ": the JSON is nested too deep to be read."),
    ],
)
def test_json_that_cannot_be_read_is_refused_with_its_place(tmp_path: Path, raw: bytes, sentence: str) -> None:
    path = written(tmp_path, raw)
    with pytest.raises(DoorError) as refusal:
        read_json(path)
    assert str(refusal.value).startswith(path + sentence)


def test_a_missing_file_is_named(tmp_path: Path) -> None:
    with pytest.raises(DoorError, match=r"none\.json cannot be read: No such file or directory; name a file, or -"):
        read_text(str(tmp_path / "none.json"))
