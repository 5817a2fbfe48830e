"""The addresses of the site, with a bare view beside them that inserts one row: what the benches measure against."""

from uuid import UUID, uuid4

from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.urls import include, path
from django.utils import timezone

from assessments.models import Answer


@login_required
def bare(request: HttpRequest, attempt_id: UUID) -> HttpResponse:
    """Insert one row for whoever is signed in, and nothing else."""
    Answer.objects.create(attempt_id=attempt_id, task="bare", client_key=uuid4(), value=1, received_at=timezone.now())
    return HttpResponse("kept")


urlpatterns = [path("bare/<uuid:attempt_id>/", bare), path("", include("courses.server.urls"))]
