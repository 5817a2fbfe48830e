"""The steps of a work plan as a page's list offers them."""

from courses.forms.plan import FINE, GROUPS, plan_act, plan_builder
from courses.forms.steps import Setting
from courses.trade.surface import OPS, parameters, read_plan


def test_every_step_is_offered_with_every_setting_it_takes() -> None:
    builder = plan_builder(40)
    assert [act.id for act in builder.acts] == list(OPS)
    for act in builder.acts:
        assert [one.name for one in act.settings] == [one.name for one in parameters(act.id)]
    assert set(GROUPS) == {op.family for op in OPS.values()}


def test_what_is_chosen_at_first_is_a_step_the_simulator_takes() -> None:
    builder = plan_builder(40)
    for act in builder.acts:
        picked = {"op": act.id, **{one.name: one.default for one in act.settings}}
        (text,) = builder.composed([], "add", picked)
        op, *said = text.split()
        assert read_plan([{"op": op, **dict(one.split("=") for one in said)}])[0].op == act.id


def test_finer_settings_are_folded_and_left_as_usual() -> None:
    settings = {one.name: one for one in plan_act("cut").settings}
    assert all(settings[name].fine and settings[name].default == "" for name in settings if name in FINE)
    assert (settings["pad"].default, settings["compound"].default) == ("wool", "heavy")
    assert settings["speeds_rpm"].hint == "600, 900, 1500"


def test_a_step_is_said_with_its_settings_and_its_place() -> None:
    zone = Setting("zone", "Where", (("bow", "the bow"),))
    assert plan_builder(9, (zone,)).words("cut pad=wool compound=heavy sets=2 force_n=40 zone=bow") == (
        "Cut, wool, heavy compound, 2 sets, 40 N, the bow"
    )
