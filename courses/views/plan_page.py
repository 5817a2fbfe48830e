"""What the page *Try a plan* shows: the panel in words, the plans on it, their pictures before and after."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Any

from django.utils.text import capfirst
from django.utils.translation import gettext as _

from courses.forms.lookalikes import LIGHT_WORDS
from courses.forms.tried import MARKS, OWN, Trial, TrialForm, builder_on, marks_on, own_fields
from courses.gallery import Frame, are_hung, frame, together, tried_sheets
from courses.models import HungPicture
from courses.pictures.plan_scenes import after, before
from courses.shipped import catalogue, panels
from courses.trade.panels import HIGHEST
from courses.trade.plan_text import plan_text, read_plan_text
from courses.trade.units import Preferences, shown
from courses.views.worked import MODEL, Line, Worked, differences, table


def page_of(
    form: TrialForm, done: Sequence[Worked], prefs: Preferences, limit: object = "", opened: str = ""
) -> dict[str, Any]:
    """Return all that the page shows; ``done`` are its plans, worked.

    ``limit`` says why no picture was made, ``opened`` what the list of steps has open.
    """
    trial = form.trial
    builder = builder_on(trial.surface if trial else None)
    plan = trial.plan if trial else read_plan_text(str(form["plan"].value() or ""))
    own = TrialForm(own_fields(trial, prefs), prefs) if trial else form
    page = {
        "form": form,
        "kinds": [(code, kind.called) for code, kind in panels().items()],
        "own": own,
        "hidden": [form[name] for name in ("number", "beside", "light")],
        "marks": [(own[f"mark{place}"], own[f"depth{place}"]) for place in range(1, MARKS + 1)],
        "open": _open(form),
        "kept": kept(form),
        "steps": builder.page(plan or (), opened),
        "panel_fields": [],
        "panel": {"title": _("The panel")},
        "worked": done,
        "trial": trial,
        "limit": limit,
    }
    return {**page, **(_of(trial, done, prefs) if trial else {})}


def _of(trial: Trial, done: Sequence[Worked], prefs: Preferences) -> dict[str, Any]:
    rows = sheets(trial, done)
    found: dict[str, Any] = {
        "panel": panel(trial, prefs),
        "panel_fields": [*trial.fields, *_also(trial)],
        "query": trial.query(),
        "frame": pictured(trial, rows, done) if rows and are_hung(rows) else None,
        "lights": list(LIGHT_WORDS.items()),
        "beside": {
            "keep": replace(trial, beside=trial.plan).query(),
            "swap": swapped(trial).query(),
            "drop": replace(trial, beside=None).query(),
        },
    }
    if len(done) > 1:
        found |= {"differences": differences(*done), "table": table(*done)}
    return found


def _also(trial: Trial) -> list[tuple[str, str]]:
    """Return what else of a link goes along when its plan is changed."""
    beside = [] if trial.beside is None else [("beside", plan_text(trial.beside))]
    return [*beside, ("light", trial.light)]


def kept(form: TrialForm) -> list[tuple[str, str]]:
    """Return what goes along when another panel is chosen: the plans."""
    return [(name, str(form[name].value())) for name in ("plan", "beside") if form[name].value() is not None]


def swapped(trial: Trial) -> Trial:
    """Return a trial whose plans have changed places."""
    return trial if trial.beside is None else replace(trial, plan=trial.beside, beside=trial.plan)


def _open(form: TrialForm) -> str:
    """Return which fold holds what has to be mended."""
    wrong = set(form.errors) - {"plan", "beside", "light"}
    if not wrong:
        return ""
    return "own" if form["panel"].value() == OWN else "kinds"


def panel(trial: Trial, prefs: Preferences) -> dict[str, Any]:
    """Return the panel in words, and the link to another one like it."""
    kind = panels().get(dict(trial.fields)["panel"])
    facts = list(_facts(trial, prefs))
    if kind is None:
        return {"title": _("Your own panel"), "facts": facts}
    title = _("%(called)s, panel %(number)s") % {"called": kind.called, "number": trial.number}
    another = trial.on(trial.number % HIGHEST + 1).query()
    return {"title": title, "about": kind.about, "facts": facts, "another": another}


def _facts(trial: Trial, prefs: Preferences) -> Iterator[tuple[str, str]]:
    surface = trial.known()
    yield _("Substrate"), capfirst(catalogue().surface(surface["substrate"]).called)
    yield _("Colour"), capfirst(surface["colour"])
    yield _("Film"), shown(surface["film_um"], "um", prefs)
    if surface.get("edge_film_um"):
        yield _("Film at the edge"), shown(surface["edge_film_um"], "um", prefs)
    yield _("Must stay"), shown(surface["reserve_um"], "um", prefs)
    yield _("One job may take"), shown(surface["budget_um"], "um", prefs)
    yield _("On it"), "; ".join(_marks(surface)) or _("nothing")


def _marks(known: Mapping[str, Any]) -> Iterator[str]:
    """Yield what lies on a panel, with its depth where it has one."""
    for one in marks_on(known):
        kind = catalogue().kind(one["kind"])
        depth = None if kind.through else one.get("depth_um")
        yield f"{capfirst(kind.called)}, {Line('', depth, MODEL).text}" if depth else capfirst(kind.called)


def sheets(trial: Trial, done: Sequence[Worked]) -> list[HungPicture]:
    """Return the rows of the pictures of a trial: the panel before, and after each plan that was worked on it."""
    if not done:
        return []
    surface, seed, trade = trial.known(), trial.number, catalogue()
    scenes = [before(surface, seed, trade), *(after(surface, one.outcome, seed, trade) for one in done)]
    return tried_sheets(scenes, trial.light)


def pictured(trial: Trial, rows: Sequence[HungPicture], done: Sequence[Worked]) -> Frame:
    """Return these pictures side by side under one lamp."""
    captions = [_("Before"), *(_("After: %(plan)s") % {"plan": one.name.lower()} for one in done)]
    on = "; ".join(_marks(trial.known())) or _("nothing")
    alts = [_("The panel before any step. On it: %(marks)s.") % {"marks": on}, *(_after(one) for one in done)]
    return together([frame(row, alt, said) for row, alt, said in zip(rows, alts, captions, strict=True)])


def _after(one: Worked) -> str:
    """Return the panel after a plan in words: what is left of its marks, and what the plan left."""
    left = [mark for mark in one.outcome["residual"] if mark["left"] > SHOWS]
    marks = "; ".join(_marks({"defects": left})) or _("nothing that counts")
    return _("The same panel after %(plan)s. Left on it: %(marks)s.") % {"plan": one.name.lower(), "marks": marks}


SHOWS = 0.05
"""Share of a family of marks beyond which it counts as left."""
