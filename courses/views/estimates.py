"""Estimates: what a job will take, kept as an offer, and afterwards what it took."""

from dataclasses import dataclass

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse, QueryDict
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext as _

from courses.access import get_estimate_for, get_person
from courses.actions import keep_estimate, write_used
from courses.forms.estimates import EstimateForm, UsedForm, figure_said
from courses.models import Estimate, Person
from courses.shipped import constants
from courses.trade.estimate import furthest_out, out_by
from courses.trade.minutes import minutes_of
from courses.trade.quote import LEFT_OUT
from courses.trade.units import MINUS, Preferences, rounded


@dataclass(frozen=True, slots=True)
class Beside:
    """A figure that was estimated, what was used beside it, and how far that is off; blank where nobody counted."""

    name: str
    words: str
    estimated: str
    used: str = ""
    off: str = ""


@dataclass(frozen=True, slots=True)
class Compared:
    """Everything used beside everything estimated, and the words of the row furthest out."""

    rows: tuple[Beside, ...]
    furthest: str


@login_required
def index(request: HttpRequest) -> HttpResponse:
    """List one's own estimates."""
    rows = list(Estimate.objects.by(get_person(request.user)))
    return render(request, "courses/estimate_list.html", {"estimates": rows})


@login_required
def make(request: HttpRequest) -> HttpResponse:
    """Ask for a job; keep what it was worked to."""
    person = get_person(request.user)
    began, last = _began(person), Estimate.objects.by(person).closed().first()
    form = EstimateForm(person.preferences, _posted(request), began)
    quote = form.worked(minutes_of(constants())) if request.method == "POST" else None
    if quote is not None:
        row = keep_estimate(person, form.kept(quote), now=timezone.now())
        return redirect("estimate-detail", row.pk)
    page = {"form": form, "last": last, "compared": compared(last, person.preferences) if last else None}
    return render(request, "courses/estimate_make.html", page, status=422 if form.errors else 200)


@login_required
def detail(request: HttpRequest, pk: int) -> HttpResponse:
    """Show one estimate as an offer, with what it leaves out, and what was used."""
    person = get_person(request.user)
    row = get_estimate_for(person, pk)
    page = {
        "estimate": row,
        "quote": row.quote,
        "left_out": {
            name: [words for place, words in group.items() if place in row.left_out] for name, group in LEFT_OUT.items()
        },
        "compared": compared(row, person.preferences) if row.used_at else None,
    }
    return render(request, "courses/estimate_detail.html", page)


@login_required
def used(request: HttpRequest, pk: int) -> HttpResponse:
    """Write what was used beside what was estimated."""
    person = get_person(request.user)
    row = get_estimate_for(person, pk)
    form = UsedForm(row.quote, row.used, person.preferences, _posted(request))
    if request.method == "POST" and form.is_valid():
        write_used(row, form.cleaned_data, now=timezone.now())
        messages.success(request, _("Kept."))
        return redirect("estimate-detail", row.pk)
    page = {"estimate": row, "form": form}
    return render(request, "courses/estimate_used.html", page, status=422 if form.errors else 200)


def _posted(request: HttpRequest) -> QueryDict | None:
    """What was posted, an empty page among it, or None where nothing was."""
    return request.POST if request.method == "POST" else None


def compared(row: Estimate, prefs: Preferences) -> Compared:
    """Return an estimate with what was used beside it, in the reader's units."""
    rows, pairs = [], {}
    for name, (words, figure, unit) in row.quote.estimated().items():
        took = row.used.get(name)
        line = Beside(name, words, figure_said(figure, unit, prefs))
        if took is not None:
            pairs[name] = (figure, took)
            line = Beside(name, words, line.estimated, figure_said(took, unit, prefs), _off(figure, took))
        rows.append(line)
    worst = furthest_out(pairs)
    return Compared(tuple(rows), next((line.words for line in rows if line.name == worst), ""))


def _off(estimated: float, took: float) -> str:
    if not estimated:
        return ""
    by = rounded(out_by(estimated, took), 0)
    return f"{'+' if by > 0 else MINUS if by < 0 else ''}{abs(by):.0f} %"


def _began(person: Person) -> dict[str, object]:
    """Return the rates that an estimate begins with: one's own last ones, else the last of the staff."""
    last = Estimate.objects.by(person).first() or Estimate.objects.of_staff().first()
    if last is None:
        return {}
    rates = {name: value for name, value in last.asked.items() if name.startswith("rate_")}
    return {**rates, "currency": last.currency}
