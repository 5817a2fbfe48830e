"""The door `measure_pictures`: a table of contrasts out, or one sentence."""

import io
import json
from pathlib import Path

import pytest
from django.core.management import CommandError, call_command

from courses.management.commands import measure_pictures
from courses.pictures.contrast import COLOURS, STEPS, Entry, Meter, read_contrast


@pytest.fixture(autouse=True)
def _quick(monkeypatch: pytest.MonkeyPatch) -> None:
    """Say what is measured without rendering: it grows with severity and with darkness of the colour."""

    def entry(self: Meter, kind: str, colour: str, light: str, severity: float) -> Entry:
        return Entry(20 * severity * (1 + COLOURS.index(colour)) / 5, 2 * severity)

    monkeypatch.setattr(Meter, "entry", entry)


def said(out: Path, *kinds: str) -> dict[str, object]:
    answer = io.StringIO()
    call_command("measure_pictures", *kinds, out=str(out), stdout=answer, stderr=io.StringIO())
    return dict(json.loads(answer.getvalue()))


def test_it_writes_a_table_that_reads_and_says_where_a_kind_may_be_asked(tmp_path: Path) -> None:
    out = tmp_path / "contrast.toml"
    answer = said(out, "swirl", "haze")
    table = read_contrast(out.read_text(encoding="utf-8"), "contrast.toml")
    assert (table.kinds, table.colours, table.steps) == (("swirl", "haze"), COLOURS, STEPS)
    assert answer["kinds"]["haze"]["white"] == []  # type: ignore[index]
    assert "point" in answer["kinds"]["haze"]["black"] or table.of("haze", "black", "point", 0.5).rms_dl < 1.5  # type: ignore[index]


def test_kinds_that_are_not_named_are_kept(tmp_path: Path) -> None:
    out = tmp_path / "contrast.toml"
    said(out, "haze")
    said(out, "oxidation")
    assert read_contrast(out.read_text(encoding="utf-8"), "contrast.toml").kinds == ("oxidation", "haze")


def test_a_table_of_another_renderer_is_not_mixed_with_this_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    out = tmp_path / "contrast.toml"
    said(out, "haze")
    monkeypatch.setattr(measure_pictures, "RENDERER", 99)
    with pytest.raises(CommandError, match="measure every kind anew"):
        said(out, "swirl")


@pytest.mark.parametrize(
    ("kinds", "folder", "sentence"),
    [(["swril"], ".", "did you mean swirl?"), (["swirl"], "nowhere", "No such file or directory")],
)
def test_bad_input_is_one_sentence(tmp_path: Path, kinds: list[str], folder: str, sentence: str) -> None:
    with pytest.raises(CommandError) as refusal:
        said(tmp_path / folder / "contrast.toml", *kinds)
    assert refusal.value.returncode == 2
    assert sentence in str(refusal.value)
