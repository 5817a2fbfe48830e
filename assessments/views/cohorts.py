"""The cohorts one answers for, and the board of one."""

from django.contrib.auth.decorators import login_required
from django.db.models import Count, Q
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.cache import never_cache

from assessments.access import cohorts_for, get_cohort_for
from assessments.views.board import board_of
from courses.access import get_person


@login_required
@never_cache
def index(request: HttpRequest) -> HttpResponse:
    """List one's cohorts; where there is only one, go to its board."""
    reader = get_person(request.user)
    if not reader.memberships.staff().exists():
        raise Http404
    learning = Count("memberships", filter=Q(memberships__role="trainee"))
    cohorts = list(cohorts_for(reader).annotate(trainees=learning))
    if len(cohorts) == 1:
        return redirect("cohort-board", cohorts[0].pk)
    return render(request, "assessments/cohort_list.html", {"cohorts": cohorts})


@login_required
@never_cache
def board(request: HttpRequest, pk: int) -> HttpResponse:
    """Show who of a cohort waits, who is stuck, and how everybody stands."""
    reader = get_person(request.user)
    page = board_of(reader, get_cohort_for(reader, pk), timezone.now())
    return render(request, "assessments/cohort_board.html", page)
