"""One rendered picture, by an address that tells nothing."""

from django.contrib.auth.decorators import login_required
from django.http import Http404, HttpRequest, HttpResponse
from django.utils.cache import get_conditional_response
from django.views.decorators.http import require_safe

from courses.access import get_person, get_picture_for
from courses.darkroom import DarkroomBusy
from courses.gallery import shown

FOR_EVER = "private, max-age=31536000, immutable"


@login_required
@require_safe
def picture(request: HttpRequest, code: str, number: int) -> HttpResponse:
    """Show the picture of a panel at one lamp place; while too many are being made, say when to ask again."""
    row = get_picture_for(get_person(request.user), code)
    try:
        made = shown(row, number)
    except DarkroomBusy as busy:
        later = HttpResponse(status=503, headers={"Retry-After": busy.again_in_s, "Cache-Control": "no-store"})
        later._has_been_logged = True  # type: ignore[attr-defined]  # a busy moment is no fault of the site
        return later
    if made is None:
        raise Http404
    tag = f'"{row.code}-{number}"'
    answer = HttpResponse(made.webp, content_type="image/webp", headers={"Cache-Control": FOR_EVER, "ETag": tag})
    return get_conditional_response(request, etag=tag, response=answer) or answer
