"""How an exemplar changes a list of the key."""

from dataclasses import replace

from assessments.marking.changed import changed_list
from assessments.scenarios.spec import Exemplar
from tests.assessments.answers.listing import ASK, CELLS_ONLY, ORDER, ROWS, WITH_VERDICTS

PLAIN = Exemplar("as it is", ("satisfactory",))
STEPS = [{"op": "wipe"}, {"op": "cut", "zone": "rest"}, {"op": "wipe"}]
GROUPS = [{"cells": ["A1", "A2", "A3"], "verdict": "refer"}, {"cells": ["D6"], "verdict": "polish"}]
PATCHES = [{"n": 1, "what": "teak", "verdict": "leave"}, {"n": 2, "what": "gel_coat", "verdict": "polish"}]


def test_an_exemplar_that_says_nothing_of_a_list_leaves_it() -> None:
    for task, value in ((ASK, ["wet"]), (ORDER, STEPS), (CELLS_ONLY, ["A1"]), (WITH_VERDICTS, GROUPS), (ROWS, PATCHES)):
        assert changed_list(PLAIN, task, value) == value


def test_acts_are_taken_out_and_put_in_front_and_behind() -> None:
    lamp = {"op": "lamp", "place": "left"}
    changed = replace(PLAIN, without={"steps": ("wipe",)}, before={"steps": [lamp]}, after={"steps": [lamp, lamp]})
    assert changed_list(changed, ORDER, STEPS) == [lamp, {"op": "cut", "zone": "rest"}, lamp, lamp]


def test_half_the_cells_and_another_verdict() -> None:
    half = replace(PLAIN, half={"zones": True, "cells": True}, verdict={"zones": "polish"})
    assert changed_list(half, CELLS_ONLY, ["A1", "A2", "A3"]) == ["A1", "A3"]
    assert changed_list(half, WITH_VERDICTS, GROUPS) == [
        {"cells": ["A1", "A3"], "verdict": "polish"},
        {"cells": ["D6"], "verdict": "polish"},
    ]


def test_columns_are_written_over_in_all_rows_or_in_some() -> None:
    every = replace(PLAIN, rows={"patches": {"what": "teak"}})
    assert [row["what"] for row in changed_list(every, ROWS, PATCHES)] == ["teak", "teak"]
    one = replace(PLAIN, rows={"patches": {"n": [2], "verdict": "leave"}})
    assert changed_list(one, ROWS, PATCHES) == [PATCHES[0], {"n": 2, "what": "gel_coat", "verdict": "leave"}]


def test_rows_may_be_named_by_an_expression_that_was_worked_before() -> None:
    plastics = replace(PLAIN, rows={"patches": {"n": "key.plastics", "verdict": "polish"}})
    assert changed_list(plastics, ROWS, PATCHES, {"key.plastics": [1]}) == [
        {**PATCHES[0], "verdict": "polish"},
        PATCHES[1],
    ]
