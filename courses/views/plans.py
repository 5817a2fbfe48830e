"""Try a plan: any plan on any panel that is drawn or written down, worked on the surface of the model."""

from dataclasses import replace

from allauth.core import ratelimit
from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse, HttpResponseRedirect, QueryDict
from django.shortcuts import render
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy as lazy
from django.views.decorators.http import require_http_methods

from courses.access import get_person
from courses.forms.tried import Trial, TrialForm, link_of
from courses.gallery import hang_tried
from courses.pictures.plan_scenes import LAMPS
from courses.shipped import constants
from courses.trade.surface import simulate
from courses.trade.units import Preferences
from courses.views.plan_page import page_of, sheets
from courses.views.worked import Reader, Worked, worked

TOO_MANY = lazy("You asked for pictures six times within a minute. Wait a moment, then ask again.")


@login_required
@require_http_methods(["GET", "HEAD", "POST"])
def try_plan(request: HttpRequest) -> HttpResponse:
    """Show a panel and what a plan does to it; what is sent asks for the panel's pictures before and after."""
    person = get_person(request.user)
    prefs, (given, opened) = person.preferences, link_of(request.GET)
    form = TrialForm(given, prefs)
    done = tried(form, prefs) if form.is_valid() and not opened else []
    if request.method == "POST" and done and form.trial:
        trial = lit(form.trial, request.POST.get("light", ""))
        if not ratelimit.consume(request, action="plan_pictures", user=person):
            return render(request, "courses/plan_try.html", page_of(form, done, prefs, limit=TOO_MANY), status=429)
        hang_tried(sheets(trial, done))
        return HttpResponseRedirect(trial.query())
    if not opened and (address := rewritten(request, form)):
        return HttpResponseRedirect(address)
    return render(request, "courses/plan_try.html", page_of(form, done, prefs, opened=opened))


def rewritten(request: HttpRequest, form: TrialForm) -> str:
    """Return the link as it is written where the page was asked for otherwise, or nothing."""
    if request.method == "POST" or not request.GET or form.trial is None:
        return ""
    query = form.trial.query()
    return "" if QueryDict(query[1:]) == request.GET else query


def lit(trial: Trial, light: str) -> Trial:
    """Return a trial in another light, or as it is where there is no such light."""
    return replace(trial, light=light) if light in LAMPS else trial


def tried(form: TrialForm, prefs: Preferences) -> list[Worked]:
    """Return the plan of a link that holds, worked, and the one beside it; nothing where no plan was given."""
    if form.trial is None or form.trial.plan is None:
        return []
    trial, reader = form.trial, Reader(prefs, constants(), form.trial.beside is not None)
    plans = [("this", _("This plan"), trial.plan), ("beside", _("The plan beside it"), trial.beside)]
    found = []
    for key, name, tokens in plans:
        if tokens is not None:
            steps = trial.steps(tokens)
            found.append(worked(key, name, steps, simulate(trial.surface, steps, constants()), reader))
    return found
