"""The model surface: a plan of steps worked on a panel, judged, and told with its reasons."""

from courses.trade.errors import PlanRefused
from courses.trade.surface.need import needed_cut
from courses.trade.surface.ops import FAMILIES, OPS, Op
from courses.trade.surface.panel import PanelSurface
from courses.trade.surface.parameters import Parameter, parameters
from courses.trade.surface.reasons import Reason
from courses.trade.surface.simulate import Outcome, Residual, Run, ZoneOutcome, simulate
from courses.trade.surface.spots import Spot, spot
from courses.trade.surface.state import State
from courses.trade.surface.steadiness import unsteady
from courses.trade.surface.steps import Step, read_plan, step_words

__all__ = [
    "FAMILIES",
    "OPS",
    "Op",
    "Outcome",
    "PanelSurface",
    "Parameter",
    "PlanRefused",
    "Reason",
    "Residual",
    "Run",
    "Spot",
    "State",
    "Step",
    "ZoneOutcome",
    "needed_cut",
    "parameters",
    "read_plan",
    "simulate",
    "spot",
    "step_words",
    "unsteady",
]
