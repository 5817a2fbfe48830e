"""The door `picture`: a scene in, a picture and what shows in it out."""

import io
import json
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from django.core.management import CommandError, call_command
from PIL import Image

from courses.management.commands.picture import _peak_mb

ROOT = Path(__file__).parents[4]
SWIRL = {"kind": "swirl", "severity": 0.6}
SPEC = {"substrate": "clear_coat", "colour": "black", "size": [240, 160], "seed": 7, "defects": [SWIRL]}


@pytest.fixture
def spec(tmp_path: Path) -> Callable[..., str]:
    """Write a scene down and return the name of its file."""

    def write(**more: object) -> str:
        path = tmp_path / "panel.json"
        path.write_text(json.dumps({**SPEC, **more}), encoding="utf-8")
        return str(path)

    return write


def shown(*words: str, **options: Any) -> str:
    out = io.StringIO()
    call_command("picture", *words, stdout=out, **options)
    return out.getvalue()


def test_a_scene_becomes_a_picture_and_its_numbers(spec: Callable[..., str], tmp_path: Path) -> None:
    out = tmp_path / "panel.webp"
    answer = json.loads(shown(spec(), out=str(out), light="point", lamp="0.4,0.5", json=True))
    assert set(answer) == {"size", "bytes", "ms", "peak_mb", "defects"}
    assert (answer["size"], answer["bytes"]) == ([240, 160], out.stat().st_size)
    assert answer["ms"] > 0
    assert answer["peak_mb"] > 0
    (defect,) = answer["defects"]
    assert (set(defect), defect["kind"], defect["area"]) == ({"kind", "cnr", "rms_dl", "area"}, "swirl", 1)
    assert defect["cnr"] > 3
    with Image.open(out) as picture:
        assert picture.size == (240, 160)


def test_masks_are_written_one_a_defect(spec: Callable[..., str], tmp_path: Path) -> None:
    two = [SWIRL, {"kind": "scratch", "region": {"box": [0.2, 0.2, 0.8, 0.8]}}]
    shown(spec(defects=two), out=str(tmp_path / "panel.webp"), masks=str(tmp_path / "new" / "masks"))
    files = sorted(path.name for path in (tmp_path / "new" / "masks").iterdir())
    assert files == ["00-swirl.png", "01-scratch.png"]
    with Image.open(tmp_path / "new" / "masks" / files[0]) as mask:
        assert mask.getextrema() == (255, 255)


def test_it_answers_in_words_too(spec: Callable[..., str], tmp_path: Path) -> None:
    lines = shown(spec(), out=str(tmp_path / "panel.webp")).splitlines()
    assert lines[0].startswith("240 × 160 pixels, ")
    assert lines[1].startswith("swirl: contrast ")
    assert lines[1].endswith(", 100.0% of the picture")


def test_a_clean_panel_has_no_defects(spec: Callable[..., str], tmp_path: Path) -> None:
    assert json.loads(shown(spec(defects=[]), out=str(tmp_path / "a.webp"), json=True))["defects"] == []


@pytest.mark.parametrize(
    ("options", "sentence"),
    [
        (
            {"lamp": "0.5"},
            "--lamp '0.5' is no place; write two fractions of the picture from 0 to 1, such as 0.5,0.42.",
        ),
        ({"lamp": "1.5,0.4"}, "--lamp '1.5,0.4' is no place; "),
        ({"lamp": "nan,0.4"}, "--lamp 'nan,0.4' is no place; "),
        ({"out": "panel.png"}, "--out 'panel.png' is no WebP picture; end its name in .webp."),
        ({"out": "nowhere/panel.webp"}, "--out 'nowhere/panel.webp' can't be written; "),
        ({"masks": "pyproject.toml"}, "--masks 'pyproject.toml' is a file; name a folder."),
    ],
)
def test_bad_options_are_one_sentence(
    spec: Callable[..., str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch, options: dict[str, str], sentence: str
) -> None:
    monkeypatch.chdir(ROOT)
    with pytest.raises(CommandError) as refusal:
        shown(spec(), **{"out": str(tmp_path / "panel.webp"), **options})
    assert refusal.value.returncode == 2
    assert str(refusal.value).startswith(sentence)
    assert [path.name for path in tmp_path.iterdir()] == ["panel.json"]


@pytest.mark.parametrize(
    ("scene", "sentence"),
    [
        ({"defects": [{"kind": "swirl", "severity": 2}]}, "defects[0].severity: 2 lies outside 0 to 1; "),
        ({"size": [9, 9]}, "size: 9 lies outside 64 to 1920; "),
        ({"colour": "nawy"}, "colour: There is no colour 'nawy'; "),
    ],
)
def test_a_bad_scene_is_refused_and_nothing_is_written(
    spec: Callable[..., str], tmp_path: Path, scene: dict[str, object], sentence: str
) -> None:
    with pytest.raises(CommandError) as refusal:
        shown(spec(**scene), out=str(tmp_path / "panel.webp"), masks=str(tmp_path / "masks"))
    assert (refusal.value.returncode, str(refusal.value).startswith(sentence)) == (2, True)
    assert [path.name for path in tmp_path.iterdir()] == ["panel.json"]


def test_memory_is_known_where_the_kernel_keeps_no_mark(tmp_path: Path) -> None:
    assert _peak_mb(tmp_path / "nothing") > 0


def test_only_an_object_is_a_scene(tmp_path: Path) -> None:
    path = tmp_path / "list.json"
    path.write_text("[1]", encoding="utf-8")
    with pytest.raises(CommandError, match="holds no object; write "):
        shown(str(path), out=str(tmp_path / "panel.webp"))


def test_what_cannot_be_written_is_said(spec: Callable[..., str], tmp_path: Path) -> None:
    blocked = tmp_path / "masks"
    (blocked / "00-swirl.png").mkdir(parents=True)
    with pytest.raises(CommandError, match="00-swirl.png can't be written: "):
        shown(spec(), out=str(tmp_path / "panel.webp"), masks=str(blocked))
    with pytest.raises(CommandError, match="can't be made: "):
        shown(spec(), out=str(tmp_path / "panel.webp"), masks=str(tmp_path / "panel.json" / "masks"))


def test_from_a_shell_one_line_stands_on_standard_error(spec: Callable[..., str], tmp_path: Path) -> None:
    words = [sys.executable, "manage.py", "picture", spec(), "--light", "moon", "--out", str(tmp_path / "a.webp")]
    run = subprocess.run(words, cwd=ROOT, capture_output=True, text=True, check=False)
    assert (run.returncode, run.stdout, len(run.stderr.splitlines())) == (2, "", 1)
    assert "invalid choice: 'moon'" in run.stderr
