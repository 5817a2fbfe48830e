"""The sheet of parts: every part of the look in every state, for whoever builds pages and for the tests."""

from django.conf import settings
from django.contrib.auth.decorators import login_required
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render

from courses.access import get_person
from courses.views.samples import sheet_of_samples


@login_required
def parts(request: HttpRequest) -> HttpResponse:
    """Show the sheet to those who teach or manage, and to anyone while DEBUG is on."""
    if not settings.DEBUG and not get_person(request.user).memberships.staff().exists():
        raise Http404
    return render(request, "courses/parts.html", sheet_of_samples())
