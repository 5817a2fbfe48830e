"""The manager's pages about the school itself, its cohorts and its invitations."""

from collections.abc import Callable
from typing import TypeVar

from django import forms
from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.db.models import Count
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_POST

from courses.access import get_cohort, get_invitation_made, get_manager
from courses.actions import found_school, invite, keep_cohort, revoke_invitation
from courses.errors import Refused
from courses.forms.school import CohortForm, InvitationForm, SchoolForm
from courses.models import Cohort, Invitation, School

Row = TypeVar("Row")


def went_through(form: forms.BaseForm, act: Callable[[], Row], at: str | None = None) -> Row | None:
    """Return what `act` made of a form that is right, or None; what was refused is said in the form, `at` a field."""
    if not form.is_valid():
        return None
    try:
        return act()
    except Refused as refusal:
        form.add_error(at, str(refusal))
        return None


@login_required
def detail(request: HttpRequest) -> HttpResponse:
    """Show and keep what the school says of itself."""
    get_manager(request.user)
    form = SchoolForm(request.POST or None, instance=School.objects.here())
    if request.method == "POST" and went_through(form, lambda: found_school(form.cleaned_data)) is not None:
        messages.success(request, _("Kept."))
        return redirect("school-detail")
    return render(request, "courses/school_detail.html", {"form": form}, status=422 if form.errors else 200)


@login_required
def cohorts(request: HttpRequest) -> HttpResponse:
    """List the cohorts."""
    get_manager(request.user)
    rows = Cohort.objects.select_related("course").annotate(people=Count("memberships__person", distinct=True))
    return render(request, "courses/school_cohorts.html", {"cohorts": rows})


@login_required
def cohort_make(request: HttpRequest) -> HttpResponse:
    """Make a cohort."""
    get_manager(request.user)
    return _cohort_page(request, None)


@login_required
def cohort_change(request: HttpRequest, pk: int) -> HttpResponse:
    """Give a cohort another name, mode or course."""
    get_manager(request.user)
    return _cohort_page(request, get_cohort(pk))


def _cohort_page(request: HttpRequest, cohort: Cohort | None) -> HttpResponse:
    name = cohort.name if cohort else ""
    form = CohortForm(request.POST or None, instance=cohort)
    if (
        request.method == "POST"
        and went_through(form, lambda: keep_cohort(cohort, **form.cleaned_data), "name") is not None
    ):
        messages.success(request, _("Kept."))
        return redirect("school-cohorts")
    page = {"form": form, "cohort": name}
    return render(request, "courses/cohort_keep.html", page, status=422 if form.errors else 200)


@login_required
def invitations(request: HttpRequest) -> HttpResponse:
    """List the invitations that still lead in."""
    get_manager(request.user)
    rows = Invitation.objects.open_at(timezone.now()).select_related("cohort", "invited_by").order_by("expires_at")
    return render(request, "courses/invitation_list.html", {"invitations": rows})


@login_required
@never_cache
def invitation_make(request: HttpRequest) -> HttpResponse:
    """Make an invitation; its link stands in this one answer and nowhere else."""
    manager, now = get_manager(request.user), timezone.now()
    form = InvitationForm(request.POST or None)
    made = None
    if request.method == "POST":
        made = went_through(form, lambda: invite(**form.cleaned_data, by=manager, now=now), "email")
    if made:
        link = request.build_absolute_uri(reverse("invitation-accept", args=[made[1]]))
        return render(request, "courses/invitation_made.html", {"invitation": made[0], "link": link})
    return render(request, "courses/invitation_make.html", {"form": form}, status=422 if form.errors else 200)


@login_required
@require_POST
def invitation_end(request: HttpRequest, pk: int) -> HttpResponse:
    """End an invitation."""
    get_manager(request.user)
    try:
        revoke_invitation(get_invitation_made(pk), now=timezone.now())
        messages.success(request, _("The invitation is ended. Its link opens nothing any more."))
    except Refused as refusal:
        messages.error(request, str(refusal))
    return redirect("invitation-list")
