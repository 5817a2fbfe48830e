"""A plan, step by step: read with every setting filled in, refused in a sentence, and said in plain words."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Final, Protocol

from courses.trade.errors import PlanRefused, offer
from courses.trade.surface.ops import OPS
from courses.trade.surface.parameters import UNTIL_CLEAR, choices, limits
from courses.trade.surface.raw import Raw
from courses.trade.surface.shop import MACHINES, PADS, SPEEDS_RPM, runs_on, settings

__all__ = ["ALL", "MOST_STEPS", "Step", "Zoned", "read_plan", "step_words"]

ALL: Final = "all"
"""The zone of a step that works everywhere."""
MOST_STEPS: Final = 40


class Zoned(Protocol):
    """What has zones that a step may name."""

    @property
    def zones(self) -> tuple[str, ...]:
        """Their names."""


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a plan: its place ``n`` from 1, ``op``, ``zone`` and ``family``, and each setting its op takes.

    A setting that it doesn't take is empty; ``warm_degc`` is None where the panel is left as warm as it is. ``sets`` is
    0 where it is repeated until the wipe shows it clear. ``given`` is the mapping as it was written.
    """

    n: int
    op: str
    family: str
    zone: str = ALL
    grade: str = ""
    disc: str | float = ""
    pad: str = ""
    compound: str = ""
    machine: str = ""
    speeds_rpm: tuple[float, ...] = ()
    passes: int = 0
    sets: int = 1
    force_n: float = 0.0
    arm_m_s: float = 0.0
    overlap: float = 0.0
    section_m2: float = 0.0
    product: str = ""
    hours: float = 0.0
    warm_degc: float | None = None
    at_h: float = 0.0
    given: Mapping[str, Any] = field(default_factory=dict, compare=False, repr=False)

    @property
    def until_clear(self) -> bool:
        """Whether it is repeated until the wipe shows it clear."""
        return self.sets == 0

    @property
    def abrades(self) -> bool:
        """Whether it takes film."""
        return self.family == "abrade"

    def as_json(self) -> dict[str, object]:
        """The step as the door writes it, with every setting it takes."""
        found: dict[str, object] = {"op": self.op, "zone": self.zone}
        for name in OPS[self.op].takes:
            value = getattr(self, name)
            if name == "sets" and not value:
                value = UNTIL_CLEAR
            if value not in ((), None):
                found[name] = list(value) if isinstance(value, tuple) else value
        return found


def read_plan(raw: object, surface: Zoned | None = None) -> tuple[Step, ...]:
    """The steps of a plan as the door takes it, at most 40; without a ``surface`` a step may name any zone.

    Raises `PlanRefused` with a sentence and the place.

    >>> step, = read_plan([{"op": "sand", "grade": "P1000"}])
    >>> step.passes, step.pad, step.force_n
    (4, 'disc', 25.0)
    """
    if not isinstance(raw, Sequence) or isinstance(raw, str | bytes):
        raise PlanRefused('A plan is a list of steps; write [{"op": "wash"}, …].', "plan")
    if len(raw) > MOST_STEPS:
        raise PlanRefused(f"A plan has at most {MOST_STEPS} steps; this one has {len(raw)}.", "plan")
    zones = surface.zones if surface else ()
    return tuple(_step(n, one, zones) for n, one in enumerate(raw, start=1))


def _step(n: int, raw: object, zones: Collection[str]) -> Step:
    given = Raw.of(raw, f"plan {n}", f'Step {n} is no step; write {{"op": "wash"}}.')
    op = given.word("op", OPS)
    given.only(("op", "zone", *OPS[op].takes))
    zone = given.text("zone", ALL)
    if zones and zone != ALL and zone not in zones:
        raise given.refused(f"there is no zone {zone[:40]!r}; {offer(zone[:40], (ALL, *zones))}", "zone")
    found = _working(op, given) if OPS[op].family == "abrade" else _standing(op, given)
    return Step(n=n, op=op, family=OPS[op].family, zone=zone or ALL, given=given.values, **found)


def _standing(op: str, given: Raw) -> dict[str, Any]:
    """The settings of a step that takes no film."""
    found: dict[str, Any] = {}
    for name in OPS[op].takes:
        if name == "product":
            found[name] = given.text(name, "")
        elif name in given.values:
            found[name] = given.number(name, *limits(name))
        elif name == "hours":
            found[name] = 12.0
    return found


def _working(op: str, given: Raw) -> dict[str, Any]:
    """The settings of a step that takes film: as written, and the shop's for the rest."""
    chosen = {
        name: given.word(name, [code for code, _ in choices(op, name)])
        for name in ("machine", "pad", "compound")
        if name in given.values and name in OPS[op].takes
    }
    usual = settings(op, **chosen)
    if usual.pad == "block" and usual.machine != "hand":
        raise given.refused('a flat block is worked by hand; write "machine": "hand", or take another pad', "pad")
    found = {name: getattr(usual, name) for name in OPS[op].takes if hasattr(usual, name)}
    for name in ("force_n", "arm_m_s", "overlap", "section_m2"):
        if name in given.values:
            found[name] = given.number(name, *limits(name))
    found["speeds_rpm"], found["passes"] = _passes(
        given, usual.speeds_rpm, usual.passes, SPEEDS_RPM.get(runs_on(op, usual.machine), (0, 0))
    )
    found["sets"] = _sets(given)
    if op == "sand":
        found |= {"grade": given.grade("grade", "P1500"), "disc": _disc(given)}
    return found


def _passes(
    given: Raw, usual: tuple[float, ...], count: int, turned: tuple[float, float]
) -> tuple[tuple[float, ...], int]:
    """Speed of each pass and how many there are. One speed serves every pass; a set is cut at its start, and goes on
    at its last speed.
    """
    passes = given.whole("passes", *limits("passes")) if "passes" in given.values else None
    if "speeds_rpm" not in given.values:
        count = passes or count
        return (usual + usual[-1:] * count)[max(0, len(usual) - count) :][:count], count
    if not usual:
        raise given.refused("a hand turns at no speed; leave speeds_rpm out", "speeds_rpm")
    speeds = given.numbers("speeds_rpm", *turned, most=int(limits("passes")[1]))
    if passes is None or len(speeds) == passes:
        return speeds, len(speeds)
    if len(speeds) == 1:
        return speeds * passes, passes
    raise given.refused(f"{len(speeds)} speeds stand for {passes} passes; write one speed a pass", "speeds_rpm")


def _sets(given: Raw) -> int:
    value = given.values.get("sets", 1)
    if isinstance(value, str):
        given.word("sets", [UNTIL_CLEAR])
        return 0
    return given.whole("sets", *limits("sets")) if "sets" in given.values else 1


def _disc(given: Raw) -> str | float:
    value = given.values.get("disc", "fresh")
    if isinstance(value, str):
        return given.word("disc", ["fresh", "used"]) if "disc" in given.values else value
    return given.number("disc", *limits("disc"))


def step_words(step: Step) -> str:
    """A step in plain words, its settings after commas, its zone last.

    >>> step_words(read_plan([{"op": "sand", "zone": "bow"}])[0])
    'Sand P1500, 4 passes, hard disc, the bow'
    >>> step_words(read_plan([{"op": "cut", "sets": "until_clear"}])[0])
    'Cut with heavy compound, wool, rotary at 600, 900, 1500 rpm, sets until the wipe shows it clear'
    """
    said = [_working_words(step) if step.abrades else _standing_words(step)]
    if step.zone != ALL:
        said.append(f"the {step.zone.replace('_', ' ')}")
    return ", ".join(said)


def _standing_words(step: Step) -> str:
    words = OPS[step.op].words
    if step.op == "tape" and step.zone != ALL:
        words = "Tape"
    if step.op == "wait":
        words = f"Wait {step.hours:g} h" + (f" at {step.warm_degc:g} °C" if step.warm_degc is not None else "")
    if step.product:
        words += f" with {step.product}"
    return f"{words}, {step.at_h:g} h from the start" if step.at_h else words


def _working_words(step: Step) -> str:
    work = "sand" if step.op == "sand" else "polish"
    passes = f"{step.passes} passes" if step.passes != 1 else "1 pass"
    said = [f"{OPS[step.op].words} {step.grade}", passes] if step.op == "sand" else _polish_words(step, passes)
    if step.op == "sand":
        said.append(PADS[work][step.pad])
        if step.machine == "hand" and step.pad != "block":
            said.append(MACHINES[work]["hand"])
    if step.sets != 1:
        said.append(f"{step.sets} sets" if step.sets else "sets until the wipe shows it clear")
    if step.disc not in ("fresh", ""):
        said.append("used disc" if step.disc == "used" else f"disc after {step.disc:g} m²")
    return ", ".join(said + _unusual(step))


def _polish_words(step: Step, passes: str) -> list[str]:
    machine = MACHINES["polish"][step.machine]
    if step.machine == "rotary":
        machine += f" at {', '.join(f'{rpm:g}' for rpm in step.speeds_rpm)} rpm"
    compound = dict(choices(step.op, "compound"))[step.compound]
    said = [f"{OPS[step.op].words} with {compound}", PADS["polish"][step.pad], machine]
    return said if step.machine == "rotary" else [*said, passes]


def _unusual(step: Step) -> list[str]:
    """What is set otherwise than a shop would."""
    usual = settings(step.op, step.machine, step.pad, step.compound)
    said = []
    if step.force_n != usual.force_n:
        said.append(f"{step.force_n:g} N")
    if step.arm_m_s != usual.arm_m_s:
        said.append(f"{step.arm_m_s:g} m/s")
    if step.overlap != usual.overlap:
        said.append(f"{step.overlap:.0%} overlap".replace("%", " %"))
    if step.machine == "da" and step.speeds_rpm and set(step.speeds_rpm) != set(usual.speeds_rpm):
        said.append(f"{', '.join(f'{rpm:g}' for rpm in step.speeds_rpm)} a minute")
    return said
