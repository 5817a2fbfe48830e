"""Rules as pages show them: read back as a sentence, what is wrong marked under its very characters."""

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from django.utils.functional import Promise
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy as lazy
from django.utils.translation import ngettext

from assessments.manuscript import Line, Manuscript
from assessments.marking import Proof
from assessments.marking.case import schema_of
from assessments.marking.trade import FUNCTIONS
from assessments.models import Scenario
from assessments.rules import Fault, Kind, Rule, Schema, check, read_back
from assessments.rules.rule import Part
from assessments.rules.sentences.spoken import plain
from assessments.scenarios.fields import Field
from assessments.scenarios.story import Show as InUnits
from assessments.scenarios.story import with_units
from assessments.views.paper import show_for
from courses.models import Lesson
from courses.shipped import sources
from courses.templatetags.words import OUTCOMES
from courses.trade.units import UNITS, Preferences, symbol

_CODES = re.compile("|".join(sorted(OUTCOMES, key=len, reverse=True)))
Show = Callable[[Any, str | None], str]
END = "\u2423"
"""What stands for a place behind the last character."""
NAMED: dict[str, str | Promise] = {
    "sentence": lazy("What is right"),
    "test": lazy("Met when"),
    "when": lazy("Applies when"),
    "steps": lazy("Steps"),
    "share": lazy("Share"),
    "severity": lazy("If not met"),
    "points": lazy("Points"),
    "because": lazy("Reason"),
    "lesson": lazy("Lesson"),
    "source": lazy("Source"),
}


@dataclass(frozen=True, slots=True)
class Mark:
    """One thing wrong, or risky, in a test: the sentence, and the test cut where it stands."""

    sentence: str
    before: str
    wrong: str
    after: str
    warns: bool = False

    @classmethod
    def of(cls, text: str, fault: Fault, warns: bool = False) -> "Mark":
        """Return a fault with the text it was found in."""
        if fault.start is None or fault.end is None:
            return cls(fault.message, "", "", "", warns)
        start, end = fault.start, max(fault.end, fault.start + 1)
        return cls(fault.message, text[:start], text[start:end] or END, text[end:], warns)


@dataclass(frozen=True, slots=True)
class PartLine:
    """One expression of a rule: its text, how it reads, what is wrong or risky in it."""

    name: str
    text: str
    reading: str
    marks: tuple[Mark, ...]
    ok: bool


def show_values(prefs: Preferences) -> Show:
    """Return how this reader sees a value that a rule compares."""
    in_units = show_for(prefs)

    def show(value: Any, unit: str | None) -> str:
        if unit is None or unit not in UNITS or isinstance(value, bool) or not isinstance(value, int | float):
            return plain(value, unit)
        decimals = len(f"{value:.4f}".rstrip("0").partition(".")[2])
        return in_units(value, unit, decimals)

    return show


@dataclass(frozen=True, slots=True)
class Reads:
    """How rules of a scenario read to one person: what they may name, what a name is called, values in their units."""

    schema: Schema
    show: Show
    in_units: InUnits
    labels: Mapping[tuple[str, ...], str]

    @classmethod
    def of(cls, scenario: Scenario, prefs: Preferences) -> "Reads":
        """Return how rules of a scenario read to whoever reads in these units."""
        spec, show = scenario.spec, show_for(prefs)
        owned = [("facts", spec.facts), ("key", spec.beside)]
        labels: dict[tuple[str, ...], str] = {
            (root, one.name): f"“{one.label}”" for root, fields in owned for one in fields if one.label
        }
        for root, fields in (*owned, ("key", spec.key_fields), ("answer", spec.key_fields)):
            for one in fields:
                labels |= _option_labels((root, one.name), one, show)
        return cls(schema_of(spec), show_values(prefs), show, labels)

    def part(self, part: Part) -> PartLine:
        """Return one expression checked and read back."""
        checked = check(part.text, self.schema, FUNCTIONS, part.wants)
        wrong = [Mark.of(part.text, one) for one in checked.errors]
        risky = [Mark.of(part.text, one, warns=True) for one in checked.warnings]
        said = read_back(checked, self.labels.get, self.show).replace("'", "’")
        return PartLine(part.name, part.text, said, (*wrong, *risky), checked.ok)


def _option_labels(path: tuple[str, ...], field: Field, show: InUnits) -> dict[tuple[str, ...], str]:
    """Return what the options of a choice, or of a list of them, are called, by the path of the word."""
    at = path if field.items is None else (*path, "[]")
    options = (field.items or field).options
    return {(*at, one.id): f"“{with_units(one.words, show)}”" for one in options}


def rule_line(rule: Rule, reads: Reads) -> dict[str, Any]:
    """Return a published rule as its page shows it."""
    return {
        "code": rule.code,
        "sentence": with_units(rule.sentence, reads.in_units),
        "severity": rule.severity,
        "weighs": points_words(rule.points),
        "because": with_units(rule.because, reads.in_units),
        "lesson": rule.lesson or "",
        "source": sources().get(rule.source),
        "parts": [reads.part(part) for part in rule.parts],
    }


def points_words(points: float) -> str:
    """Return points with their word: “2 points”, “1 point”, “0.5 points”."""
    return ngettext("%(n)s point", "%(n)s points", 1 if points == 1 else 2) % {"n": f"{points:g}"}


def draft_line(line: Line, reads: Reads) -> dict[str, Any]:
    """Return a rule of a draft: how it reads, what is wrong with it, what it was before."""
    found: list[Mark] = []
    texts = {part.name: part.text for part in line.rule.parts} if line.rule else {}
    found += [Mark.of(texts.get(one.part, ""), one.fault) for one in line.faults]
    found += [Mark.of(texts.get(one.part, ""), one.fault, warns=True) for one in line.warnings]
    said = rule_line(line.rule, reads) if line.rule else {"code": line.code, "sentence": line.code}
    changed = differences(line.was, line.rule)
    return {**said, "marks": found, "change": line.change, "was": changed, "shared": "shared" in line.row}


def differences(was: Rule | None, now: Rule | None) -> list[tuple[str, str, str]]:
    """Return what a rule said and says, key by key where it differs."""
    if was is None or now is None:
        return []
    before, after = was.as_json(), now.as_json()
    return [(str(NAMED[key]), _said(before[key]), _said(after[key])) for key in NAMED if before[key] != after[key]]


def _said(value: Any) -> str:
    if isinstance(value, list):
        return "; ".join(f"{test} ({points:g})" for test, points in value) or "–"
    return "–" if value is None else f"{value:g}" if isinstance(value, int | float) else str(value)


def proof_lines(proof: Proof) -> list[dict[str, Any]]:
    """Return what came out otherwise than said, by exemplar: what was wanted, what came, how often."""
    lines: dict[str, dict[str, Any]] = {}
    for one in proof.deviations:
        came = {"wanted": outcomes_said(one.wanted), "got": outcomes_said(one.got), "rules": one.rules}
        line = lines.setdefault(one.exemplar, {"name": one.exemplar, **came, "times": 0})
        line["times"] += 1
    for line in lines.values():
        words = ngettext("on %(n)d draw of %(of)d", "on %(n)d draws of %(of)d", line["times"])
        line["often"] = words % {"n": line["times"], "of": proof.draws}
    return list(lines.values())


def outcomes_said(text: str) -> str:
    """Return a text with the codes of outcomes in words: “failed on a critical rule”."""
    return _CODES.sub(lambda found: str(OUTCOMES[found[0]].words).lower(), text)


def lessons_by_code() -> dict[str, str]:
    """Return the title of every lesson by its code."""
    return dict(Lesson.objects.values_list("code", "title"))


@dataclass(frozen=True, slots=True)
class NameLine:
    """A name a rule may use: its path, what it is called on the page, its kind and unit or choices."""

    path: str
    label: str
    kind: str


def names_of(scenario: Scenario) -> list[dict[str, Any]]:
    """Return every name a rule may use, by its root."""
    labels = _labels(scenario)
    roots = {"answer": _("The trainee’s answers"), "key": _("The key"), "facts": _("Facts, as drawn")}
    roots["model"] = _("Worked from the answers")
    names = schema_of(scenario.spec).names
    known = {root: words for root, words in roots.items() if root in names}
    return [{"root": words, "names": list(_names(names[root], root, labels))} for root, words in known.items()]


def _labels(scenario: Scenario) -> dict[str, str]:
    spec = scenario.spec
    of_facts = {f"facts.{one.name}": one.label for one in spec.facts}
    of_key = {f"{root}.{one.name}": one.label for root in ("key", "answer") for one in spec.key_fields}
    return of_facts | of_key | {f"model.{one.name}": one.label for one in spec.model_fields}


def _names(kind: Kind, path: str, labels: dict[str, str]) -> Iterable[NameLine]:
    for name, field in kind.fields.items():
        here = f"{path}.{name}"
        yield NameLine(here, labels.get(here, ""), kind_words(field))
        if field.item and field.item.name == "rec":
            yield from _names(field.item, f"{here} …", labels)


def kind_words(kind: Kind) -> str:
    """Return a kind in words: what it is, its unit or choices, whether it may be missing."""
    if kind.name == "enum":
        said = _("one of %(words)s") % {"words": ", ".join(kind.vals)}
    elif kind.item is not None:
        inner = ", ".join(kind.item.vals) if kind.item.name == "enum" else ""
        said = _("a list of %(words)s") % {"words": inner} if inner else _("a list")
    else:
        said = str(_KINDS[kind.name])
    unit = f", {unit_sign(kind.unit)}" if kind.unit else ""
    return f"{said}{unit}{_(', may be missing') if kind.opt else ''}"


def unit_sign(unit: str | None) -> str:
    """Return the sign of the unit a rule reckons in, whatever the reader's: nothing for none, itself if unknown."""
    if not unit or unit not in UNITS:
        return unit or ""
    return symbol(unit, Preferences.metric())


_KINDS: dict[str, str | Promise] = {
    "num": lazy("a number"),
    "int": lazy("a whole number"),
    "bool": lazy("yes or no"),
    "str": lazy("a text"),
    "rec": lazy("a record"),
}


def state_words(found: Manuscript) -> str:
    """Return in a sentence how a draft stands."""
    if found.checked.refusal:
        return found.checked.refusal
    wrong = sum(1 for line in found.lines if line.faults)
    if wrong:
        return ngettext("One rule has a mistake.", "%(n)d rules have mistakes.", wrong) % {"n": wrong}
    if not found.sound:
        return _("Every rule is sound. Not every known answer comes out as said.")
    if not found.changes:
        return _("Sound, and nothing is changed yet.")
    return _("Sound. It can go to review.") if found.draft.is_written else _("Sound. It can be published.")
