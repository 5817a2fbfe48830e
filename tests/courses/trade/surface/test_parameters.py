"""The settings a step may carry: each op its own, each with a default that is allowed."""

import pytest

from courses.trade.abrasives import D50_UM
from courses.trade.errors import ImpossibleChoice
from courses.trade.surface import OPS, parameters, read_plan
from courses.trade.surface.parameters import choices, limits


def test_pads_and_machines_are_those_of_the_work() -> None:
    of = {op: {one.name: [code for code, _ in one.options] for one in parameters(op)} for op in ("sand", "cut")}
    assert of["sand"]["pad"] == ["disc", "disc_soft", "block"]
    assert of["cut"]["pad"] == ["wool", "microfibre", "foam_cut", "foam_finish"]
    assert (of["sand"]["machine"], of["cut"]["machine"]) == (["da", "hand"], ["rotary", "da", "hand"])
    assert of["sand"]["grade"] == list(D50_UM)
    assert of["sand"]["disc"] == ["fresh", "used"]
    assert of["cut"]["sets"] == ["until_clear"]


@pytest.mark.parametrize("op", OPS)
def test_a_default_is_one_that_may_be_written(op: str) -> None:
    given = {one.name: one.default for one in parameters(op) if one.default is not None}
    found = {name: list(value) if isinstance(value, tuple) else value for name, value in given.items()}
    (step,) = read_plan([{"op": op, **found}])
    assert read_plan([{"op": op}]) == (step,)


@pytest.mark.parametrize("op", OPS)
def test_every_setting_has_a_label_and_a_range(op: str) -> None:
    for one in parameters(op):
        assert one.label
        assert one.kind in ("choice", "number", "whole", "numbers", "text")
        if one.kind in ("number", "whole", "numbers"):
            assert one.low < one.high


def test_the_limits_are_those_of_the_issue() -> None:
    assert (limits("passes"), limits("sets")) == ((1, 20), (1, 8))
    assert choices("wash", "product") == ()


def test_an_unknown_step_is_refused() -> None:
    with pytest.raises(ImpossibleChoice, match="did you mean sand"):
        parameters("sanding")
