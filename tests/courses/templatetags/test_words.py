"""Words of the codes: those agreed, each with a symbol of its own, and a near miss offered for any other."""

import pytest

from assessments.models import Decision
from courses.templatetags.words import (
    ASKS,
    DECISIONS,
    OUTCOME_MARKS,
    OUTCOMES,
    SOURCE_MARKS,
    STANDINGS,
    VERDICTS,
    look_of,
)
from courses.trade.sources import MARKS

AGREED = {
    "verdict": {
        "met": "Met",
        "partly": "Partly met",
        "not_met": "Not met",
        "not_answered": "Not answered",
        "not_applicable": "Doesn’t apply",
    },
    "outcome": {
        "satisfactory": "Satisfactory",
        "not_yet_satisfactory": "Not yet satisfactory",
        "critical_fail": "Failed on a critical rule",
        "cannot_certify": "Cannot be certified",
    },
    "standing": {
        "not_started": "Not started",
        "building": "Building",
        "ready": "Ready to sign",
        "signed": "Signed",
        "due": "Due again",
        "lapsed": "Lapsed",
    },
    "decision": {
        "signed": "Signed",
        "declined": "Declined",
        "more_asked": "More asked for",
        "withdrawn": "Signature withdrawn",
    },
    "ask": {"met": "Met", "open": "Still asked for", "old": "Too old", "not_gathered": "Not gathered here yet"},
}
TABLES = {"verdict": VERDICTS, "outcome": OUTCOMES, "standing": STANDINGS, "decision": DECISIONS, "ask": ASKS}


@pytest.mark.parametrize("kind", TABLES)
def test_the_words_on_screen_are_those_agreed(kind):
    assert {code: str(look.words) for code, look in TABLES[kind].items()} == AGREED[kind]


@pytest.mark.parametrize("kind", TABLES)
def test_no_two_codes_of_a_kind_share_a_symbol(kind):
    assert len({look.symbol for look in TABLES[kind].values()}) == len(TABLES[kind])


def test_every_outcome_has_a_small_mark_for_lists():
    assert {look.style for look in OUTCOMES.values()} == set(OUTCOME_MARKS)


def test_a_decision_is_called_on_screen_as_in_its_row():
    assert {code: str(look.words) for code, look in DECISIONS.items()} == dict(Decision.Kind.choices)


def test_every_way_of_knowing_a_source_has_short_words():
    assert set(SOURCE_MARKS) == set(MARKS)


def test_an_unknown_code_is_refused_with_the_nearest():
    with pytest.raises(ValueError, match="There is no verdict 'not_mett'; did you mean 'not_met'"):
        look_of("verdict", VERDICTS, "not_mett")
