"""What the tests of planned scenarios share: a plan worked on the panel of a draw, and what the panel needs."""

from collections.abc import Mapping, Sequence

from assessments.scenarios.draw import Drawn, key_of
from assessments.scenarios.fields import Record
from assessments.scenarios.worked import worked as worked_on
from courses.trade.surface import Run

Steps = Sequence[Mapping[str, object]]


def worked(drawn: Drawn, steps: Steps) -> Run:
    """What a plan comes to on the panel of a draw."""
    return worked_on(drawn.scenario, drawn.facts, steps, optics="none")


def keyed(drawn: Drawn) -> Run:
    """What the plan of the key comes to."""
    return worked(drawn, steps_in(key_of(drawn.scenario, drawn.facts)))


def steps_in(key: Record) -> Steps:
    """The steps of a key, as the door ``simulate`` takes them."""
    steps = key.as_json()["steps"]
    assert isinstance(steps, list)
    return steps


def needed_um(drawn: Drawn) -> float:
    """The depth of what is on the panel at the start, model micrometres, as the key holds it."""
    return key_of(drawn.scenario, drawn.facts).number("needed_cut")
