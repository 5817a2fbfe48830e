"""What every page knows of its reader."""

from typing import Any

from django.http import HttpRequest
from django.utils.functional import SimpleLazyObject

from courses.models import Person, School
from courses.trade.units import Preferences


def reader(request: HttpRequest) -> dict[str, Any]:
    """Return the school, and of the reader the lighting of the screen, the units and the roles, asked for once."""
    person = getattr(request, "user", None)
    school = SimpleLazyObject(School.objects.here)
    if isinstance(person, Person):
        roles = SimpleLazyObject(lambda: frozenset(person.memberships.values_list("role", flat=True)))
        return {"school": school, "theme": person.theme, "prefs": person.preferences, "roles": roles}
    light = request.session.get("theme", "auto")
    return {"school": school, "theme": light, "prefs": Preferences.us(), "roles": frozenset()}
