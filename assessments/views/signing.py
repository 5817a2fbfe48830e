"""Signing an element off, turning it down, withdrawing a signature: the words, the evidence, the proof."""

from typing import Any
from uuid import UUID

from django.contrib import messages
from django.contrib.auth.decorators import login_required
from django.forms import Form
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.translation import gettext as _
from django.views.decorators.cache import never_cache

from assessments import journey
from assessments.access import get_decision_for, get_element, get_trainee_for, permit_signing, permit_withdrawing
from assessments.competence import Deed
from assessments.errors import SignatureRefused
from assessments.forms.signing import SignForm, TurnDownForm, WithdrawForm, seal, unseal
from assessments.models import Decision
from assessments.views.deeds import sign_page, withdraw_page
from assessments.views.wording import change_words
from courses import proofs
from courses.access import get_person
from courses.models import Person


@login_required
@never_cache
def sign_off(request: HttpRequest, handle: UUID, element: str) -> HttpResponse:
    """Show what would be signed, beside its evidence; sign it."""
    signer, code = get_person(request.user), get_element(element)
    person = get_trainee_for(signer, handle)
    permit_signing(signer, person, code)
    form = SignForm(request.POST or None)
    try:
        if request.method == "POST" and form.is_valid():
            return _signed(request, signer, person, code, form)
    except proofs.ProofRefused as refusal:
        form.add_error("code", str(refusal))
    except SignatureRefused as refusal:
        changes = [change_words(one) for one in refusal.changes]
        return _sign_page(request, signer, person, code, SignForm(), 409, refusal=str(refusal), changes=changes)
    return _sign_page(request, signer, person, code, form, 422 if form.errors else 200)


def _signed(request: HttpRequest, signer: Person, person: Person, code: str, form: SignForm) -> HttpResponse:
    shown = unseal(form.cleaned_data["shown"])
    if shown is None or (shown.element, shown.person, shown.signer) != (code, str(person.handle), str(signer.handle)):
        raise SignatureRefused(_forged())
    journey.refuse_signature(signer, person, shown, now=timezone.now())
    proof = _proof(request, form.cleaned_data["code"])
    decision = journey.sign(signer, person, shown, proof, now=timezone.now())
    messages.success(request, _("Signed. It stands on the record of %(name)s.") % {"name": person.name})
    return redirect("decision-detail", decision.pk)


def _sign_page(
    request: HttpRequest, signer: Person, person: Person, code: str, form: Form, status: int, **more: Any
) -> HttpResponse:
    page = sign_page(signer, person, code, timezone.now())
    _carry(form, page["deed_itself"])
    page |= {"form": form, **_ways_to_prove(request, signer), **more}
    return render(request, "assessments/sign_off.html", page, status=status)


def _carry(form: Form, deed: Deed) -> None:
    """Let the form carry what is shown now; what it was sent with is no longer on the screen."""
    form.initial["shown"] = seal(deed)
    if form.is_bound:
        form.data = {**form.data.dict(), "shown": seal(deed), "code": ""}  # type: ignore[attr-defined]


def _forged() -> str:
    return _("This page carries words that are not ours. Nothing was written. Read it again.")


def _proof(request: HttpRequest, code: str) -> proofs.Proof:
    if code.strip() or not proofs.has_passkey(get_person(request.user)):
        return proofs.by_code(request, code, now=timezone.now())
    return proofs.by_passkey(request, now=timezone.now())


@login_required
@never_cache
def decline(request: HttpRequest, handle: UUID, element: str) -> HttpResponse:
    """Decline an element, with a reason."""
    return _turn_down(request, handle, element, Decision.Kind.DECLINED)


@login_required
@never_cache
def ask_more(request: HttpRequest, handle: UUID, element: str) -> HttpResponse:
    """Ask for more evidence, with a reason."""
    return _turn_down(request, handle, element, Decision.Kind.MORE_ASKED)


def _turn_down(request: HttpRequest, handle: UUID, element: str, kind: str) -> HttpResponse:
    signer, code = get_person(request.user), get_element(element)
    person = get_trainee_for(signer, handle)
    permit_signing(signer, person, code)
    form, refusal_words = TurnDownForm(request.POST or None), ""
    try:
        if request.method == "POST" and form.is_valid():
            return _turned_down(request, signer, person, form, kind)
    except SignatureRefused as refusal:
        refusal_words = str(refusal)
    page = sign_page(signer, person, code, timezone.now())
    _carry(form, page["deed_itself"])
    act = _("Decline") if kind == Decision.Kind.DECLINED else _("Ask for more")
    page |= {"form": form, "refusal": refusal_words, "act": act, "kind": kind}
    status = 422 if form.errors else 409 if refusal_words else 200
    return render(request, "assessments/turn_down.html", page, status=status)


def _turned_down(request: HttpRequest, signer: Person, person: Person, form: Form, kind: str) -> HttpResponse:
    shown = unseal(form.cleaned_data["shown"])
    if shown is None or (shown.person, shown.signer) != (str(person.handle), str(signer.handle)):
        raise SignatureRefused(_forged())
    reason = form.cleaned_data["reason"]
    decision = journey.turn_down(signer, person, shown, kind, reason=reason, now=timezone.now())
    messages.success(request, _("Kept, with your reason. %(name)s can read it.") % {"name": person.name})
    return redirect("decision-detail", decision.pk)


@login_required
@never_cache
def withdraw(request: HttpRequest, decision_id: UUID) -> HttpResponse:
    """Withdraw a signature, with a reason and a proof."""
    person = get_person(request.user)
    signature = get_decision_for(person, decision_id)
    permit_withdrawing(person, signature)
    form, refusal_words = WithdrawForm(request.POST or None), ""
    try:
        if request.method == "POST" and form.is_valid():
            return _withdrawn(request, signature, person, form)
    except proofs.ProofRefused as refusal:
        form.add_error("code", str(refusal))
    except SignatureRefused as refusal:
        refusal_words = str(refusal)
    page = {**withdraw_page(signature), **_ways_to_prove(request, person), "form": form, "refusal": refusal_words}
    status = 422 if form.errors else 409 if refusal_words else 200
    return render(request, "assessments/decision_withdraw.html", page, status=status)


def _ways_to_prove(request: HttpRequest, person: Person) -> dict[str, Any]:
    """Return what a page needs to ask for a code, a press of a passkey, or the setting up of either."""
    device, passkey = proofs.has_device(person), proofs.has_passkey(person)
    return {
        "setup_url": None if device or passkey else proofs.setup_url(request.path),
        "passkey_url": proofs.passkey_url(request.path) if passkey else None,
        "passkey_ready": passkey and proofs.passkey_is_fresh(request, now=timezone.now()),
    }


def _withdrawn(request: HttpRequest, signature: Decision, person: Person, form: Form) -> HttpResponse:
    proof = _proof(request, form.cleaned_data["code"])
    taken = journey.withdraw(signature, person, proof, reason=form.cleaned_data["reason"], now=timezone.now())
    messages.success(request, _("Withdrawn. The signature and your reason both stay on the record."))
    return redirect("decision-detail", taken.pk)
