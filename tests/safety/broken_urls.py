"""Addresses of the site, and one that breaks."""

from django.http import HttpRequest, HttpResponse
from django.urls import path

from courses.server.urls import urlpatterns as ours


def breaks(request: HttpRequest) -> HttpResponse:
    """Break, with something in hand that nobody may see."""
    raise ZeroDivisionError("the-inside-of-the-server")


urlpatterns = [path("breaks/", breaks), *ours]
