"""The pages of the record, drawn from sample contexts: nothing asked is hidden, a withdrawn signature stays visible."""

import pytest
from django.contrib.auth.models import AnonymousUser
from django.template.loader import render_to_string

from assessments.forms.signing import SignForm, TurnDownForm, WithdrawForm
from courses.views.samples_of_record import AT, asks, board, deed, elements, events, evidence, signature, way

ELEMENT = {"code": "COA2", "title": "Read the day", "unit": "Coat and cure"}
BACK = {"url": "/back/", "words": "Wren Sample"}
COMMON = {"person": "Wren Sample", "element": ELEMENT, "back": BACK}


@pytest.fixture
def drawn(rf):
    """Return a function that draws a page of the record."""
    request = rf.get("/")
    request.user, request.session = AnonymousUser(), {}

    def draw(name, **context):
        return render_to_string(f"assessments/{name}.html", {"school": "", **context}, request)

    return draw


def units():
    return [{**unit, "elements": elements() if unit["code"] == "COA" else []} for unit in way()]


def record(**rest):
    page = {"person": "Wren Sample", "mine": True, "lead": "COA2 waits.", "units": units(), "events": events()}
    return {**page, "more_url": None, "chain_words": "41 entries, none altered", "chain_whole": True, **rest}


def signing(**rest):
    page = {**COMMON, "criteria": [{"letter": "a", "text": "reads within 0.5 K", "critical": True}], "asks": asks()}
    page |= {"others": [evidence("critical_fail")], "deed": deed(), "form": SignForm(), "refusal": "", "changes": []}
    page |= {"passkey_url": None, "passkey_ready": False, "setup_url": None}
    return {**page, "decline_url": "/decline/", "ask_url": "/ask/", **rest}


def test_a_record_shows_all_that_is_asked_and_what_cannot_be_gathered_as_such(drawn):
    page = drawn("record", **record())
    assert all(one["words"] in page and one["missing"] in page for one in asks())
    assert "Not gathered here yet" in page
    assert "0 of 2, 2 not to be had" in page


def test_a_record_shows_a_signature_that_was_withdrawn_with_its_reason(drawn):
    page = drawn("record", **record())
    assert "Signature withdrawn" in page
    assert "The attempt was somebody else" in page
    assert "judged again and came out differently" in page


@pytest.mark.parametrize(("whole", "look"), [(True, "st-met"), (False, "st-miss")])
def test_a_record_says_whether_its_entries_are_whole(drawn, whole, look):
    page = drawn("record", **record(chain_whole=whole, chain_words="said of the chain"))
    said = page[: page.index("said of the chain")]
    assert said[said.rindex("<p") :].startswith(f'<p class="st {look}">')


def test_a_unit_not_begun_is_folded_and_one_on_its_way_is_open(drawn):
    page = drawn("record", **record(mine=False))
    assert 'id="unit-COA" open>' in page
    assert 'id="unit-HOM">' in page


def test_a_record_without_events_says_what_will_stand_there(drawn):
    assert "Nothing yet." in drawn("record", **record(events=[], more_url="?all=1"))


def test_the_board_fills_one_act_and_says_whose_each_cell_is(drawn):
    wait = {"name": "Tom", "url": "/tom/", "what": "COA2 Read the day", "since": AT, "act_url": "/sign/"}
    waiting = [{**wait, "act": act, "primary": act == "Look and sign"} for act in ("See the record", "Look and sign")]
    stuck = [{"name": "Ruben", "url": "/ruben/", "words": ["Rule R21, three times."], "link_url": "/v/", "link": "See"}]
    page = drawn("cohort_board", cohort="Lantern", lead="", cohorts=[], waiting=waiting, stuck=stuck, **board())
    assert page.count("btn-primary") == 1
    assert '<a class="btn btn-primary" href="/sign/">Look and sign' in page
    assert "Rule R21, three times." in page
    assert ", Tom Sample, Coat and cure</span>" in page
    assert page.count('class="cell st-miss"') == 2
    assert page.count('<a class="cell') == 3


def test_an_empty_cohort_says_so_in_every_part(drawn):
    page = drawn("cohort_board", cohort="New", lead="", cohorts=[{"url": "/a/", "name": "A", "here": True}] * 2)
    assert all(words in page for words in ("Nobody waits for you.", "Nobody is stuck", "No trainee is in this cohort"))
    assert "No cohort is yours yet" in drawn("cohort_list", cohorts=[])


def test_the_page_to_sign_has_one_amber_act_that_names_what_and_for_whom(drawn):
    page = drawn("sign_off", **signing(passkey_url="/passkey/"))
    assert page.count("btn-primary") == 1
    assert "Sign COA2 for Wren Sample</button>" in page
    assert 'inputmode="numeric"' in page
    assert 'autocomplete="one-time-code"' in page
    assert page.index("Passkey instead") > page.index("Sign COA2 for")
    assert '<a href="/ask/">Ask for more</a><a href="/decline/">Decline, with a reason</a>' in page


def test_without_a_device_the_form_gives_way_to_setting_one_up(drawn):
    page = drawn("sign_off", **signing(setup_url="/device/"))
    assert '<a class="btn btn-primary" href="/device/">Set up your code device first</a>' in page
    assert 'name="code"' not in page


def test_a_passkey_that_was_pressed_asks_for_no_code(drawn):
    page = drawn("sign_off", **signing(passkey_ready=True, passkey_url="/passkey/"))
    assert "Your passkey was pressed" in page
    assert 'name="code"' not in page
    assert "Passkey instead" not in page


def test_a_record_that_changed_says_what_before_anything_else(drawn):
    page = drawn("sign_off", **signing(refusal="The record changed.", changes=["One attempt was judged again."]))
    assert page.index("The record changed.") < page.index("One attempt was judged again.") < page.index("The evidence")


@pytest.mark.parametrize(
    ("kind", "words"), [("declined", "What is on record stays"), ("more_asked", "before you sign")]
)
def test_turning_down_asks_for_the_reason_beside_the_evidence(drawn, kind, words):
    page = drawn("turn_down", **COMMON, form=TurnDownForm(), act="Decline", kind=kind, asks=asks(), refusal="No.")
    assert words in page
    assert 'name="reason"' in page
    assert asks()[0]["words"] in page


def test_withdrawing_names_the_signature_and_asks_for_reason_and_code(drawn):
    page = drawn("decision_withdraw", **COMMON, form=WithdrawForm(), signed_by="Ada Sample", signed_at=AT)
    assert "Signed by Ada Sample on April\u00a014, 2026." in page
    assert 'name="reason"' in page
    assert 'name="code"' in page
    page = drawn("decision_withdraw", **COMMON, form=WithdrawForm(), signed_at=AT, setup_url="/device/")
    assert 'name="reason"' not in page
    assert "/device/" in page


def test_a_decision_shows_its_words_its_evidence_and_its_withdrawal(drawn):
    decision = {"kind": "signed", "kind_words": "Signed", "symbol": "signed", "by": "Ada", "role": "instructor"}
    decision |= {
        "when": AT,
        "until": AT,
        "proof_words": "a code",
        "digest": "7f3a",
        "reason": "",
        "withdraw_url": "/w/",
    }
    page = drawn("decision_detail", **COMMON, decision=decision, deed_words=deed()["words"], evidence=[evidence()])
    assert "Withdraw this signature" in page
    assert "COA-01, paper, attempt\u00a02" in page
    gone = {**signature(withdrawn=True)["withdrawn"], "url": "/gone/"}
    page = drawn("decision_detail", **COMMON, decision=decision, evidence=[], withdrawn=gone)
    assert "The attempt was somebody else" in page
    assert "/gone/" in page
