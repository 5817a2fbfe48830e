"""The door `contact_sheet`: sheets of every kind, or one sentence."""

import io
import json
from pathlib import Path

import pytest
from django.core.management import CommandError, call_command
from PIL import Image

from courses.management.commands import contact_sheet


def said(*kinds: str, out: Path) -> dict[str, list[dict[str, object]]]:
    answer = io.StringIO()
    call_command("contact_sheet", *kinds, out=str(out), stdout=answer)
    return dict(json.loads(answer.getvalue()))


@pytest.fixture(autouse=True)
def _small(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(contact_sheet, "SIZE", (96, 64))
    monkeypatch.setattr(contact_sheet, "TILE", (96, 64))
    monkeypatch.setattr(contact_sheet, "COLOURS", ("white", "black"))


def test_a_row_for_each_kind_in_its_right_and_a_wrong_light(tmp_path: Path) -> None:
    (sheet,) = said("swirl", "run", out=tmp_path / "sheets")["sheets"]
    with Image.open(tmp_path / "sheets" / str(sheet["file"])) as picture:
        assert picture.size == (4 + 4 * 100, 4 + 2 * 83)
    assert (sheet["kinds"], sheet["bytes"]) == (["swirl", "run"], (tmp_path / "sheets" / "sheet-1.webp").stat().st_size)


def test_many_kinds_fill_several_sheets(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(contact_sheet, "PER_SHEET", 2)
    found = said("run", "chip", "haze", out=tmp_path)["sheets"]
    assert [sheet["file"] for sheet in found] == ["sheet-1.webp", "sheet-2.webp"]


def test_an_unknown_kind_is_one_sentence(tmp_path: Path) -> None:
    with pytest.raises(CommandError, match=r"did you mean swirl\?"):
        said("swril", out=tmp_path)
    assert not list(tmp_path.iterdir())
