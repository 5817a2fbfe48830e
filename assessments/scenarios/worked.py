"""A plan worked on the panel of its facts, and what a test spot shows before anybody commits to one."""

from collections.abc import Mapping, Sequence
from typing import Any

from assessments.scenarios.draw import shop_of, surface_of
from assessments.scenarios.fields import Record
from assessments.scenarios.spec import Scenario
from assessments.scenarios.tasks import Task
from courses.pictures import plan_scenes
from courses.trade.plan_text import read_token, token
from courses.trade.surface import Run, read_plan, simulate, spot, unsteady

Plan = Sequence[Mapping[str, Any]]


def worked(scenario: Scenario, facts: Record, plan: Plan, optics: str = "last") -> Run:
    """Return what a plan does to the panel of these facts; a step in a zone that the panel hasn't got does nothing."""
    return simulate(surface_of(scenario, facts), read_plan(plan), shop_of(scenario).constants, optics=optics)


def wavering(scenario: Scenario, facts: Record, plan: Plan) -> tuple[str, ...]:
    """Return the fitted figures under which, each a little off, a plan comes out with another verdict."""
    return unsteady(surface_of(scenario, facts), read_plan(plan), shop_of(scenario).constants)


def outcome_of(run: Run) -> dict[str, Any]:
    """Return how a plan came out, as the door ``simulate`` writes it."""
    came: Any = run.as_json()["outcome"]
    return dict(came)


def before_and_after(scenario: Scenario, facts: Record, run: Run, seed: int) -> tuple[str, tuple[Any, Any]]:
    """Return the light that shows it best, and the panel before and after a plan, as scenes of the door ``picture``.

    ``seed`` lays the panel where the facts have no ``scene_seed`` of their own.
    """
    trade, surface = shop_of(scenario).catalogue, surface_of(scenario, facts).as_json()
    number = int(facts.number("scene_seed")) if "scene_seed" in facts else seed
    outcome = outcome_of(run)
    scenes = plan_scenes.before(surface, number, trade), plan_scenes.after(surface, outcome, number, trade)
    return ("diffuse" if surface.get("oxidation_um") else "point"), scenes


def spot_told(scenario: Scenario, facts: Record, task: Task, act: Mapping[str, str]) -> str:
    """Return what a test spot shows, wiped and looked at."""
    surface = surface_of(scenario, facts)
    carried = {name: value for name, value in act.items() if name not in ("op", "zone")}
    tried = read_token(token({"op": task.act(act["op"]).op, **carried}))
    return spot(surface, read_plan([tried], surface), shop_of(scenario).constants).sentence
