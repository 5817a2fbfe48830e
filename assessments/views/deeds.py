"""What is signed, in words, and the pages on which it is signed, turned down, shown and withdrawn."""

from datetime import datetime
from typing import Any

from django.urls import reverse
from django.utils.html import format_html
from django.utils.safestring import SafeString
from django.utils.translation import gettext as _
from django.utils.translation import gettext_lazy as lazy

from assessments.competence import Deed
from assessments.errors import SignatureRefused
from assessments.models import Decision
from assessments.record import deed_for, gathered, record_of
from assessments.shipped import framework
from assessments.signers import cohorts_of, teaches, withdrawer_of
from assessments.views.lines import ask_line, evidence_lines, reason_of
from courses.models import Person
from courses.templatetags.look import day

PROOFS = {"totp": lazy("a code from their device"), "webauthn": lazy("their passkey")}
LOOKS = {"signed": "signed", "declined": "miss", "more_asked": "open", "withdrawn": "lapsed"}


def day_of(moment: datetime) -> str:
    """Return month, day and year: “April 14, 2026”."""
    return f"{day(moment)}, {moment.year}"


def deed_words(deed: Deed, signer: Person, person: Person, at: datetime, until: datetime | None) -> SafeString:
    """Return the sentence that is signed."""
    element = framework().element(deed.element)
    return format_html(
        _(
            "I, <b>{signer}</b>, have examined the evidence listed here and judge <b>{person}</b> competent in "
            "<b>{code} {title}</b>, requirement version {version}, on {day}, until {until}."
        ),
        signer=signer.name,
        person=person.name,
        code=element.code,
        title=element.title,
        version=deed.requirement_version,
        day=day_of(at),
        until=day_of(until or framework().requirement(deed.element).until(at)),
    )


def fingerprint(digest: str) -> str:
    """Return the beginning of a digest in groups of four."""
    return " ".join(digest[at : at + 4] for at in range(0, 16, 4))


def element_words(code: str) -> dict[str, str]:
    """Return code, title and unit of an element."""
    element, unit = framework().element(code), framework().unit_of(code)
    return {"code": code, "title": element.title, "unit": unit.title}


def taught_words(signer: Person, person: Person, code: str) -> str:
    """Return what of this the signer taught this trainee."""
    cohorts, unit = cohorts_of(person), framework().unit_of(code)
    mine = any(teaches(one, cohorts, code) for one in signer.memberships.all())
    return unit.title if mine else _("none of this")


def back_to(person: Person) -> dict[str, str]:
    """Return the way back to the record of a person."""
    return {"url": reverse("record-detail", args=[person.handle]), "words": person.name}


def sign_page(signer: Person, person: Person, code: str, at: datetime) -> dict[str, Any]:
    """Return what the page to sign shows; `deed_itself` is what its form carries."""
    record = record_of(person)
    standing = record.standing(code, at, gathered())
    deed = deed_for(record, code, signer, at)
    return {
        "person": person,
        "element": element_words(code),
        "back": back_to(person),
        "criteria": framework().element(code).criteria,
        "asks": [ask_line(state, standing, record) for state in standing.asks],
        "others": evidence_lines(record, [one for one, _outcome in deed.evidence if one not in deed.counted]),
        "standing": standing.code,
        "deed_itself": deed,
        "deed": {
            "words": deed_words(deed, signer, person, at, None),
            "count": len(deed.evidence),
            "fingerprint": fingerprint(deed.digest()),
            "taught": taught_words(signer, person, code),
        },
        "decline_url": reverse("element-decline", args=[person.handle, code]),
        "ask_url": reverse("element-ask", args=[person.handle, code]),
    }


def decision_page(reader: Person, decision: Decision) -> dict[str, Any]:
    """Return what the page of a decision shows."""
    record = record_of(decision.person)
    deed = Deed.of(decision.deed)
    taken = next((one for one in record.decisions if one.withdraws_id == decision.pk), None)
    signed = decision.withdraws or decision
    return {
        "decision": {
            "kind": decision.kind,
            "kind_words": decision.get_kind_display(),
            "symbol": LOOKS[decision.kind],
            "by": decision.by.name,
            "role": decision.role,
            "when": decision.at,
            "until": decision.until,
            "proof_words": PROOFS.get(decision.proof, ""),
            "digest": decision.digest,
            "reason": reason_of(decision),
            "withdraw_url": _withdraw_url(reader, decision) if taken is None else None,
        },
        "person": decision.person,
        "mine": reader.pk == decision.person_id,
        "element": element_words(decision.element),
        "back": back_to(decision.person),
        "deed_words": deed_words(deed, signed.by, decision.person, signed.at, signed.until),
        "evidence": evidence_lines(record, [one for one, _outcome in deed.evidence]),
        "withdrawn": _taken(taken) if taken else None,
    }


def _taken(row: Decision) -> dict[str, Any]:
    url = reverse("decision-detail", args=[row.pk])
    return {"by": row.by.name, "when": row.at, "reason": reason_of(row), "url": url}


def _withdraw_url(reader: Person, decision: Decision) -> str | None:
    if decision.kind != Decision.Kind.SIGNED:
        return None
    try:
        withdrawer_of(reader, decision)
    except SignatureRefused:
        return None
    return reverse("decision-withdraw", args=[decision.pk])


def withdraw_page(signature: Decision) -> dict[str, Any]:
    """Return what the page to withdraw a signature shows."""
    return {
        "person": signature.person,
        "element": element_words(signature.element),
        "back": back_to(signature.person),
        "signed_by": signature.by.name,
        "signed_at": signature.at,
    }
