"""A sheet of answers: silence is left out, what nobody asked is refused."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assessments.answers.errors import AnswerRefused, UnknownOption, UnknownTask
from assessments.answers.sheet import KINDS, NONE_OF_THESE, parse, parse_form, read_answers
from assessments.scenarios.draw import answer_key, draw, key_of
from assessments.scenarios.fields import Option
from assessments.scenarios.spec import Scenario
from assessments.scenarios.tasks import TASK_SHAPES, Task
from courses.trade.units import Preferences

STEPS = Task("steps", "many", "Steps", "Which?", options=(Option("log", "Log"), Option("tell", "Tell")))
MARGIN = Task("margin", "quantity", "Margin", "How far?", unit="K", decimals=1)
DECISION = Task("decision", "choice", "Decision", "What?", options=(Option("wait", "Wait"), Option("coat", "Coat")))
SHUT = Task("shut", "yes_no", "Shut", "Is it?")
WHY = Task("why", "text", "Why", "Why?")
TASKS = (MARGIN, DECISION, STEPS, SHUT, WHY)
JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=4), inner, max_size=3),
    max_leaves=8,
)


def test_every_kind_of_task_has_a_parser() -> None:
    assert set(KINDS) == set(TASK_SHAPES)


def test_the_key_of_a_draw_is_a_sheet_of_answers_as_it_stands(coa_01: Scenario) -> None:
    for seed in range(30):
        key = answer_key(coa_01, key_of(coa_01, draw(coa_01, seed).facts)).as_json()
        read = read_answers(coa_01.tasks, json.loads(json.dumps(key)))
        assert {**read, "next_steps": sorted(read["next_steps"])} == {**key, "next_steps": sorted(key["next_steps"])}  # type: ignore[arg-type, call-overload]


def test_what_isnt_answered_is_left_out_and_none_of_these_is_an_answer() -> None:
    sheet = {"margin": "", "decision": None, "steps": [], "why": "  "}
    assert read_answers(TASKS, sheet) == {"steps": []}


def test_a_task_nobody_set_is_refused_with_the_near_miss() -> None:
    with pytest.raises(UnknownTask, match="margn: no task is called so; did you mean margin?"):
        read_answers(TASKS, {"margn": 3})


def test_answers_come_in_the_order_of_the_tasks() -> None:
    assert list(read_answers(TASKS, {"why": "so", "margin": 3})) == ["margin", "why"]


def parsed(task: Task, raw: object) -> object:
    """What parsing comes to: the value, or the refusal itself."""
    try:
        return parse(task, raw)
    except AnswerRefused as refused:
        return refused


@given(st.sampled_from(TASKS), JSON)
def test_whatever_is_sent_is_parsed_or_refused_in_a_sentence(task: Task, raw: object) -> None:
    found = parsed(task, raw)
    if isinstance(found, AnswerRefused):
        assert found.task == task.id
        assert found.sentence.endswith((".", "?"))
        assert "\n" not in found.sentence
        assert len(found.sentence) < 300
    else:
        assert found is None or isinstance(found, float | bool | str | list)
        json.dumps(found, allow_nan=False)


@given(st.sampled_from(TASKS), JSON)
def test_what_was_parsed_once_is_parsed_to_the_same(task: Task, raw: object) -> None:
    found = parsed(task, raw)
    assert isinstance(found, AnswerRefused) or parse(task, found) == found


@pytest.mark.parametrize(
    ("task", "values", "answer"),
    [
        (MARGIN, ["3,5"], 3.5),
        (MARGIN, [""], None),
        (MARGIN, [], None),
        (DECISION, ["wait"], "wait"),
        (DECISION, [], None),
        (SHUT, ["true"], True),
        (WHY, ["short\r\nand cold"], "short\nand cold"),
        (STEPS, [], None),
        (STEPS, [""], None),
        (STEPS, ["tell", "log"], ["log", "tell"]),
        (STEPS, ["", "tell"], ["tell"]),
        (STEPS, [NONE_OF_THESE], []),
        (WHY, [NONE_OF_THESE], NONE_OF_THESE),
    ],
)
def test_a_form_says_what_the_door_would(task: Task, values: list[str], answer: object) -> None:
    assert parse_form(task, values) == answer


def test_none_of_these_beside_a_step_is_refused() -> None:
    with pytest.raises(AnswerRefused, match="steps: tick what you would do, or none of these, not both"):
        parse_form(STEPS, ["log", NONE_OF_THESE])


def test_a_crafted_option_is_told_from_a_slip() -> None:
    with pytest.raises(UnknownOption):
        parse_form(STEPS, ["log", "key"])
    with pytest.raises(UnknownOption):
        parse_form(DECISION, ["waite"])


def test_a_bare_number_is_in_the_unit_its_reader_reads() -> None:
    assert parse_form(MARGIN, ["5.4"], Preferences.us()) == pytest.approx(3.0)
    assert parse_form(MARGIN, ["5.4"], Preferences.metric()) == 5.4
    assert parse(MARGIN, 5.4, Preferences.us()) == 5.4
