"""Calculators: one page for each sum, worked out with and without script."""

from collections.abc import Mapping
from dataclasses import dataclass

from django.contrib.auth.decorators import login_required
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.vary import vary_on_headers

from courses.access import get_person
from courses.forms.sums import SumForm, typed
from courses.shipped import sources
from courses.trade.sources import MARKS, Source
from courses.trade.sums import SUMS, ShownLine, ShownResult, Sum, sum_named
from courses.trade.units import Preferences

FIRST = "dew_margin"


@dataclass(frozen=True, slots=True)
class Calculator:
    """A sum on a page: its form and, once it was asked, what it gave."""

    sum: Sum
    form: SumForm
    prefix: str
    source: Source
    result: ShownResult | None = None

    @property
    def url(self) -> str:
        """Return the address of its own page."""
        return reverse("sum-detail", args=[self.sum.name])

    @property
    def lines(self) -> tuple[ShownLine, ...]:
        """Return the figures it gave, the one asked for first."""
        return (self.result.output, *self.result.also) if self.result else ()

    @property
    def mark(self) -> str:
        """Return how its formula is known, in words."""
        return MARKS[self.sum.mark]


def calculator(name: str, prefs: Preferences, data: Mapping[str, str] | None = None, prefix: str = "") -> Calculator:
    """Return the calculator of a sum, worked out where `data` is given and good."""
    asked = sum_named(name)
    form = SumForm(asked, prefs, data, prefix)
    result = form.result() if data is not None else None
    return Calculator(asked, form, prefix or name, sources()[asked.source], result.shown(prefs) if result else None)


def opened_with(name: str, given: Mapping[str, str], prefs: Preferences) -> Calculator:
    """Return the calculator of a sum as a lesson opens it: `given` in base units, the rest by default, worked out."""
    inputs = sum_named(name).inputs
    values = {
        wanted.name: wanted.read(given[wanted.name]) if wanted.name in given else wanted.default for wanted in inputs
    }
    data = {one.name: text for one in inputs if (text := typed(one, values[one.name], prefs))}
    return calculator(name, prefs, data if given else None)


@login_required
def index(request: HttpRequest) -> HttpResponse:
    """Show the calculator of the day's first question, ready to use, and list the others."""
    others = [asked for asked in SUMS.values() if asked.name != FIRST]
    page = {"calc": calculator(FIRST, get_person(request.user).preferences), "others": others}
    return render(request, "courses/sum_list.html", page)


@login_required
@vary_on_headers("HX-Request")
def detail(request: HttpRequest, name: str) -> HttpResponse:
    """Show one calculator; with inputs in the address, work it out."""
    if name not in SUMS:
        raise Http404
    asked = request.GET if any(one.name in request.GET for one in SUMS[name].inputs) else None
    calc = calculator(name, get_person(request.user).preferences, asked)
    template = "courses/_sum_read.html" if getattr(request, "htmx", False) else "courses/sum_detail.html"
    return render(request, template, {"calc": calc})
