"""What every page knows of its reader."""

from typing import Any

from django.http import HttpRequest
from django.utils.functional import SimpleLazyObject

from courses.models import Person, School
from courses.trade.units import Preferences


def reader(request: HttpRequest) -> dict[str, Any]:
    """Return the school, the lighting of the screen and the units of the reader."""
    person = getattr(request, "user", None)
    school = SimpleLazyObject(School.objects.here)
    if isinstance(person, Person):
        return {"school": school, "theme": person.theme, "prefs": person.preferences}
    return {"school": school, "theme": request.session.get("theme", "auto"), "prefs": Preferences.us()}
