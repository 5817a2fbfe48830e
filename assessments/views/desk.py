"""The desk: one rule is written here, checked as it is typed, tried, kept."""

from typing import Any
from uuid import UUID

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.http import Http404, HttpRequest, HttpResponse, QueryDict
from django.shortcuts import redirect, render
from django.utils.translation import gettext as _
from django.views.decorators.cache import never_cache
from django.views.decorators.http import require_POST

from assessments.access import get_author, get_draft
from assessments.drafting import keep_rule, keep_tried, mark_of, next_code, take_out
from assessments.errors import DraftRefused
from assessments.forms.rules import STEPS, AnyRuleForm, RuleForm, SharedRuleForm, one_line
from assessments.manuscript import read, with_row
from assessments.models import Draft
from assessments.rules import PhraseRefused, Rule, SharedRule, Step
from assessments.shipped import shared_book
from assessments.views.phrased import panel_of, put_into
from assessments.views.rule_lines import PartLine, Reads, names_of, proof_lines
from assessments.views.tried import OWN, answer_put, answers_offered, draw_shown, judged, own_fields, spec_of, trial_of
from courses.models import Person

NEW = "new"
"""The code of a rule that has none yet."""
PARTIAL = {"check": "_rule_checked.html", "phrase": "_phrase.html", "put": "_rule_put.html", "try": "_try.html"}


@login_required
@never_cache
def write(request: HttpRequest, draft_id: UUID) -> HttpResponse:
    """Write a new rule."""
    author = get_author(request.user)
    draft = get_draft(draft_id)
    return _desk(request, author, draft, "")


@login_required
@never_cache
def detail(request: HttpRequest, draft_id: UUID, code: str) -> HttpResponse:
    """Change a rule of a draft."""
    author = get_author(request.user)
    draft = get_draft(draft_id)
    if draft.row(code) is None:
        raise Http404
    return _desk(request, author, draft, code)


@login_required
@require_POST
def remove(request: HttpRequest, draft_id: UUID, code: str) -> HttpResponse:
    """Take a rule out of a draft."""
    author = get_author(request.user)
    draft = get_draft(draft_id)
    try:
        take_out(draft, code, author)
        messages.success(
            request, _("%(code)s is taken out. Version %(n)d keeps it.") % {"code": code, "n": draft.base.version}
        )
    except DraftRefused as refusal:
        messages.error(request, str(refusal))
    return redirect("draft-detail", draft.pk)


def _desk(request: HttpRequest, author: Person, draft: Draft, code: str) -> HttpResponse:
    if not draft.is_written:
        return redirect("draft-detail", draft.pk)
    data = request.POST if request.method == "POST" else QueryDict()
    act = data.get("act", "")
    form = form_of(draft, code, data if act in ("keep", "exemplar") else None, data)
    if act in ("keep", "exemplar") and form.is_valid() and _kept(request, author, draft, code, form, data):
        return redirect("draft-detail", draft.pk)
    page = page_of(author, draft, code, form, data)
    partial = PARTIAL.get(act) if getattr(request, "htmx", False) else None
    template = partial or "rule_desk.html"
    status = 422 if form.is_bound and form.errors else 200
    return render(request, f"assessments/{template}", page, status=status)


def _kept(request: HttpRequest, author: Person, draft: Draft, code: str, form: AnyRuleForm, data: QueryDict) -> bool:
    """Keep a rule and, if asked, the answer it was tried on; say whether that went through."""
    try:
        kept = code or next_code(draft)
        row, seen = form.row(kept), form.cleaned_data["seen"]
        if data.get("act") == "exemplar":
            put = answer_put(spec_of(draft, read(draft).text), data, author, draft)
            keep_tried(draft, row, author, seen=seen, name=data.get("exemplar", ""), put=put)
        else:
            keep_rule(draft, row, author, seen=seen)
    except DraftRefused as refusal:
        form.add_error(None, str(refusal))
        return False
    messages.success(request, _("%(code)s is kept.") % {"code": kept})
    return True


def form_of(draft: Draft, code: str, bound: QueryDict | None, typed: QueryDict) -> AnyRuleForm:
    """Return the form of a rule: bound to be kept, as it was typed so far, or as it stands."""
    row, shared = draft.row(code) if code else None, shared_in(draft, code)
    if bound is not None:
        return SharedRuleForm(shared, bound) if shared else RuleForm(bound)
    seen, lesson = mark_of(row), draft.lesson
    if typed:
        given = {name: typed.get(name, "") for name in typed}
        return SharedRuleForm(shared, initial=given) if shared else RuleForm(initial=given)
    if shared and row:
        return SharedRuleForm.of(shared, row, seen, lesson)
    return RuleForm.of(row or {}, seen, lesson)


def typed_rule(form: AnyRuleForm, code: str) -> Rule:
    """Return the rule as it is typed, however much is missing yet: enough to check and to try it."""

    def value(name: str) -> str:
        return one_line(str(form[name].value() or "")) if name in form.fields else ""

    shared = form.shared if isinstance(form, SharedRuleForm) else None
    way = value("way") or "whole"
    steps = tuple(
        Step(value(f"step_{n}"), _number(value(f"step_points_{n}"))) for n in range(STEPS) if value(f"step_{n}")
    )
    points = sum(step.points for step in steps) if way == "steps" else _number(value("points"))
    return Rule(
        code or NEW,
        value("sentence") or (shared.sentence if shared else "") or "–",
        value("severity") or "points",
        points,
        value("because") or "–",
        value("source") or "practice",
        test=shared.test if shared else (value("test") or None) if way == "whole" else None,
        when=value("when") or (shared.when if shared else None),
        steps=steps if way == "steps" else (),
        share=(value("share") or None) if way == "share" else None,
    )


def _number(typed: str) -> float:
    try:
        return max(float(typed), 0.0)
    except ValueError:
        return 1.0


def page_of(author: Person, draft: Draft, code: str, form: AnyRuleForm, data: QueryDict) -> dict[str, Any]:
    """Return what the desk shows: the rule, what is wrong with it, the phrases, the names, the trial."""
    reads = Reads.of(draft.scenario, author.preferences)
    refusal = None
    if data.get("act") == "put":
        try:
            into, text = put_into(reads, data)
            form.initial = {**form.initial, into: text}
            data = _emptied(data)
        except PhraseRefused as refused:
            refusal = refused
    rule = typed_rule(form, code)
    parts = {part.name: reads.part(part) for part in rule.parts}
    spec = spec_of(draft, read(draft).text)
    trial = trial_of(spec, data, author, draft)
    return {
        "draft": draft,
        "code": code,
        "form": form,
        "shared": getattr(form, "shared", None),
        "parts": parts,
        "fields": [
            {"field": form[name], "part": parts.get(name), "way": way}
            for name, way in (("test", "whole"), ("share", "share"), ("when", ""))
            if name in form.fields
        ],
        "steps": _steps(form, parts),
        "panel": panel_of(reads, data, refusal),
        "names": names_of(draft.scenario),
        "trial": trial,
        "offered": answers_offered(spec, author, draft, trial.chosen),
        "own": own_fields(spec, trial, author, data) if trial.chosen == OWN else [],
        "found": judged(rule, spec, trial, author) if rule.parts else None,
        "known": known_answers(draft, rule, bool(shared_in(draft, code))) if rule.parts else None,
        "drawn": draw_shown(spec, trial, author),
        "exemplar": data.get("exemplar", ""),
    }


def shared_in(draft: Draft, code: str) -> SharedRule | None:
    """Return the shared rule that stands under a code in a draft, if one does."""
    row = draft.row(code) if code else None
    return shared_book().rules.get(code) if row and "shared" in row else None


def known_answers(draft: Draft, rule: Rule, shared: bool) -> dict[str, Any] | None:
    """Return what the exemplars come to with a rule as it is typed; None while the draft can't be tried."""
    said = {key: value for key, value in rule.as_json().items() if value not in (None, [])}
    if rule.steps:
        del said["points"]
    if shared:
        said = {"shared": said.pop("code"), **{key: said[key] for key in ("severity", "points", "when") if key in said}}
    elif rule.code == NEW:
        said["code"] = next_code(draft)
    proof = with_row(draft, said).proof
    if proof is None:
        return None
    return {"proof": proof, "otherwise": proof_lines(proof), "idle": said.get("code") in proof.idle_rules}


def _emptied(data: QueryDict) -> QueryDict:
    """Return what was sent without the phrase that was put in."""
    rest = data.copy()
    for name in [name for name in rest if name == "phrase" or name.startswith("gap-")]:
        del rest[name]
    return rest


def _steps(form: AnyRuleForm, parts: dict[str, PartLine]) -> list[dict[str, Any]]:
    """Return the fields of each step with what was found in it; a step left empty has no part."""
    if not isinstance(form, RuleForm):
        return []
    place, lines = 0, []
    for test, points in form.steps:
        filled = bool(one_line(str(test.value() or "")))
        lines.append({"test": test, "points": points, "part": parts.get(f"steps[{place}]") if filled else None})
        place += filled
    return lines
