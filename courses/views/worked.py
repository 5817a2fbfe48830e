"""A plan worked on a panel of the model, as a page shows it: verdict, reasons, figures; and two of them compared."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher
from typing import Any

from django.utils.translation import gettext as _

from courses.figures import Figure
from courses.figures.of_plan import ladder, load, sections
from courses.templatetags.words import PLAN_VERDICTS, Look
from courses.trade.constants import Constants
from courses.trade.surface import Run, Step, step_words
from courses.trade.units import Preferences, rounded, shown

MODEL = "model µm"
LEAST = 0.1


@dataclass(frozen=True, slots=True)
class Line:
    """One number that a plan came to: what it is, the number as it is shown, and how it is shown."""

    label: str
    number: float
    unit: str

    @property
    def value(self) -> str:
        """Return the number to one decimal; what is less than that and not nothing is said so."""
        if 0 < self.number < LEAST:
            return _("under %(least)s") % {"least": LEAST}
        return _plain(self.number)

    @property
    def text(self) -> str:
        """Return it with its unit."""
        return f"{self.value} {self.unit}".strip()

    @property
    def title(self) -> str:
        """Return what it is, with its unit."""
        return f"{self.label}, {self.unit}" if self.unit else self.label


@dataclass(frozen=True, slots=True)
class ReasonLine:
    """Why a plan came out as it did, in a sentence that names the step, and what would have saved it."""

    sentence: str
    saved: str


@dataclass(frozen=True, slots=True)
class Worked:
    """A plan and all that follows from it; ``key`` tells its parts from those of another on the page.

    ``looks`` are the steps that looked at the panel, each with what it showed.
    """

    key: str
    name: str
    look: Look
    headline: str
    reasons: tuple[ReasonLine, ...]
    steps: tuple[str, ...]
    looks: tuple[tuple[str, str], ...]
    lines: tuple[Line, ...]
    sections: tuple[Figure, ...]
    ladder: Figure | None
    load: Figure | None
    outcome: Mapping[str, Any]

    @property
    def facts(self) -> list[tuple[str, str]]:
        """Return its numbers as pairs of a label and a text."""
        return [(line.label, line.text) for line in self.lines]

    @property
    def table(self) -> dict[str, Any]:
        """Return its numbers as a table, their units with the labels."""
        rows = [(line.title, line.value) for line in self.lines]
        return {"caption": _("In numbers"), "heads": [_("Came to"), self.name], "rows": rows}


def worked(key: str, name: str, steps: Sequence[Step], run: Run, view: "Reader") -> Worked:
    """Return a plan that was run on a surface, ready for a page."""
    outcome, reasons = run.outcome, _reasons(run)
    words, named = tuple(step_words(step) for step in steps), name if view.several else ""
    return Worked(
        key=key,
        name=name,
        look=PLAN_VERDICTS[outcome.verdict],
        headline=reasons[0].sentence if reasons else _headline(run),
        reasons=reasons,
        steps=words,
        looks=tuple(
            (f"{state.step}. {words[state.step - 1]}", " ".join(state.found)) for state in run.states if state.found
        ),
        lines=tuple(_lines(run, view.prefs)),
        sections=sections(run, named),
        ladder=ladder(run, view.constants, named),
        load=load(run, view.constants, named),
        outcome=outcome.as_json(),
    )


@dataclass(frozen=True, slots=True)
class Reader:
    """Who looks, and whether at more than one plan."""

    prefs: Preferences
    constants: Constants
    several: bool


def _reasons(run: Run) -> tuple[ReasonLine, ...]:
    """Return why a plan came out as it did; what is the same in several zones is said once, with all their names."""
    found: dict[tuple[str, str], list[str]] = {}
    for one in run.outcome.reasons:
        zone, colon, rest = one.sentence.partition(": ")
        said = (zone, rest) if colon and zone.startswith("The ") else ("", one.sentence)
        found.setdefault((said[1], one.would_save), []).append(said[0])
    return tuple(ReasonLine(_of_zones(zones, said), saved) for (said, saved), zones in found.items())


def _of_zones(zones: Sequence[str], said: str) -> str:
    names = [zone if not at else f"t{zone[1:]}" for at, zone in enumerate(dict.fromkeys(zones)) if zone]
    if not names:
        return said
    *first, last = names
    return f"{', '.join(first)} and {last}: {said}" if first else f"{last}: {said}"


def _headline(run: Run) -> str:
    outcome = run.outcome
    said = {"taken": _um(outcome.removed_um), "film": _um(outcome.film_um)}
    return _("It takes %(taken)s, leaves %(film)s, and nothing that was asked for is left to do.") % said


def _um(value: float) -> str:
    return Line("", value, MODEL).text


def _plain(number: float) -> str:
    return f"{rounded(number, 1):.1f}".removesuffix(".0").replace("-", "\u2212")


def _lines(run: Run, prefs: Preferences) -> Iterator[Line]:
    """Yield what a plan came to, in the order in which it matters."""
    out = run.outcome
    yield Line(_("Film left"), rounded(out.film_um, 1), MODEL)
    yield Line(_("Film taken"), rounded(out.removed_um, 1), MODEL)
    yield Line(_("The panel needed"), rounded(out.needed_cut_um, 1), MODEL)
    yield Line(_("Deepest stray left"), rounded(out.tail_um, 2), MODEL)
    yield Line(_("Trail left"), rounded(out.trail_um, 2), MODEL)
    yield Line(_("Gloss at 60°"), rounded(out.gloss60 or 0.0, 0), "GU")
    yield Line(_("Gloss at 20°"), rounded(out.gloss20 or 0.0, 0), "GU")
    yield Line(_("Haze"), rounded(out.haze or 0.0, 1), "")
    yield Line(_("Hottest"), *_degrees(out.heat_degc, prefs))
    yield Line(_("Time"), rounded(out.minutes, 0), _("min for each m²"))
    yield Line(_("Discs"), rounded(out.discs, 1), _("for each m²"))
    yield Line(_("Pads"), rounded(out.pads, 1), _("for each m²"))
    yield Line(_("Compound"), rounded(out.grams, 0), _("g for each m²"))
    yield Line(_("Rank on this panel"), rounded(out.score, 1), _("of 100"))


def _degrees(degc: float, prefs: Preferences) -> tuple[float, str]:
    number, unit = shown(degc, "degc", prefs, 0).split("\u00a0")
    return float(number.replace("\u2212", "-")), unit


def differences(one: Worked, other: Worked) -> list[str]:
    """Return in sentences how a plan differs from the one beside it: what it came to, then its steps."""
    found = [_gap(mine, theirs) for mine, theirs in zip(one.lines, other.lines, strict=True)]
    if one.look != other.look:
        words = {"one": one.look.words, "other": other.look.words}
        found.insert(0, _("Verdict: %(one)s; beside it: %(other)s.") % words)
    return [*(line for line in found if line), *_steps(one.steps, other.steps)] or [
        _("Nothing: both come to the same.")
    ]


def _gap(mine: Line, theirs: Line) -> str:
    gap = rounded(mine.number, 1) - rounded(theirs.number, 1)
    if abs(gap) < LEAST / 2:
        return ""
    said = {"label": mine.label, "gap": Line("", abs(gap), mine.unit).text}
    said |= {"mine": mine.value, "theirs": theirs.value}
    if gap > 0:
        return _("%(label)s: %(gap)s more (%(mine)s against %(theirs)s).") % said
    return _("%(label)s: %(gap)s less (%(mine)s against %(theirs)s).") % said


def _steps(mine: tuple[str, ...], theirs: tuple[str, ...]) -> Iterator[str]:
    """Yield the steps that only one of two plans has."""
    here, there = [], []
    for tag, a, b, c, d in SequenceMatcher(a=mine, b=theirs, autojunk=False).get_opcodes():
        if tag != "equal":
            here += [f"{number}. {mine[number - 1]}" for number in range(a + 1, b + 1)]
            there += [f"{number}. {theirs[number - 1]}" for number in range(c + 1, d + 1)]
    if here:
        yield _("Only in this plan: %(steps)s.") % {"steps": "; ".join(here)}
    if there:
        yield _("Only in the plan beside it: %(steps)s.") % {"steps": "; ".join(there)}


def table(one: Worked, other: Worked) -> dict[str, Any]:
    """Return the numbers of two plans as a table, their units with the labels."""
    rows = [(mine.title, mine.value, theirs.value) for mine, theirs in zip(one.lines, other.lines, strict=True)]
    heads = [_("Came to"), _("This plan"), _("Beside it")]
    return {"caption": _("Both on the same panel"), "heads": heads, "rows": rows}
