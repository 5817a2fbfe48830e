"""PLN-04 *One line across the bonnet*, version 1: swirls that one correction clears, a line too deep to chase.

Readings are drawn as the gauge shows them, the film worked from them. Ranges and what throws a draw away stand in
``fixtures/scenarios/PLN-04-v1.toml``.
"""

from collections.abc import Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.gauged import readings_about
from assessments.scenarios.plan_steps import acts
from assessments.scenarios.scenes import LAMP_PLACES, about, mark, scene
from assessments.scenarios.shown import Shown
from assessments.scenarios.sketch import Thrown
from assessments.scenarios.spec import Kind
from courses.trade.gauging import doubt_um, mean_um, removed_um, spread_um
from courses.trade.units import rounded

PAINT: Final[Mapping[str, str]] = {"black": "black", "dark_grey": "#2a2c2f"}
"""How the colours are rendered."""
FILM_SPREAD: Final = 0.08
SWIRL_SPREAD: Final = 1.6
LINE_SPREAD: Final = 1.15
SWIRL_COVER: Final = 0.06
LINE_COVER: Final = 0.005
LINE_SHARE: Final = 0.05
"""The part of the bonnet that a hand's breadth round the line is."""
LINE_REACH: Final = (0.3, 0.1)
"""How far the line reaches to both sides and up and down, in fractions of the picture."""
_SPANNED: Final = ("line_mm", "total_um", "swirl_um", "scratch_um", "across", "down")


def draw(chance: Chance, kind: Kind) -> Mapping[str, object] | Thrown:
    """Return the facts of one try, or the condition that threw it away."""
    clear, apart = kind.between(chance, "clear_um"), kind.between(chance, "spread_um")
    here, shut = readings_about(chance, clear, apart), readings_about(chance, clear, apart)
    if any(spread_um(five) not in kind.span("spread_um") for five in (here, shut)):
        return Thrown("five readings lie closer together, or further apart, than this gauge's do")
    film = rounded(mean_um(here), 1)
    if film not in kind.span("clear_um"):
        return Thrown("the mean of the five leaves the range of clear coats")
    if not 0 <= removed_um(shut, here) <= doubt_um(shut, here) / 2:
        return Thrown("the door shut isn't plainly the same within its doubt")
    return {
        "colour": kind.pick(chance, "colour"),
        "here_um": here,
        "shut_um": shut,
        "film_um": film,
        "reserve": kind.number("reserve"),
        "budget": kind.number("budget"),
        **{name: kind.between(chance, name) for name in _SPANNED},
        **{name: round(kind.between(chance, name)) for name in ("direction", "scene_seed")},
    }


def key(_facts: Record) -> dict[str, object]:
    """Return one correction on the dual action, the line left and offered to be touched in."""
    return {
        "steps": [
            *acts("tape", "test_spot"),
            {"op": "cut", "pad": "foam_cut", "compound": "medium", "machine": "da"},
            *acts("wipe"),
            {"op": "finish", "pad": "foam_finish", "compound": "fine", "machine": "da"},
            *acts("wipe", "inspect"),
            {"op": "refer", "zone": "line"},
            *acts("tell"),
        ],
        "scratch": "touch_in",
        "shows": "line_alone",
    }


def surface(facts: Record) -> dict[str, object]:
    """Return the bonnet as the door ``simulate`` takes it."""
    swirl = {"kind": "swirl", "depth_um": facts["swirl_um"], "spread": SWIRL_SPREAD, "cover": SWIRL_COVER}
    line = {"kind": "scratch", "depth_um": facts["scratch_um"], "spread": LINE_SPREAD, "cover": LINE_COVER}
    return {
        "substrate": "clear_coat",
        "colour": PAINT[str(facts["colour"])],
        "film_um": facts["film_um"],
        "film_spread": FILM_SPREAD,
        "reserve_um": facts["reserve"],
        "budget_um": facts["budget"],
        "soiled": False,
        "defects": [swirl],
        "zones": [{"name": "line", "share": LINE_SHARE, "defects": [line]}],
    }


def pictures(facts: Record) -> tuple[Shown, ...]:
    """Return part of the bonnet by a lamp at five places: hair lines all over, and the one line."""
    lies = about(facts.number("across"), facts.number("down"), LINE_REACH)
    swirl = mark("swirl", depth_um=facts.number("swirl_um"))
    line = mark("scratch", lies, depth_um=facts.number("scratch_um"), direction=facts.number("direction"))
    panel = scene(("clear_coat", PAINT[str(facts["colour"])]), facts.number("scene_seed"), swirl, line)
    return (Shown("bonnet", panel, "point", LAMP_PLACES, seen=(0, 1)),)
