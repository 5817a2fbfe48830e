"""The door `sum`: numbers and text in, one answer or one sentence out."""

import io
import json
import subprocess
import sys
from pathlib import Path

import pytest
from django.core.management import CommandError, call_command

ROOT = Path(__file__).parents[4]


def said(*words: str, **options: object) -> str:
    out = io.StringIO()
    call_command("sum", *words, stdout=out, **options)
    return out.getvalue()


def refused(*words: str, **options: object) -> str:
    with pytest.raises(CommandError) as refusal:
        said(*words, **options)
    assert refusal.value.returncode == 2
    return str(refusal.value)


def test_a_sum_answers_in_json() -> None:
    answer = json.loads(said("dew_point", "air_degc=68 °F", "air_rh=50", json=True))
    assert answer["output"] == {"value": 9.26, "unit": "degc"}
    assert set(answer) == {"name", "title", "inputs", "output", "also", "formula", "source", "mark", "notes"}


def test_a_sum_answers_in_words_with_formula_source_and_doubt() -> None:
    lines = said("dew_margin", "air_degc=18", "air_rh=65", "surface_degc=13").splitlines()
    assert lines[:2] == ["Surface above dew point: 1.7\xa0K", "Dew point: 11.3\xa0°C"]
    assert lines[5].startswith("margin = surface − Td; ")
    assert lines[6].startswith("Source: Alduchov and Eskridge, ")
    assert lines[7].startswith("With meters off by 0.5\xa0K and 3\xa0%")


def test_a_file_of_inputs_answers_in_json(tmp_path: Path) -> None:
    path = tmp_path / "inputs.json"
    path.write_text('{"surface_degc": 12, "around_degc": "71.6 °F", "emissivity": 0.28}', encoding="utf-8")
    assert json.loads(said("infrared_reading", str(path)))["output"] == {"value": 19.15, "unit": "degc"}


def test_the_list_names_every_sum() -> None:
    names = ["dew_point", "dew_margin", "surface_rh", "water_content", "infrared_reading"]
    names += ["gauge_statistics", "gloss", "reflectance", "coherent_share"]
    names += ["grain_ratio", "nearest_grade", "scratch_depth", "edge_speed", "orbit_speed", "removal"]
    names += ["sets_to_clear", "sanding", "finish_left", "panel_temperature", "film_left", "burn_probability"]
    names += ["oxidation_left", "share_deeper"]
    names += ["hull_area", "coating_needed"]
    assert [entry["name"] for entry in json.loads(said(listed=True, json=True))] == names
    assert [line.split("(")[0] for line in said(listed=True).splitlines()] == names
    assert "water_content(air_degc, air_rh, pressure_hpa=1013.25): Water in the air" in said(listed=True)


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        ([], "Name a sum, such as: sum dew_point air_degc=20 air_rh=50; sum --list names them all."),
        (["dew_pont"], "There is no sum 'dew_pont'; did you mean dew_point?"),
        (["dew_point"], "air_degc: Air temperature is missing; give a value such as 18 °C or 64 °F."),
        (
            ["dew_point", "air_degc=20", "air_rh=140"],
            "air_rh: 140 % lies outside 1 % to 100 %; give a value within.",
        ),
        (["dew_point", "air_degc=20", "air_rh=50", "air_rh=60"], "air_rh is given twice; keep one."),
        (
            ["dew_point", "air_degc=20", "50"],
            "'50' is no input; write key=value, such as air_degc=20, or name one JSON file.",
        ),
        (
            ["dew_point", "air_degc=[1", "air_rh=50"],
            "air_degc: '[1' is not JSON; a list of rows is written [{…}, {…}].",
        ),
        (["dew_point", "air_degc=[1]", "air_rh=50"], "air_degc: '[1]' is no number; give one value."),
        (["dew_point", "air_dgc=20"], "air_dgc: There is no such input; did you mean air_degc or air_rh?"),
    ],
)
def test_bad_input_is_one_sentence(words: list[str], sentence: str) -> None:
    assert refused(*words) == sentence


def test_the_list_takes_no_name() -> None:
    assert refused("dew_point", listed=True).startswith("--list names every sum and takes no other word than --json")


def test_a_file_has_to_hold_an_object(tmp_path: Path) -> None:
    path = tmp_path / "inputs.json"
    path.write_text("[20, 50]", encoding="utf-8")
    assert refused("dew_point", str(path)).endswith('holds no object of inputs; write {"air_degc": …, "air_rh": …}.')


@pytest.mark.parametrize(
    ("argv", "given", "code", "out", "err"),
    [
        (["dew_point", "-"], '{"air_degc": "20", "air_rh": 50}', 0, '"value": 9.26', ""),
        (["dew_point", "-"], '{"air_degc": NaN}', 2, "", "standard input: NaN is not a number here"),
        (["dew_point", "--bogus"], "", 2, "", "sum: unrecognized arguments: --bogus; sum --help"),
    ],
)
def test_a_real_process_keeps_its_streams_apart(
    tmp_path: Path, argv: list[str], given: str, code: int, out: str, err: str
) -> None:
    ran = subprocess.run(
        [sys.executable, str(ROOT / "manage.py"), "sum", *argv],
        input=given,
        capture_output=True,
        text=True,
        env={"RAKING_VAR": str(tmp_path), "PATH": "/usr/bin:/bin"},
        check=False,
        timeout=60,
    )
    assert (ran.returncode, ran.stderr.count("\n")) == (code, 1 if err else 0)
    assert out in ran.stdout
    assert bool(ran.stdout) == bool(out)
    assert ran.stderr.startswith(err)
