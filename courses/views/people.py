"""Coming in by invitation, and one's own settings."""

from django.contrib import messages
from django.contrib.auth import login
from django.contrib.auth.decorators import login_required
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext as _

from courses.access import get_invitation, get_person
from courses.actions import accept, keep_settings, units
from courses.errors import InvitationRefused
from courses.forms.people import ComeInForm, SettingsForm
from courses.models import Invitation, School

BACKEND = "allauth.account.auth_backends.AuthenticationBackend"


def come_in(request: HttpRequest, token: str) -> HttpResponse:
    """Show an invitation; take it up."""
    try:
        invitation = get_invitation(token, timezone.now())
    except Http404:
        return render(request, "courses/invitation_gone.html", status=410)
    school = School.objects.here()
    units_here = "metric" if school and school.metric else "us"
    form = ComeInForm(invitation, request.POST or None, initial={"units": units_here})
    if request.method == "POST" and form.is_valid():
        return _taken_up(request, invitation, form)
    page = {"invitation": invitation, "form": form}
    return render(request, "courses/invitation_accept.html", page, status=422 if form.errors else 200)


def _taken_up(request: HttpRequest, invitation: Invitation, form: ComeInForm) -> HttpResponse:
    given = form.cleaned_data
    try:
        person = accept(
            invitation,
            email=given["email"],
            name=given["name"],
            password=given["password"],
            metric=given["units"] == "metric",
            now=timezone.now(),
        )
    except InvitationRefused as refusal:
        return render(request, "courses/invitation_gone.html", {"why": str(refusal)}, status=410)
    login(request, person, backend=BACKEND)
    return redirect("home")


@login_required
def settings(request: HttpRequest) -> HttpResponse:
    """Show and keep how a person likes to read."""
    person = get_person(request.user)
    if request.method == "POST" and request.POST.get("all") in ("us", "metric"):
        keep_settings(person, units(metric=request.POST["all"] == "metric"))
        return redirect("settings")
    form = SettingsForm(request.POST or None, instance=person)
    if request.method == "POST" and form.is_valid():
        keep_settings(person, form.chosen())
        messages.success(request, _("Kept."))
        return redirect("settings")
    page = {"form": form, "person": person}
    return render(request, "courses/settings.html", page, status=422 if form.errors else 200)
