"""One attempt: opened, answered, handed in, judged."""

from urllib.parse import urlencode
from uuid import UUID

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse, HttpResponseBadRequest, JsonResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_POST

from assessments import journey
from assessments.access import get_attempt_for, get_scenario_for, get_verdict_for
from assessments.answers.errors import AnswerRefused as Unreadable
from assessments.answers.errors import UnknownOption
from assessments.errors import AnswerRefused, AttemptRefused
from assessments.forms.answers import Envelope, opened_by, read_envelope
from assessments.models import Attempt
from assessments.views.judged import verdict_of
from assessments.views.paper import page_of
from courses.access import get_person
from courses.templatetags.look import to_the_second
from courses.trade.units import Preferences


@login_required
@require_POST
def begin(request: HttpRequest, code: str) -> HttpResponse:
    """Open an attempt, or go back to the one that is open."""
    person = get_person(request.user)
    scenario = get_scenario_for(person, code)
    mode = request.POST.get("mode", "")
    if mode not in Attempt.Mode.values:
        return HttpResponseBadRequest(_("Say whether you practise or sit the paper."))
    return redirect("attempt-detail", journey.open_attempt(person, scenario, mode, now=timezone.now()).pk)


@login_required
@never_cache
def detail(request: HttpRequest, attempt_id: UUID) -> HttpResponse:
    """Show an open attempt; once it is closed, go to its verdict."""
    person = get_person(request.user)
    attempt = journey.close_if_due(get_attempt_for(person, attempt_id), now=timezone.now())
    if not attempt.is_open:
        return redirect("attempt-verdict" if attempt.outcome else "home", *([attempt.pk] if attempt.outcome else []))
    task, _colon, what = request.GET.get("open", "").partition(":")
    return render(
        request, "assessments/attempt_detail.html", page_of(attempt, person.preferences, **{task: {"opened": what}})
    )


@login_required
@never_cache
@require_POST
def answer(request: HttpRequest, attempt_id: UUID) -> HttpResponse:
    """Keep one answer, and say what became of it: to a script in JSON, to a plain page by the page."""
    person = get_person(request.user)
    attempt = get_attempt_for(person, attempt_id)
    opened = opened_by(request.POST, attempt.scenario.spec)
    if opened:
        return _opening(attempt, opened)
    envelope = read_envelope(request.POST, attempt.scenario.spec)
    if envelope is None:
        return _refused(request, _("This page sent something it doesn't hold. Load it again."))
    try:
        saved = journey.save_answer(attempt, envelope.opened(person.preferences), now=timezone.now())
    except UnknownOption as refusal:
        return _refused(request, refusal.sentence)
    except Unreadable as refusal:
        return _mend(request, attempt, envelope, refusal.sentence, person.preferences)
    except AnswerRefused as refusal:
        return _mend(request, attempt, envelope, str(refusal), person.preferences)
    return _acknowledged(request, attempt, saved)


@login_required
@require_POST
def describe(request: HttpRequest, attempt_id: UUID) -> HttpResponse:
    """Let the pictures of an attempt be read in words; its record says so."""
    attempt = get_attempt_for(get_person(request.user), attempt_id)
    try:
        journey.describe(attempt)
    except AttemptRefused as refusal:
        messages.error(request, str(refusal))
    return redirect("attempt-detail", attempt.pk)


@login_required
@require_POST
def hand_in(request: HttpRequest, attempt_id: UUID) -> HttpResponse:
    """Close an attempt and mark it; the verdict follows."""
    attempt = journey.hand_in(get_attempt_for(get_person(request.user), attempt_id), now=timezone.now())
    return redirect("attempt-verdict", attempt.pk) if attempt.outcome else redirect("home")


@login_required
@require_POST
def put_away(request: HttpRequest, attempt_id: UUID) -> HttpResponse:
    """Put an open practice attempt away and draw new facts."""
    person = get_person(request.user)
    attempt = get_attempt_for(person, attempt_id)
    try:
        journey.put_away(attempt, now=timezone.now())
    except AttemptRefused as refusal:
        messages.error(request, str(refusal))
        return redirect("attempt-detail", attempt.pk)
    scenario = get_scenario_for(person, attempt.scenario_code)
    fresh = journey.open_attempt(person, scenario, Attempt.Mode.PRACTICE, now=timezone.now())
    return redirect("attempt-detail", fresh.pk)


@login_required
@never_cache
def verdict(request: HttpRequest, attempt_id: UUID) -> HttpResponse:
    """Show how an attempt came out and why; while it is open there is nothing to show."""
    person = get_person(request.user)
    attempt = journey.close_if_due(get_verdict_for(person, attempt_id), now=timezone.now())
    if not attempt.outcome:
        return redirect("attempt-detail" if attempt.is_open else "home", *([attempt.pk] if attempt.is_open else []))
    shown = verdict_of(attempt, person.preferences, request.GET.get("judgement", ""))
    return render(request, "assessments/attempt_verdict.html", {**shown, "mine": attempt.person_id == person.pk})


def _opening(attempt: Attempt, opened: str) -> HttpResponse:
    task, _colon, _what = opened.partition(":")
    query = urlencode({"open": opened})
    return redirect(f"{reverse('attempt-detail', args=[attempt.pk])}?{query}#task-{task}")


def _wants_json(request: HttpRequest) -> bool:
    return request.headers.get("Accept", "").startswith("application/json")


def _refused(request: HttpRequest, sentence: str) -> HttpResponse:
    if _wants_json(request):
        return JsonResponse({"error": sentence}, status=400)
    return HttpResponseBadRequest(sentence, content_type="text/plain; charset=utf-8")


def _mend(
    request: HttpRequest, attempt: Attempt, envelope: Envelope, sentence: str, prefs: Preferences
) -> HttpResponse:
    if _wants_json(request):
        return JsonResponse({"error": sentence}, status=422)
    state = {envelope.task.id: {"error": sentence, "value": "".join(envelope.values), "sent": envelope.values}}
    return render(request, "assessments/attempt_detail.html", page_of(attempt, prefs, **state), status=422)


def _acknowledged(request: HttpRequest, attempt: Attempt, saved: journey.Saved) -> HttpResponse:
    page = reverse("attempt-detail", args=[attempt.pk]) + f"#task-{saved.answer.task}"
    if saved.fate == "late":
        late = reverse("attempt-verdict", args=[attempt.pk])
        return JsonResponse({"late": True, "page": late}, status=410) if _wants_json(request) else redirect(late)
    if saved.fate == "conflict":
        return _both(request, attempt, saved, page)
    if not _wants_json(request):
        return redirect(page)
    kept = {
        "sequence": saved.counts.sequence if saved.counts else 0,
        "answered": saved.answer.value is not None,
        "words": _("Saved %(time)s") % {"time": to_the_second(saved.answer.received_at)},
    }
    return JsonResponse(kept)


def _both(request: HttpRequest, attempt: Attempt, saved: journey.Saved, page: str) -> HttpResponse:
    if not _wants_json(request):
        prefs = get_person(request.user).preferences
        return render(request, "assessments/attempt_detail.html", page_of(attempt, prefs), status=409)
    counts = saved.counts
    both = {
        "yours": saved.answer.value,
        "counts": counts.value if counts else None,
        "sequence": counts.sequence if counts else 0,
        "page": page,
    }
    return JsonResponse(both, status=409)
