"""Rule books: the versions there are, the one in use, and the draft of the next."""

from typing import Any

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.db.models import QuerySet
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.http import require_POST

from assessments.access import get_author, get_scenario_authored, scenarios_authored
from assessments.authoring import put_in_use
from assessments.drafting import begin_draft
from assessments.errors import PublishingRefused
from assessments.models import Draft, RuleBook, Scenario
from assessments.rejudging import judged_otherwise
from assessments.views.rule_lines import Reads, lessons_by_code, rule_line


@login_required
def index(request: HttpRequest) -> HttpResponse:
    """List the scenarios with the rules that mark them."""
    get_author(request.user)
    drafts = {one.scenario_id: one for one in Draft.objects.open()}
    books = [
        {"scenario": one, "rules": len(one.rule_book.book.rules), "draft": drafts.get(one.pk)}
        for one in scenarios_authored()
    ]
    return render(request, "assessments/book_list.html", {"books": books})


@login_required
def detail(request: HttpRequest, code: str) -> HttpResponse:
    """Show the rules of a scenario: those in use, or an earlier version."""
    author = get_author(request.user)
    scenario = get_scenario_authored(code)
    versions = list(_versions(scenario))
    asked = request.GET.get("version", "")
    shown = next((one for one in versions if str(one.version) == asked), scenario.rule_book)
    reads = Reads.of(scenario, author.preferences)
    page = {
        "scenario": scenario,
        "book": shown,
        "rules": [rule_line(rule, reads) for rule in shown.book.rules],
        "lessons": lessons_by_code(),
        "versions": [_version(one, scenario) for one in versions],
        "in_use": shown.pk == scenario.rule_book_id,
        "draft": Draft.objects.open().filter(scenario=scenario).first(),
        "next": versions[0].version + 1,
        "otherwise": judged_otherwise(scenario.rule_book).count(),
    }
    return render(request, "assessments/book_detail.html", page)


@login_required
@require_POST
def begin(request: HttpRequest, code: str) -> HttpResponse:
    """Begin the next version, or go on with the draft that is open."""
    author = get_author(request.user)
    draft = begin_draft(get_scenario_authored(code), author, now=timezone.now())
    return redirect("draft-detail", draft.pk)


@login_required
@require_POST
def put_back(request: HttpRequest, code: str) -> HttpResponse:
    """Let another published version mark from now on."""
    author = get_author(request.user)
    scenario = get_scenario_authored(code)
    wanted = request.POST.get("version", "")
    book = next((one for one in _versions(scenario) if str(one.version) == wanted), None)
    try:
        if book is None:
            raise PublishingRefused(_("There is no such version. Choose one of the list."))
        put_in_use(book, author, now=timezone.now())
        messages.success(request, _("Version %(n)d marks from now on. What was judged stays.") % {"n": book.version})
    except PublishingRefused as refusal:
        messages.error(request, str(refusal))
    return redirect("book-detail", code)


def _versions(scenario: Scenario) -> QuerySet[RuleBook]:
    books = RuleBook.objects.filter(code=scenario.code, scenario_version=scenario.version).order_by("-version")
    return books.select_related("written_by", "reviewed_by")


def _version(book: RuleBook, scenario: Scenario) -> dict[str, Any]:
    return {"book": book, "in_use": book.pk == scenario.rule_book_id}
