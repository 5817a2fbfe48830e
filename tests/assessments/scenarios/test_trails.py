"""A panel with trails: the same in facts, picture and model."""

import pytest

from assessments.scenarios.chance import Chance, Span
from assessments.scenarios.fields import Record
from assessments.scenarios.spec import Drawable, Kind
from assessments.scenarios.trails import drawn_panel, panel_scene, panel_surface


def kind(name: str) -> Kind:
    """A kind of panel with one value in each range."""
    one: dict[str, Drawable] = {what: Span(2, 2, 1) for what in ("direction", "scene_seed")}
    return Kind(name, 1, {**one, "film_um": Span(54, 54, 1), "trail_um": Span(0.2, 0.2, 0.1),
                          "stray_um": Span(0.1, 0.1, 0.1), "colour": ("black",)})  # fmt: skip


@pytest.mark.parametrize(
    ("name", "substrate", "hardness"),
    [("gel_coat", "gel_coat", 1.0), ("clear_coat", "clear_coat", 1.0), ("clear_soft", "clear_coat", 1.3)],
)
def test_facts_picture_and_model_hold_the_same_trails(name: str, substrate: str, hardness: float) -> None:
    facts = Record(drawn_panel(Chance(lambda: 0.0), kind(name)))  # type: ignore[arg-type]
    on_the_model = panel_surface(facts)
    marks = panel_scene(facts)["defects"]
    assert isinstance(marks, list)
    assert [(one["kind"], one["depth_um"]) for one in marks] == [("hologram", on_the_model["trail_um"])]
    assert (on_the_model["substrate"], on_the_model["hardness"], on_the_model["film_um"]) == (substrate, hardness, 54)
    assert (on_the_model["tail_um"], facts["soft"]) == (0.1, hardness > 1)
