"""What the steps of a work plan may carry, as the page's list offers it."""

from collections.abc import Iterable, Mapping
from typing import Final

from django.utils.translation import gettext_lazy as _
from django.utils.translation import gettext_noop

from courses.forms.steps import Act, Builder, Setting
from courses.trade.surface import OPS, Parameter, parameters

GROUPS: Final[Mapping[str, str]] = {
    "look": gettext_noop("Look"),
    "clean": gettext_noop("Wash, tape, wipe"),
    "chem": gettext_noop("Chemistry"),
    "abrade": gettext_noop("Sand and polish"),
    "coat": gettext_noop("Coat"),
    "stop": gettext_noop("Wait, write, tell"),
}
"""What the families of work are called in the list."""

FINE: Final = ("disc", "speeds_rpm", "force_n", "arm_m_s", "overlap", "section_m2")
"""Settings that are folded away: the model has a usual value for each."""

SAYS: Final[Mapping[str, str]] = {
    "passes": gettext_noop("{} passes"),
    "sets": gettext_noop("{} sets"),
    "speeds_rpm": gettext_noop("{} rpm"),
    "force_n": "{} N",
    "arm_m_s": "{} m/s",
    "overlap": gettext_noop("overlap {}"),
    "section_m2": gettext_noop("{} m² a section"),
    "hours": "{} h",
    "warm_degc": gettext_noop("kept at {} °C"),
    "at_h": gettext_noop("{} h from the start"),
}
"""How a typed value is said."""

COUNTED: Final[Mapping[str, range]] = {"passes": range(1, 13), "sets": range(2, 9)}
"""Counts that are chosen from a list; what is left out is as usual."""

BLANKS: Final[Mapping[str, str]] = {"sets": gettext_noop("one set"), "passes": gettext_noop("as usual")}
"""What it is called to leave a count out."""

EXAMPLES: Final[Mapping[str, str]] = {"speeds_rpm": "600, 900, 1500"}


def plan_act(op: str, where: Iterable[Setting] = ()) -> Act:
    """Return a step of a plan with its settings; `where` are the zones it may lie on, if there are any."""
    settings = tuple(_setting(one) for one in parameters(op))
    return Act(op, OPS[op].words, (*settings, *where), str(_(GROUPS[OPS[op].family])))


def plan_builder(most: int, where: Iterable[Setting] = ()) -> Builder:
    """Return the list of a plan that may be made of every step there is."""
    zones = tuple(where)
    return Builder(tuple(plan_act(op, zones) for op in OPS), most)


def _setting(one: Parameter) -> Setting:
    says = str(_(SAYS.get(one.name, "{}")))
    counted = tuple((str(n), says.format(n)) for n in COUNTED.get(one.name, ()))
    if counted or one.options:
        default = "" if counted or one.name in FINE else str(one.default)
        blank, fine = str(_(BLANKS.get(one.name, "as usual"))), one.name in FINE
        return Setting(one.name, one.label, (*counted, *one.options), default, says=says, blank=blank, fine=fine)
    typed = one.kind if one.kind in ("text", "numbers") else "number"
    hint = EXAMPLES.get(one.name, f"{one.low:g} – {one.high:g}" if typed == "number" else "")
    return Setting(one.name, one.label, hint=hint, says=says, typed=typed, fine=one.name in FINE)
