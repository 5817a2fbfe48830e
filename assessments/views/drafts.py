"""A draft whole: its rules, the known answers tried on it, and its way to review and out."""

from collections.abc import Callable
from typing import Any
from uuid import UUID

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_POST

from assessments import drafting
from assessments.access import get_author, get_draft
from assessments.errors import DraftRefused, PublishingRefused
from assessments.manuscript import Line, Manuscript, read
from assessments.models import Draft
from assessments.shipped import shared_book
from assessments.views.rule_lines import Reads, draft_line, lessons_by_code, proof_lines, state_words
from courses.models import Person


@login_required
@never_cache
def detail(request: HttpRequest, draft_id: UUID) -> HttpResponse:
    """Show a draft; a published one leads to its version."""
    author = get_author(request.user)
    draft = get_draft(draft_id)
    if draft.book:
        return redirect("book-detail", draft.scenario.code)
    return render(request, "assessments/draft_detail.html", page_of(draft, author))


def page_of(draft: Draft, author: Person) -> dict[str, Any]:
    """Return what the page of a draft shows."""
    found = read(draft)
    reads = Reads.of(draft.scenario, author.preferences)
    return {
        "draft": draft,
        "version": found.version,
        "state": state_words(found),
        "sound": found.sound,
        "ready": found.sound and found.changes,
        "rules": [draft_line(line, reads) for line in _in_order(found)],
        "gone": found.gone,
        "lessons": lessons_by_code(),
        "shared": _left(found),
        "mine": drafting.wrote(draft, author),
        **_tried(found),
    }


def _in_order(found: Manuscript) -> list[Line]:
    """Return the rules as the book has them; for whoever reviews, what changed comes first."""
    return sorted(found.lines, key=lambda line: not line.change) if not found.draft.is_written else list(found.lines)


def _left(found: Manuscript) -> list[Any]:
    """Return the shared rules that the draft doesn't hold."""
    held = {line.code for line in found.lines}
    return [rule for code, rule in shared_book().rules.items() if code not in held]


def _tried(found: Manuscript) -> dict[str, Any]:
    proof = found.checked.proof
    if proof is None:
        return {"proof": None}
    own = {one["name"] for one in found.draft.exemplars}
    names = {one.name for one in found.draft.scenario.spec.exemplars} | own
    return {
        "proof": proof,
        "known": len(names),
        "deviations": [{**line, "settles": line["name"] in names} for line in proof_lines(proof)],
        "idle": proof.idle_rules,
        "own": found.draft.exemplars,
    }


def _changed(request: HttpRequest, draft_id: UUID, act: Callable[[Draft, Person], str]) -> HttpResponse:
    """Do `act` and say what it did, or why not; the draft is shown again."""
    author = get_author(request.user)
    draft = get_draft(draft_id)
    try:
        messages.success(request, act(draft, author))
    except (DraftRefused, PublishingRefused) as refusal:
        messages.error(request, str(refusal))
    return redirect("draft-detail", draft.pk)


@login_required
@require_POST
def share(request: HttpRequest, draft_id: UUID) -> HttpResponse:
    """Bring a shared rule into a draft; what it weighs here is set on its own page."""

    def bring(draft: Draft, author: Person) -> str:
        code = request.POST.get("code", "")
        if code not in shared_book().rules:
            raise DraftRefused(_("There is no shared rule %(code)s. Choose one of the list.") % {"code": code[:8]})
        drafting.keep_rule(draft, {"shared": code, "severity": "points", "points": 1}, author, seen="")
        return _("%(code)s is in. Open it to say what it weighs here.") % {"code": code}

    return _changed(request, draft_id, bring)


@login_required
@require_POST
def settle(request: HttpRequest, draft_id: UUID) -> HttpResponse:
    """Say that an exemplar is right as it came out, or take back what the draft says of it."""
    name = request.POST.get("name", "")

    def settled(draft: Draft, author: Person) -> str:
        if request.POST.get("act") == "drop":
            drafting.drop_exemplar(draft, name, author)
            return _("“%(name)s” is as before.") % {"name": name}
        drafting.keep_as_it_came(draft, name, author)
        return _("“%(name)s” is right as it comes out now. Whoever reviews sees that.") % {"name": name}

    return _changed(request, draft_id, settled)


@login_required
@require_POST
def send(request: HttpRequest, draft_id: UUID) -> HttpResponse:
    """Send a draft to review."""

    def sent(draft: Draft, author: Person) -> str:
        drafting.send_to_review(draft, author, now=timezone.now())
        return _("It is in review. Somebody who wrote nothing in it publishes it.")

    return _changed(request, draft_id, sent)


@login_required
@require_POST
def give_back(request: HttpRequest, draft_id: UUID) -> HttpResponse:
    """Give a draft back to its writers, or take one's own back."""

    def given(draft: Draft, author: Person) -> str:
        drafting.give_back(draft, author, request.POST.get("remark", ""))
        return _("It can be written on again.")

    return _changed(request, draft_id, given)


@login_required
@require_POST
def publish(request: HttpRequest, draft_id: UUID) -> HttpResponse:
    """Publish a reviewed draft."""

    def published(draft: Draft, author: Person) -> str:
        book = drafting.publish_draft(draft, author, now=timezone.now())
        return _("Version %(n)d marks from now on. What was judged stays.") % {"n": book.version}

    return _changed(request, draft_id, published)


@login_required
@require_POST
def throw_away(request: HttpRequest, draft_id: UUID) -> HttpResponse:
    """Throw a draft away."""
    get_author(request.user)
    draft = get_draft(draft_id)
    try:
        drafting.throw_away(draft)
        messages.success(
            request, _("The draft is thrown away. Version %(n)d marks as before.") % {"n": draft.base.version}
        )
    except DraftRefused as refusal:
        messages.error(request, str(refusal))
    return redirect("book-detail", draft.scenario.code)
