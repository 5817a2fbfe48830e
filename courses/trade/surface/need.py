"""How much film a panel needs to lose: what lies on it at the start, and what the stages of a plan had to take."""

from __future__ import annotations

from courses.trade.constants import Constants
from courses.trade.surface.condition import Condition
from courses.trade.surface.panel import PanelSurface
from courses.trade.surface.zone import Zone

__all__ = ["called_for_um", "needed_cut", "needed_here_um"]


def needed_here_um(zone: Zone) -> float:
    """Depth, µm, of what lies on a zone before any work and has to go: the oxidised layer, marks, strays, trails."""
    marks = [one.deepest_um for one in zone.marks if one.ground and one.kind not in zone.may_stay]
    layer = 0.0 if "oxidation" in zone.may_stay else zone.layer_um
    return max([layer, zone.rz_um, zone.tail_um, zone.trail_um, *marks])


def needed_cut(surface: PanelSurface, constants: Constants) -> float:
    """The most, model µm, that any zone of the panel needs to lose at the start; 0 where nothing on it would show.

    Depth that 95 of 100 places don't reach, of marks and of the oxidised layer; edges and idle zones are left out.
    Source: model.
    """
    field = [zone for zone in surface.parts if zone.judged] or surface.parts
    need = max(needed_here_um(zone) for zone in field)
    return need if need > constants.gates.visible_um else 0.0


def called_for_um(condition: Condition, constants: Constants) -> float:
    """The film, µm, that the stages of a plan had to take in a zone: each from the marks it met to those it leaves.

    A stage that leaves deeper marks than it met wasn't called for, so a coarse start or a repeat excuses nothing.
    What no stage cleared waits for a finishing pad. Never less than a figure that grows with the budget: a cut that
    costs little of it isn't worth calling too much. Source: model.
    """
    left = max(condition.need_tail, condition.need_trail) / constants.pads["foam_finish"].eta
    layer = 0.0 if "oxidation" in condition.zone.may_stay else condition.zone.layer_um
    least = constants.gates.need_um + condition.zone.budget_um * constants.gates.need_of_budget
    return max(condition.called_for_um + left, layer, least)
