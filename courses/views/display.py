"""How the screen is lit: asked at the foot of every page."""

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.utils.http import url_has_allowed_host_and_scheme
from django.views.decorators.http import require_POST

from courses.actions import keep_settings
from courses.models import Person


@require_POST
def choose(request: HttpRequest) -> HttpResponse:
    """Keep the lighting chosen and go back to the page it was chosen on."""
    theme = request.POST.get("theme", "")
    if theme not in Person.Theme.values:
        return HttpResponse(status=400)
    if isinstance(request.user, Person):
        keep_settings(request.user, {"theme": theme})
    else:
        request.session["theme"] = theme
    back = request.POST.get("next", "")
    safe = url_has_allowed_host_and_scheme(back, allowed_hosts={request.get_host()}, require_https=request.is_secure())
    return redirect(back if safe else "home")
