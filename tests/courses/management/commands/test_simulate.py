"""The door `simulate`: a surface and a plan in, what would have come of it out."""

import io
import json
import re
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from django.core.management import CommandError, call_command

ROOT = Path(__file__).parents[4]
SURFACE = {"substrate": "gel_coat", "film_um": 500, "oxidation_um": 3}
PLAN = [{"op": "wash"}, {"op": "tape"}, {"op": "cut"}, {"op": "wipe"}, {"op": "finish"}, {"op": "wipe"}]


@pytest.fixture
def file(tmp_path: Path) -> Callable[[object], str]:
    """Write a value down as JSON and return the name of its file."""

    def write(value: object) -> str:
        path = tmp_path / "plan.json"
        path.write_text(value if isinstance(value, str) else json.dumps(value), encoding="utf-8")
        return str(path)

    return write


def answer(*words: str, **options: Any) -> dict[str, Any]:
    out = io.StringIO()
    call_command("simulate", *words, stdout=out, **options)
    found: dict[str, Any] = json.loads(out.getvalue())
    return found


def test_a_plan_is_worked_and_judged(file: Callable[[object], str]) -> None:
    found = answer(file({"surface": SURFACE, "plan": PLAN}))
    assert set(found) == {"states", "outcome"}
    assert " ".join(found["states"][0]) == "step film_um removed_um residual tail_um trail_um heat_degc minutes"
    assert " ".join(found["outcome"]) == (
        "verdict reasons film_um removed_um needed_cut_um residual tail_um own_tail_um trail_um zones score"
        " gloss60 gloss20 haze heat_degc minutes discs pads grams"
    )
    assert [state["step"] for state in found["states"]] == [1, 2, 3, 4, 5, 6]
    assert found["outcome"]["verdict"] == "pass"
    assert (found["outcome"]["removed_um"], found["outcome"]["film_um"]) == (4.6, 495.4)
    assert ["gloss60" in state for state in found["states"]] == [False] * 5 + [True]


def test_optics_read_every_state(file: Callable[[object], str]) -> None:
    found = answer(file({"surface": SURFACE, "plan": PLAN}), optics=True)
    assert all({"gloss60", "gloss20", "haze"} <= set(state) for state in found["states"])


def test_a_verdict_is_an_answer_and_so_is_an_empty_plan(file: Callable[[object], str]) -> None:
    assert answer(file({"surface": SURFACE, "plan": [{"op": "cut"}]}))["outcome"]["verdict"] == "redo"
    empty = answer(file({"surface": SURFACE, "plan": []}))
    assert (empty["states"], empty["outcome"]["verdict"]) == ([], "redo")


def test_explain_says_what_a_file_may_hold() -> None:
    found = answer(explain=True)
    assert found["required"] == ["surface", "plan"]
    assert len(found["properties"]["plan"]["items"]["oneOf"]) == 24


@pytest.mark.parametrize(
    ("value", "said"),
    [
        ([], "holds no object; write"),
        ({"surface": SURFACE}, "The plan is missing"),
        ({"plan": PLAN}, "The surface is missing"),
        ({"surface": SURFACE, "plan": PLAN, "optics": True}, "There is no 'optics' beside surface and plan"),
        ({"surface": SURFACE | {"film_um": -1}, "plan": PLAN}, "surface film_um: Film_um is -1; write a number from 1"),
        ({"surface": SURFACE, "plan": [{"op": "sand", "grade": "P1499"}]}, "plan 1 grade: There is no grade 'P1499'"),
        ({"surface": SURFACE, "plan": [{"op": "cut", "speeds_rpm": [20000]}]}, "write a number from 300 to 3500"),
        ({"surface": SURFACE, "plan": [{"op": "sand", "passes": 400}]}, "write a number from 1 to 20"),
        ('{"surface": {"film_um": NaN}}', "NaN is not a number here"),
        ("{", "this is not JSON"),
    ],
)
def test_bad_input_is_one_sentence(file: Callable[[object], str], value: object, said: str) -> None:
    with pytest.raises(CommandError, match=re.escape(said)) as refused:
        answer(file(value))
    assert refused.value.returncode == 2


@pytest.mark.parametrize(
    ("words", "options", "said"),
    [((), {}, "Name a file, or - for standard input"), (("plan.json",), {"explain": True}, "takes nothing else")],
)
def test_a_call_that_asks_for_nothing_is_refused(words: tuple[str, ...], options: dict[str, Any], said: str) -> None:
    with pytest.raises(CommandError, match=said):
        answer(*words, **options)


def test_the_door_needs_no_set_up_and_keeps_its_streams_apart(tmp_path: Path) -> None:
    """A process of its own, with nothing but a plan on standard input."""
    ask = [sys.executable, str(ROOT / "manage.py"), "simulate", "-"]
    env = {"PATH": "/usr/bin:/bin", "RAKING_VAR": str(tmp_path / "nowhere")}
    done, refused = (
        subprocess.run(ask, input=text, capture_output=True, text=True, env=env, check=False, cwd=ROOT)
        for text in (json.dumps({"surface": SURFACE, "plan": PLAN}), '{"surface": 1, "plan": []}')
    )
    assert (done.returncode, done.stderr) == (0, "")
    assert json.loads(done.stdout)["outcome"]["verdict"] == "pass"
    assert (refused.returncode, refused.stdout) == (2, "")
    assert refused.stderr.strip().splitlines() == [
        'surface: A surface is an object; write {"substrate": …, "film_um": …}.'
    ]
