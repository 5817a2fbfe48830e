"""A panel and one plan or two, as a link holds them: read into a surface and steps, refused at their field."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any
from urllib.parse import quote_plus

from django import forms
from django.http import QueryDict
from django.utils.text import capfirst
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy as lazy

from courses.forms.lookalikes import LIGHT_WORDS, NOT_LISTED
from courses.forms.plan import plan_builder
from courses.forms.steps import PICK, Builder, Setting, picked_from
from courses.forms.sums import NEEDED, QuantityField, typed
from courses.shipped import catalogue, constants, panels
from courses.trade.errors import PlanRefused, TradeError
from courses.trade.panels import HIGHEST
from courses.trade.plan_text import plan_text, read_plan_text, read_token
from courses.trade.sums import Input
from courses.trade.surface import PanelSurface, Step, read_plan
from courses.trade.units import Preferences

OWN = "own"
AT_FIRST = {"panel": "mild_chalk", "number": "1"}
MOST_STEPS = 40
MARKS = 3
"""So many kinds of marks may lie on a panel of one's own."""
LONGEST = 8000
"""Characters of a plan in a link; forty full steps stay below it."""
FILM = (5.0, 2000.0)
DEPTHS = (0.0, 1500.0)
MODEL_UNITS = Preferences.metric()
"""Depths are those of the model, in micrometres for everybody."""
PLAIN = ";=,:."
"""What stays as it is in a link, so that it can be read."""


def link_of(data: QueryDict) -> tuple[dict[str, str], str]:
    """Return the fields of a link, the steps of a list put into its plan, and what the list opens, if anything.

    The list sends its steps under ``value``, the button that was pressed under ``do``, and what a step is made with.
    """
    if "panel" not in data:
        return dict(AT_FIRST), ""
    sent = {name: str(text) for name, text in data.items()}
    fields = {name: text for name, text in sent.items() if name not in ("value", "do") and not name.startswith(PICK)}
    do, picked = sent.get("do", ""), picked_from(sent)
    if "value" in data or do:
        fields["plan"] = plan_text(builder_on(None).composed(data.getlist("value"), do, picked))
    return fields, builder_on(None).opens(do, picked) if do else ""


def builder_on(surface: PanelSurface | None) -> Builder:
    """Return the list of a plan on a panel: every step there is, on its edge too where it has one."""
    edge = Setting("zone", _("Where"), (("edge", _("the edge")),), blank=_("everywhere"))
    return plan_builder(MOST_STEPS, [edge] if surface is None or "edge" in surface.zones else [])


@dataclass(frozen=True, slots=True)
class Trial:
    """A panel, the plan that is worked on it, perhaps another beside it, and the light of their pictures.

    ``fields`` say the panel as the link holds it, ``raw`` as the door ``simulate`` takes it; ``plan`` is None as long
    as none was given.
    """

    fields: tuple[tuple[str, str], ...]
    raw: Mapping[str, Any]
    surface: PanelSurface
    number: int
    plan: tuple[str, ...] | None
    beside: tuple[str, ...] | None
    light: str

    def query(self) -> str:
        """Return the link to it, without its path."""
        plans = [(name, plan_text(plan)) for name, plan in self._plans()]
        pairs = [*self.fields, *plans, ("light", self.light)]
        return "?" + "&".join(f"{name}={quote_plus(text, safe=PLAIN)}" for name, text in pairs)

    def _plans(self) -> Iterator[tuple[str, tuple[str, ...]]]:
        for name, plan in (("plan", self.plan), ("beside", self.beside)):
            if plan is not None:
                yield name, plan

    def on(self, number: int) -> "Trial":
        """Return it on another panel of the same kind."""
        fields = tuple((name, str(number) if name == "number" else text) for name, text in self.fields)
        return replace(self, fields=fields, number=number)

    def known(self) -> dict[str, Any]:
        """Return the panel as the door takes it, with the defaults of the whole panel filled in."""
        return {**self.surface.as_json(), "defects": [], **self.raw}

    def steps(self, tokens: tuple[str, ...]) -> tuple[Step, ...]:
        """Return the steps of one of its plans; raises TradeError with a sentence."""
        return read_plan([read_token(one) for one in tokens], self.surface)


def panel_words() -> list[tuple[str, str]]:
    """Return every kind of panel, those of one's own last."""
    return [*((code, kind.called) for code, kind in panels().items()), (OWN, str(_("A panel of your own")))]


def substrate_words() -> list[tuple[str, str]]:
    """Return the substrates by their names."""
    return [(code, capfirst(one.called)) for code, one in catalogue().surfaces.items()]


def colour_words() -> list[tuple[str, str]]:
    """Return the colours by their names."""
    return [(code, capfirst(code)) for code in catalogue().palette]


def mark_words() -> list[tuple[str, str]]:
    """Return what may lie on a panel, in the order of the alphabet; nothing comes first."""
    named = sorted((capfirst(kind.called), code) for code, kind in catalogue().kinds.items())
    return [("", str(_("Nothing"))), *((code, called) for called, code in named)]


class TrialForm(forms.Form):
    """The fields of a link. `trial` stands once the panel can be read; its plans may still be refused."""

    panel = forms.ChoiceField(label=lazy("Panel"), choices=panel_words, error_messages=NOT_LISTED)
    number = forms.IntegerField(label=lazy("Number"), min_value=1, max_value=HIGHEST, required=False)
    substrate = forms.ChoiceField(
        label=lazy("Substrate"), choices=substrate_words, error_messages=NOT_LISTED, required=False
    )
    colour = forms.ChoiceField(label=lazy("Colour"), choices=colour_words, error_messages=NOT_LISTED, required=False)
    plan = forms.CharField(label=lazy("Your plan"), max_length=LONGEST, required=False)
    beside = forms.CharField(label=lazy("The plan beside it"), max_length=LONGEST, required=False)
    light = forms.ChoiceField(
        label=lazy("Light"), choices=list(LIGHT_WORDS.items()), error_messages=NOT_LISTED, required=False
    )

    trial: Trial | None = None

    def __init__(self, data: Mapping[str, Any], prefs: Preferences) -> None:
        super().__init__(data)
        for name, title in (
            ("film", _("Film")),
            ("reserve", _("What must stay (optional)")),
            ("edge", _("Film at the edge (optional)")),
        ):
            self.fields[name] = QuantityField(Input(name, title, "um", *FILM, optional=True), prefs)
        for place in range(1, MARKS + 1):
            on = forms.ChoiceField(label=_("On it"), choices=mark_words, error_messages=NOT_LISTED, required=False)
            self.fields[f"mark{place}"] = on
            depth = Input(f"depth{place}", _("How deep"), "um", *DEPTHS, optional=True)
            self.fields[f"depth{place}"] = QuantityField(depth, MODEL_UNITS)

    def clean(self) -> dict[str, Any]:
        """Read the panel, then the plans on it."""
        cleaned = super().clean() or {}
        if cleaned.get("panel") == OWN:
            self._need(cleaned)
        if self.errors:
            return cleaned
        fields, raw = self._own(cleaned) if cleaned["panel"] == OWN else _drawn(cleaned)
        try:
            surface = PanelSurface.of(raw, catalogue(), constants())
        except PlanRefused as refused:
            self.add_error(self._place(refused.input), refused.sentence)
            return cleaned
        plan, beside = (self._plan(name) for name in ("plan", "beside"))
        light = cleaned["light"] or (panels()[cleaned["panel"]].light if cleaned["panel"] != OWN else "point")
        self.trial = Trial(fields, raw, surface, cleaned["number"] or 1, plan, beside, light)
        self._try("plan", self.trial.plan)
        self._try("beside", self.trial.beside)
        return cleaned

    def _need(self, cleaned: Mapping[str, Any]) -> None:
        """Refuse a panel of one's own without a film, or with chalk of no depth."""
        wanted = ["substrate", "film"]
        wanted += [name.replace("mark", "depth") for name in _MARKED if cleaned.get(name) == "oxidation"]
        for name in wanted:
            if name not in self.errors and cleaned.get(name) in ("", None):
                self.add_error(name, NEEDED["required"])

    def _plan(self, name: str) -> tuple[str, ...] | None:
        return tuple(read_plan_text(self.cleaned_data[name])) if name in self.data else None

    def _try(self, name: str, plan: tuple[str, ...] | None) -> None:
        try:
            self.trial.steps(plan or ()) if self.trial else ()
        except TradeError as refused:
            self.add_error(name, _placed(refused))

    def _own(self, cleaned: Mapping[str, Any]) -> tuple[tuple[tuple[str, str], ...], dict[str, object]]:
        """Return the fields of a panel of one's own in base units, and its surface as the door takes it."""
        written = {name: f"{cleaned[name]:g} um" for name in _LENGTHS if cleaned.get(name) is not None}
        words = {name: cleaned[name] for name in ("panel", "substrate", "colour", *_MARKED) if cleaned.get(name)}
        raw: dict[str, object] = {key: cleaned[name] for name, key in _SURFACE.items() if cleaned.get(name)}
        marks = [(cleaned[mark], cleaned[mark.replace("mark", "depth")]) for mark in _MARKED if cleaned.get(mark)]
        chalk = [depth for kind, depth in marks if kind == "oxidation"]
        if chalk:
            raw["oxidation_um"] = chalk[0]
        raw["defects"] = [_defect(kind, depth) for kind, depth in marks if kind != "oxidation"]
        return tuple({**words, **written}.items()), raw

    def _place(self, where: str) -> str | None:
        """Return the field of the page that holds what the surface calls so, or None for the whole panel."""
        words = where.split()
        if self.cleaned_data["panel"] != OWN:
            return "panel"
        chalk = [name for name in _MARKED if self.cleaned_data.get(name) == "oxidation"]
        others = [name for name in _MARKED if self.cleaned_data.get(name) not in ("", None, "oxidation")]
        if words[1:2] == ["defects"]:
            return others[int(words[2]) - 1].replace("mark", "depth")
        if words[-1] == "oxidation_um" and chalk:
            return chalk[0].replace("mark", "depth")
        return next((name for name, key in _SURFACE.items() if key == words[-1]), None)


def marks_on(known: Mapping[str, Any]) -> list[Mapping[str, Any]]:
    """Return what lies on a panel, the chalk as one of its marks."""
    chalk = [{"kind": "oxidation", "depth_um": known["oxidation_um"]}] if known.get("oxidation_um") else []
    return [*chalk, *known["defects"]]


def own_fields(trial: Trial, prefs: Preferences) -> dict[str, str]:
    """Return what the fields of a panel of one's own hold where they begin with this one."""
    known = trial.known()
    fields = {"panel": OWN, "substrate": str(known["substrate"]), "colour": str(known["colour"])}
    lengths = {name: known.get(_SURFACE[name]) for name in ("film", "reserve", "edge")}
    for place, one in enumerate(marks_on(known)[:MARKS], start=1):
        fields[f"mark{place}"] = one["kind"]
        lengths[f"depth{place}"] = None if catalogue().kind(one["kind"]).through else one.get("depth_um")
    return {**fields, **{name: _typed(name, value, prefs) for name, value in lengths.items() if value}}


def _typed(name: str, value: float, prefs: Preferences) -> str:
    return typed(Input(name, name, "um"), value, MODEL_UNITS if name.startswith("depth") else prefs) or ""


_MARKED = tuple(f"mark{place}" for place in range(1, MARKS + 1))
_LENGTHS = ("film", "reserve", "edge", *(name.replace("mark", "depth") for name in _MARKED))
_SURFACE = {
    "substrate": "substrate", "colour": "colour", "film": "film_um", "reserve": "reserve_um", "edge": "edge_film_um",
}  # fmt: skip
"""The fields of a panel of one's own, and what the surface calls them."""


def _placed(refused: TradeError) -> str:
    """Return the sentence of a refusal with the number of its step before it."""
    words = refused.input.split()
    if words[:1] == ["plan"] and len(words) > 1:
        return _("Step %(number)s: %(sentence)s") % {"number": words[1], "sentence": refused.sentence}
    return refused.sentence


def _drawn(cleaned: Mapping[str, Any]) -> tuple[tuple[tuple[str, str], ...], dict[str, object]]:
    number = cleaned["number"] or 1
    return (("panel", cleaned["panel"]), ("number", str(number))), panels()[cleaned["panel"]].drawn(number)


def _defect(kind: str, depth: float | None) -> dict[str, object]:
    return {"kind": kind} if depth is None else {"kind": kind, "depth_um": depth}
