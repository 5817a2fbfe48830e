"""The record of a person, and one decision on it."""

from uuid import UUID

from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.utils import timezone
from django.views.decorators.cache import never_cache

from assessments.access import get_decision_for, get_own_record, get_trainee_for
from assessments.views.deeds import decision_page
from assessments.views.recorded import record_page
from courses.access import get_person


@login_required
@never_cache
def own(request: HttpRequest) -> HttpResponse:
    """Show one's own record."""
    person = get_own_record(get_person(request.user))
    return render(request, "assessments/record.html", record_page(person, person, timezone.now(), whole=_all(request)))


@login_required
@never_cache
def detail(request: HttpRequest, handle: UUID) -> HttpResponse:
    """Show the record of a trainee to those who may see it."""
    reader = get_person(request.user)
    person = get_trainee_for(reader, handle)
    page = record_page(reader, person, timezone.now(), whole=_all(request))
    return render(request, "assessments/record.html", page)


@login_required
@never_cache
def decision(request: HttpRequest, decision_id: UUID) -> HttpResponse:
    """Show what was decided: the words, what they stood on, and whether it was withdrawn."""
    reader = get_person(request.user)
    page = decision_page(reader, get_decision_for(reader, decision_id))
    return render(request, "assessments/decision_detail.html", page)


def _all(request: HttpRequest) -> bool:
    return bool(request.GET.get("all"))
