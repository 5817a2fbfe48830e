"""The site's addresses and, beside them, pages that refuse and break on purpose."""

from allauth.core.ratelimit import respond_429
from django.core.exceptions import PermissionDenied, SuspiciousOperation
from django.http import HttpRequest, HttpResponse
from django.urls import path

from courses.server.urls import urlpatterns as site


def forbidden(request: HttpRequest) -> HttpResponse:
    """Refuse."""
    raise PermissionDenied


def unreadable(request: HttpRequest) -> HttpResponse:
    """Refuse what no page of ours sends."""
    raise SuspiciousOperation("This is broken on purpose.")


def too_often(request: HttpRequest) -> HttpResponse:
    """Refuse as the limits on sign-in do."""
    return respond_429(request)


def broken(request: HttpRequest) -> HttpResponse:
    """Break."""
    raise ZeroDivisionError("This page breaks on purpose.")


urlpatterns = [
    path("broken/400/", unreadable),
    path("broken/403/", forbidden),
    path("broken/429/", too_often),
    path("broken/500/", broken),
    *site,
]
