"""What a page carries of what it showed, and what is asked."""

import pytest
from django.core import signing

from assessments.competence import Deed
from assessments.forms.signing import SALT, SignForm, TurnDownForm, WithdrawForm, seal, unseal

DEED = Deed(
    school="1",
    person="p",
    signer="s",
    element="COA2",
    requirement_version=0,
    requirement_digest="0" * 64,
    asks=("one paper",),
    evidence=(("e", "satisfactory"),),
    decisions=(),
    counted=("e",),
)


def test_a_sealed_deed_opens_as_it_was():
    assert unseal(seal(DEED)) == DEED


@pytest.mark.parametrize(
    "text", ["", "forged", signing.dumps({"person": "p"}, salt=SALT), signing.dumps([], salt="other")]
)
def test_what_we_did_not_seal_opens_nothing(text):
    assert unseal(text) is None


def test_one_changed_letter_breaks_the_seal():
    sealed = seal(DEED)
    broken = sealed[:-1] + ("A" if sealed[-1] != "A" else "B")
    assert unseal(broken) is None


def test_the_evidence_has_to_be_read():
    form = SignForm({"shown": "x", "code": "123456"})
    assert form.errors == {"read": ["Read the evidence first, then tick this."]}


@pytest.mark.parametrize("form", [TurnDownForm, WithdrawForm])
def test_a_reason_is_asked(form):
    assert form({"shown": "x", "reason": " "}).errors["reason"] == ["Say why. The reason stays on the record."]
