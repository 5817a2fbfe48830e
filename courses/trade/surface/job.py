"""A plan being worked, step by step: each kind of step does what it does to the zones it lies on."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Final

from courses.trade.constants import Constants
from courses.trade.surface.abrading import Warmth, abrade, cut_here_um, peak_degc
from courses.trade.surface.condition import Condition
from courses.trade.surface.cure import cured_after, is_hard
from courses.trade.surface.looking import is_clear, said_of_zones, shown
from courses.trade.surface.marks import Marks
from courses.trade.surface.ops import CHEMISTRY
from courses.trade.surface.panel import PanelSurface
from courses.trade.surface.parameters import MOST_SETS
from courses.trade.surface.state import State
from courses.trade.surface.steps import ALL, Step
from courses.trade.surface.work import Work, work_of

__all__ = ["Job"]

COOLS_IN_H: Final = 1.0
"""How long a panel takes to come down to the air: model."""
SEAMS_DRY_H: Final = 2.0
"""How long seams take to dry by themselves: model."""


@dataclass(slots=True)
class Job:
    """A panel on which a plan is worked: ``conditions`` of its zones, and what has been used so far a square metre.

    ``clock_h``: hours since the start. ``habits``: what was done, and done in time. ``looked``: the last step that
    showed something, by zone and code of what was seen.
    """

    surface: PanelSurface
    constants: Constants
    conditions: tuple[Condition, ...]
    panel_degc: float
    minutes: float = 0.0
    discs: float = 0.0
    pads: float = 0.0
    grams: float = 0.0
    clock_h: float = 0.0
    abraded: bool = False
    habits: dict[str, bool] = field(default_factory=dict)
    looked: dict[tuple[str, str], int] = field(default_factory=dict)

    @classmethod
    def on(cls, surface: PanelSurface, constants: Constants) -> Job:
        """The job before its first step."""
        conditions = tuple(Condition.of(zone, constants) for zone in surface.parts)
        return cls(surface, constants, conditions, surface.panel_degc)

    def do(self, step: Step) -> State:
        """Work ``step``; the state it leaves: the one before where the panel hasn't got the zone it names."""
        if step.at_h > self.clock_h:
            self._pass_time(step.at_h - self.clock_h)
        began = self.panel_degc
        if step.zone != ALL and all(one.zone.name != step.zone for one in self.conditions):
            return State(step.n, self.conditions, began, self.minutes, began)
        if step.abrades:
            heat = self._abrade(step)
            found: tuple[str, ...] = ()
        else:
            heat = began
            self.minutes += self._share(step) * self.constants.minutes["chem" if step.op in CHEMISTRY else step.op]
            found = _DOES[step.op](self, step)
        return State(step.n, self.conditions, heat, self.minutes, began, found)

    def touched(self, step: Step) -> list[Condition]:
        """The zones ``step`` lies on, each as one that may be changed."""
        mine = [one.copy() if step.zone in (ALL, one.zone.name) else one for one in self.conditions]
        self.conditions = tuple(mine)
        return [one for one in mine if step.zone in (ALL, one.zone.name)]

    def _share(self, step: Step) -> float:
        """The share of the panel a step lies on."""
        if step.zone == ALL:
            return 1.0
        return sum(one.zone.share for one in self.conditions if one.zone.name == step.zone)

    def _pass_time(self, hours: float, kept_degc: float | None = None) -> None:
        """Let time go by: what is curing cures, seams dry, and a panel hotter than the air comes down to it, unless it
        is kept at a warmth of its own.
        """
        if kept_degc is not None:
            self.panel_degc = kept_degc
        degc = self.panel_degc
        if kept_degc is None and hours >= COOLS_IN_H:
            self.panel_degc = min(degc, self.constants.heat.air_degc)
        self.clock_h += hours
        mine = []
        for one in self.conditions:
            new = one.copy()
            new.cure = max(one.cure, min(cured_after(one.cure, hours, degc, self.constants), one.zone.cure_most))
            if hours >= SEAMS_DRY_H:
                new.wet = new.seams_wet = False
            mine.append(new)
        self.conditions = tuple(mine)

    def _abrade(self, step: Step) -> float:
        """Work the sets of an abrasive step; the warmest the film got, °C."""
        work = work_of(step, self.surface.hardness, self.constants)
        mine = [one for one in self.touched(step) if not (one.zone.idle or (one.zone.edge and one.taped))]
        self._note_habits(mine)
        warmth = Warmth(self.panel_degc, self.surface.soft_degc)
        for _ in range(1, (step.sets or MOST_SETS) + 1):
            for one in mine:
                abrade(one, step, work, warmth, self.constants)
            self._use(step, work)
            if step.until_clear and self._looked_at(step, mine, work):
                break
        return max([peak_degc(one, step, work, warmth, self.constants) for one in mine], default=self.panel_degc)

    def _looked_at(self, step: Step, mine: list[Condition], work: Work) -> bool:
        """Wipe and inspect between two sets; whether it is clear, or another set would spend too much."""
        minutes = self.constants.minutes
        self.minutes += self._share(step) * (minutes["wipe"] + minutes["inspect"])
        for one in mine:
            one.oils = one.residue = one.wet = False
        if all(is_clear(one, work.tail_um, self.constants) for one in mine):
            return True
        return any(self._would_spend(one, step, work) for one in mine)

    def _would_spend(self, one: Condition, step: Step, work: Work) -> bool:
        """Whether another set would pass the budget or the reserve of a zone."""
        cut = cut_here_um(one, step, work, self.constants)
        over = one.removed_um + cut > one.zone.budget_um and not one.zone.edge
        return over or one.film_um - cut < one.zone.reserve_um

    def _use(self, step: Step, work: Work) -> None:
        share = self._share(step)
        self.minutes += share * work.minutes
        self.discs += share * work.discs
        self.pads += share * work.pads
        self.grams += share * work.grams

    def _note_habits(self, mine: list[Condition]) -> None:
        """What stood before the first abrasion."""
        if not self.abraded:
            self.habits["taped"] = all(one.taped for one in mine)
        self.habits["washed"] = self.habits.get("washed", True) and not any(one.soiled for one in mine)
        self.habits.setdefault("tested", False)
        self.abraded = True

    def _clean(self, step: Step) -> tuple[str, ...]:
        """Water: soil, residue and dust go with a wash; everything is wet, and a hot panel is cooled by it."""
        if self.panel_degc > self.constants.heat.air_degc and step.zone == ALL:
            self.panel_degc = self.constants.heat.water_degc
        for one in self.touched(step):
            one.wet = one.seams_wet = True
            if step.op == "wash":
                one.soiled = one.residue = False
                one.marks = _without(one, "residue")
        return ()

    def _dissolve(self, step: Step) -> tuple[str, ...]:
        """Chemistry takes off the deposits and stains that it dissolves, never an etch."""
        for one in self.touched(step):
            one.wet = one.seams_wet = True
            one.marks = tuple(mark for mark in one.marks if step.op not in mark.by)
            if step.op == "alkaline":
                one.oils = one.residue = False
                one.marks = _without(one, "residue")
        return ()

    def _clay(self, step: Step) -> tuple[str, ...]:
        """Clay lifts the thinnest deposits, and drags whatever soil there is."""
        law = self.constants.grit
        for one in self.touched(step):
            one.wet = True
            one.marks = tuple(mark for mark in one.marks if not (mark.drags and mark.depth_um <= law.clay_um))
            if one.soiled:
                depth = one.levelled_um + law.clay_um
                grit = Marks(
                    "scratch", "dragged grit", "scratch", depth, law.gsd, law.cover, law.weight, at_start=False
                )
                one.marks = (*one.marks, grit)
                one.grit_by = step.n
        return ()

    def _dry(self, step: Step) -> tuple[str, ...]:
        for one in self.touched(step):
            one.wet = one.seams_wet = False
        return ()

    def _tape(self, step: Step) -> tuple[str, ...]:
        """Tape on the edges of the zones it lies on, or off them."""
        mine = []
        for one in self.conditions:
            if step.zone in (ALL, one.zone.name, one.zone.edge_of):
                one = one.copy()
                one.taped = step.op == "tape"
            mine.append(one)
        self.conditions = tuple(mine)
        return ()

    def _wipe(self, step: Step) -> tuple[str, ...]:
        """A solvent wipe takes oils and residue off, and dries the field, not the seams."""
        for one in self.touched(step):
            one.oils = one.residue = one.wet = False
            one.marks = _without(one, "residue")
        self.habits["wiped"] = True
        return ()

    def _test(self, step: Step) -> tuple[str, ...]:
        if not self.abraded:
            self.habits["tested"] = True
        return ()

    def _inspect(self, step: Step) -> tuple[str, ...]:
        """Look; what shows is noted, and has to be answered."""
        self.habits["inspected"] = True
        found: dict[str, list[str]] = {}
        looked_at = self.touched(step)
        for one in looked_at:
            for code, sentence in shown(one, self.constants):
                self.looked[one.zone.name, code] = step.n
                found.setdefault(sentence, []).append(one.zone.name)
        return said_of_zones(found, len(looked_at))

    def _test_cure(self, step: Step) -> tuple[str, ...]:
        hard = all(is_hard(one.cure, self.constants) for one in self.touched(step))
        return ("The nail leaves no mark: it is hard.",) if hard else ("The nail leaves a mark: it is soft.",)

    def _coat(self, step: Step) -> tuple[str, ...]:
        """A coat seals in whatever lies on the film; it can only be stripped and laid again."""
        for one in self.touched(step):
            one.coated = True
            for code, there in (
                ("coat_over_water", one.wet or one.seams_wet),
                ("coat_over_residue", one.residue or one.soiled or _lies_on(one)),
                ("coat_over_uncured", not is_hard(one.cure, self.constants)),
            ):
                if there:
                    one.firsts.setdefault(code, step.n)
        return ()

    def _wait(self, step: Step) -> tuple[str, ...]:
        self._pass_time(step.hours, step.warm_degc)
        return ()

    def _refer(self, step: Step) -> tuple[str, ...]:
        for one in self.touched(step):
            one.referred = True
        return ()

    def _say(self, step: Step) -> tuple[str, ...]:
        return ()


def _lies_on(one: Condition) -> bool:
    """Whether residue or a deposit stands on a zone that nobody agreed to keep."""
    return any((mark.drags or mark.role == "residue") and mark.kind not in one.zone.may_stay for mark in one.marks)


def _without(one: Condition, role: str) -> tuple[Marks, ...]:
    return tuple(mark for mark in one.marks if mark.role != role)


def _table() -> Iterator[tuple[str, Callable[[Job, Step], tuple[str, ...]]]]:
    for op in ("prerinse", "wash", "rinse", "flush_prove"):
        yield op, Job._clean
    for op in CHEMISTRY:
        yield op, Job._dissolve
    for op in ("record", "tell"):
        yield op, Job._say
    yield from (("tape", Job._tape), ("untape", Job._tape), ("dry", Job._dry), ("clay", Job._clay))
    yield from (("wipe", Job._wipe), ("test_spot", Job._test), ("inspect", Job._inspect), ("coat", Job._coat))
    yield from (("cure_test", Job._test_cure), ("wait", Job._wait), ("refer", Job._refer))


_DOES: Final[Mapping[str, Callable[[Job, Step], tuple[str, ...]]]] = dict(_table())
