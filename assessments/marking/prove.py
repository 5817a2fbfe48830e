"""Proof by trying: every exemplar on many draws, each outcome as said, no rule idle, every draw clear of its limits."""

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Final

from assessments.marking.exemplars import NOTHING, Expressions, Trial, drawn_case, trials
from assessments.marking.mark import Marker, mark
from assessments.rules import Mark
from assessments.scenarios.draw import draw, key_of
from assessments.scenarios.fields import Record
from assessments.scenarios.spec import Scenario
from assessments.scenarios.worked import wavering

STEADY_SEEDS: Final = 5
"""On so many draws every plan is worked again with each fitted figure of the model a little off."""

Tick = Callable[[], object]


@dataclass(frozen=True, slots=True)
class Deviation:
    """One exemplar on one draw that came out otherwise than said; ``rules`` came out not met."""

    seed: int
    exemplar: str
    wanted: str
    got: str
    rules: tuple[str, ...] = ()

    def as_json(self) -> dict[str, object]:
        """Return the deviation as the door prints it."""
        return {
            "seed": self.seed,
            "exemplar": self.exemplar,
            "wanted": self.wanted,
            "got": self.got,
            "rules": list(self.rules),
        }


@dataclass(frozen=True, slots=True)
class Proof:
    """What trying a scenario showed: how much was tried, what deviated, which rules never told anybody apart.

    ``untried`` exemplars applied to no draw: too few draws, or a ``when`` that never holds.
    """

    code: str
    version: int
    draws: int
    marks: int
    deviations: tuple[Deviation, ...]
    idle_rules: tuple[str, ...]
    untried: tuple[str, ...] = ()

    @property
    def clean(self) -> bool:
        """Whether nothing deviated and no rule is idle."""
        return not self.deviations and not self.idle_rules

    def as_json(self) -> dict[str, object]:
        """Return one row of the door ``prove``."""
        return {
            "code": self.code,
            "version": self.version,
            "draws": self.draws,
            "marks": self.marks,
            "deviations": [deviation.as_json() for deviation in self.deviations],
            "idle_rules": list(self.idle_rules),
        }

    def in_words(self) -> list[str]:
        """Return the proof in lines for people, the deviations counted by exemplar."""
        state = "clean" if self.clean else "found wanting"
        lines = [f"{self.code}@{self.version}: {self.draws} draws, {self.marks} marks, {state}."]
        counted = Counter((one.exemplar, one.wanted) for one in self.deviations)
        first = {(one.exemplar, one.wanted): one for one in reversed(self.deviations)}
        for case, times in counted.items():
            one = first[case]
            lines.append(f"  {one.exemplar}: {times} times, first at seed {one.seed}: {one.got}, wanted {one.wanted}.")
        lines += [f"  {code} is idle: it never tells two exemplars apart." for code in self.idle_rules]
        return lines + [f"  The exemplar '{name}' applied to no draw." for name in self.untried]


@dataclass(slots=True)
class _Tally:
    """What has been seen so far: marks made, exemplars tried, rules that came out met, and not met, somewhere."""

    marks: int = 0
    tried: set[str] = field(default_factory=set)
    met: set[str] = field(default_factory=set)
    not_met: set[str] = field(default_factory=set)

    def count(self, trial: Trial, marked: Mark) -> None:
        self.marks += 1
        self.tried.add(trial.name)
        if trial.name == NOTHING:
            return
        self.met.update(found.code for found in marked.findings if found.verdict == "met")
        self.not_met.update(_not_met(marked))


def prove(marker: Marker, seeds: int, tick: Tick = lambda: None) -> Proof:
    """Return the proof over the draws of seeds 1 to ``seeds``; ``tick`` is called after each draw.

    A rule is idle unless it comes out met on one exemplar and not met on another; *nothing answered* doesn't count.
    """
    tally = _Tally()
    deviations: list[Deviation] = []
    for seed in range(1, seeds + 1):
        deviations += _tried(marker, seed, tally)
        tick()
    codes = [rule.code for rule in marker.book.book.rules]
    idle = tuple(code for code in codes if code not in tally.met or code not in tally.not_met)
    untried = tuple(one.name for one in marker.scenario.exemplars if one.name not in tally.tried)
    code, version = marker.scenario.code, marker.scenario.version
    return Proof(code, version, seeds, tally.marks, tuple(deviations), idle, untried)


def _tried(marker: Marker, seed: int, tally: _Tally) -> Iterator[Deviation]:
    facts = draw(marker.scenario, seed).facts
    key = key_of(marker.scenario, facts)
    drawn = drawn_case(marker.scenario, facts, key)
    yield from _too_close(marker.expressions, seed, drawn)
    tried = tuple(trials(marker.expressions, key, drawn))
    if seed <= STEADY_SEEDS:
        yield from _unsteady(marker.scenario, seed, facts, tried)
    for trial in tried:
        marked = mark(marker, facts, trial.answers, key)
        tally.count(trial, marked)
        wanted = _broken(trial, marked)
        if wanted:
            yield Deviation(seed, trial.name, wanted, marked.outcome, _not_met(marked))


def _too_close(expressions: Expressions, seed: int, drawn: Mapping[str, object]) -> Iterator[Deviation]:
    for limit in expressions.scenario.clear_of:
        held = expressions.worked(limit.holds, drawn)
        if held is not True:
            yield Deviation(seed, "clear_of", limit.limit, "unknown" if held is None else "too close")


def _unsteady(scenario: Scenario, seed: int, facts: Record, tried: Iterable[Trial]) -> Iterator[Deviation]:
    """Walk the plans whose verdict hangs on a figure of the model that nobody knows so well."""
    planned = scenario.the("plan")
    seen: list[object] = []
    for trial in tried if planned else ():
        plan = trial.answers.get(planned.id) if planned else None
        if isinstance(plan, list) and plan not in seen:
            seen.append(plan)
            turned = wavering(scenario, facts, [step for step in plan if isinstance(step, dict)])
            if turned:
                yield Deviation(seed, trial.name, "a steady verdict of the plan", f"another under {', '.join(turned)}")


def _not_met(marked: Mark) -> tuple[str, ...]:
    return tuple(found.code for found in marked.findings if found.verdict == "not_met")


def _broken(trial: Trial, marked: Mark) -> str:
    """Return what was wanted of a trial and didn't come, or nothing."""
    missed = frozenset(_not_met(marked))
    if marked.failed:
        return f"every rule judged, but {', '.join(marked.failed)} failed to"
    if marked.outcome not in _outcomes(trial, marked):
        return " or ".join(_outcomes(trial, marked))
    if trial.exactly and missed != trial.not_met:
        return f"not met exactly: {', '.join(sorted(trial.not_met)) or 'nothing'}"
    if not trial.not_met <= missed:
        return f"not met among others: {', '.join(sorted(trial.not_met))}"
    if trial.full and marked.points != marked.of:
        return f"{marked.of} points, not {marked.points}"
    if trial.empty and marked.points:
        return f"no points, not {marked.points}"
    return ""


def _outcomes(trial: Trial, marked: Mark) -> tuple[str, ...]:
    """Return the outcomes allowed; nothing answered can't be certified where a critical rule waits for an answer."""
    if not trial.empty:
        return trial.outcomes
    waits = any(found.severity == "critical" and found.verdict == "not_answered" for found in marked.findings)
    return ("cannot_certify",) if waits else ("not_yet_satisfactory",)
