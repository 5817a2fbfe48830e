"""The page speaks the reader's language and keeps the reader's clock."""

from collections.abc import Callable
from zoneinfo import ZoneInfo, available_timezones

from django.http import HttpRequest, HttpResponse
from django.utils import timezone, translation

from courses.models import Person, School

Answer = Callable[[HttpRequest], HttpResponse]


def reader_middleware(answer: Answer) -> Answer:
    """Return `answer` with language and time zone set for the reader of each request."""

    def middleware(request: HttpRequest) -> HttpResponse:
        person = request.user
        if not isinstance(person, Person):
            return answer(request)
        translation.activate(person.language)
        request.LANGUAGE_CODE = translation.get_language() or "en-us"
        with timezone.override(zone_of(person)):
            return answer(request)

    return middleware


def zone_of(person: Person) -> ZoneInfo:
    """Return the clock of `person`: their own, else the school's, else UTC."""
    school = None if person.zone else School.objects.here()
    name = person.zone or (school.zone if school else "UTC")
    return ZoneInfo(name if name in available_timezones() else "UTC")
