"""Look-alikes: any two kinds side by side under the same lamp, and what tells them apart."""

from dataclasses import dataclass

from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.utils.text import capfirst
from django.utils.translation import gettext as _
from django.views.decorators.http import require_safe

from courses.forms.lookalikes import LookAlikesForm
from courses.gallery import Frame, frame, lookalike_sheet, together
from courses.pictures.lookalikes import CLEAN
from courses.shipped import catalogue
from courses.trade.defects import Kind

AT_FIRST = {"a": "swirl", "b": "hologram", "colour": "dark", "light": "point"}


@dataclass(frozen=True, slots=True)
class Told:
    """A kind beside another: its name, what is seen of it in this light, and what to do next to be sure."""

    called: str
    lines: tuple[str, str]


def told(code: str, light: str) -> Told:
    """Return what tells a kind, or the clean panel, from others in a light."""
    if code == CLEAN:
        return Told(_("Clean panel"), _clean(light))
    kind = catalogue().kind(code)
    second = (
        _("When the lamp moves: %(seen)s.") % {"seen": kind.moved} if light == "point" else _shown_best(kind, light)
    )
    return Told(capfirst(kind.called), (f"{capfirst(kind.seen[light])}.", second))


def _clean(light: str) -> tuple[str, str]:
    all_three = _("A panel is clean when all three lights say so.")
    return {
        "point": (_("The lamp’s image is sharp."), _("When the lamp moves: its image moves, and nothing else.")),
        "raking": (_("Smooth, without relief."), all_three),
        "diffuse": (_("The colour is even, reflections are sharp."), all_three),
    }[light]


def _shown_best(kind: Kind, light: str) -> str:
    if light == kind.best:
        return _("This light shows it best.")
    best = {
        "point": _("Best seen in: one lamp, square on."),
        "raking": _("Best seen in: one lamp, low from the side."),
        "diffuse": _("Best seen in: even light."),
    }[kind.best]
    return _("This light hides it. %(best)s") % {"best": best} if light in kind.hidden else best


def beside(kinds: list[str], shade: str, light: str, both: list[Told]) -> Frame:
    """Return the panels of these kinds under one lamp, each with what is seen of it as its words."""
    rows = [lookalike_sheet(kind, shade, light) for kind in kinds]
    return together([frame(row, one.lines[0], one.called) for row, one in zip(rows, both, strict=True)])


@login_required
@require_safe
def look_alikes(request: HttpRequest) -> HttpResponse:
    """Show two panels side by side, and the form that chooses them."""
    form = LookAlikesForm(request.GET if "a" in request.GET else AT_FIRST)
    if not form.is_valid():
        return render(request, "courses/look_alikes.html", {"form": form})
    chosen = form.cleaned_data
    kinds = [chosen["a"], chosen["b"]]
    both = [told(kind, chosen["light"]) for kind in kinds]
    shown = beside(kinds, chosen["colour"], chosen["light"], both)
    return render(request, "courses/look_alikes.html", {"form": form, "frame": shown, "both": both})
