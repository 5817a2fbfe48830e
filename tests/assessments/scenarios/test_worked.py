"""Plans worked on the panel of their facts, test spots, and the panel before and after."""

import pytest

from assessments import shipped
from assessments.scenarios.draw import Drawn, draw, key_of
from assessments.scenarios.worked import before_and_after, outcome_of, spot_told, wavering, worked
from courses.pictures import Scene
from courses.shipped import catalogue


@pytest.fixture(scope="module")
def side() -> Drawn:
    return draw(shipped.scenario("PLN-03@1"), 5)


def plan_of(drawn: Drawn) -> list[dict[str, object]]:
    steps = key_of(drawn.scenario, drawn.facts).as_json()["steps"]
    assert isinstance(steps, list)
    return steps


def test_the_plan_of_the_key_passes_on_its_panel_and_stands(side: Drawn) -> None:
    assert worked(side.scenario, side.facts, plan_of(side)).outcome.verdict == "pass"
    assert wavering(side.scenario, side.facts, plan_of(side)) == ()


def test_a_plan_that_hangs_on_a_figure_of_the_model_is_told(side: Drawn) -> None:
    polish = [{"op": "wash"}, {"op": "tape"}, *[{"op": "cut"}] * 3, {"op": "finish"}, {"op": "wipe"}]
    assert any("preston_k" in one for one in wavering(side.scenario, side.facts, polish))


def test_steps_where_the_panel_is_not_do_nothing(side: Drawn) -> None:
    elsewhere = {"op": "cut", "zone": "vinyl"}
    assert outcome_of(worked(side.scenario, side.facts, [elsewhere])) == outcome_of(
        worked(side.scenario, side.facts, [])
    )
    plan = plan_of(side)
    among = worked(side.scenario, side.facts, [elsewhere, *plan])
    alone = worked(side.scenario, side.facts, plan)
    assert outcome_of(among) == outcome_of(alone)
    assert [state.step for state in among.states] == [1, *(state.step + 1 for state in alone.states)]


def test_a_reason_names_a_step_by_its_place_in_the_plan_as_it_was_written(side: Drawn) -> None:
    shaky = [{"op": "tape", "zone": "vinyl"}, {"op": "wash"}, {"op": "cut"}, {"op": "wipe"}]
    named = [reason.step for reason in worked(side.scenario, side.facts, shaky).outcome.reasons if reason.step]
    assert 3 in named
    assert 2 not in named


def test_a_spot_tells_more_of_a_stronger_trial(side: Drawn) -> None:
    task = side.scenario.the("order")
    assert task is not None
    told = [
        spot_told(side.scenario, side.facts, task, act)
        for act in ({"op": "spot_refine", "sets": "1"}, {"op": "spot_sand", "grade": "P1500", "sets": "1"})
    ]
    assert told[0] != told[1]
    assert all(one.endswith(".") for one in told)


def test_before_and_after_are_scenes_the_renderer_takes(side: Drawn) -> None:
    run = worked(side.scenario, side.facts, plan_of(side))
    light, scenes = before_and_after(side.scenario, side.facts, run, seed=1)
    first, last = (Scene.of(one, catalogue()) for one in scenes)
    assert light == "diffuse"
    assert first.seed == last.seed == side.facts.number("scene_seed")
    assert (first.removed_um, last.removed_um) == (0, round(run.outcome.removed_um * 2) / 2)
