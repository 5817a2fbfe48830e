"""The draft of a rule book, as a row."""

import pytest
from django.db import IntegrityError, transaction

from assessments.models import Draft

pytestmark = pytest.mark.django_db


def test_a_rule_is_found_by_its_code_its_own_or_the_shared_one(draft):
    assert draft.row("COA-01.2")["sentence"] == "Margin of the panel, not of the rail"
    assert draft.row("R41")["points"] == 5
    assert draft.row("R40") is None


def test_a_scenario_has_one_open_draft(draft, author, now):
    with pytest.raises(IntegrityError), transaction.atomic():
        Draft.objects.create(
            scenario=draft.scenario, base=draft.base, rows=[], started_by=author, started_at=now, state="in_review"
        )


@pytest.mark.parametrize(
    ("state", "open_still", "written"),
    [("draft", True, True), ("in_review", True, False), ("published", False, False), ("discarded", False, False)],
)
def test_a_draft_is_open_until_it_is_out_or_thrown_away(draft, state, open_still, written):
    draft.state = state
    draft.save()
    assert (draft.is_open, draft.is_written, Draft.objects.open().exists()) == (open_still, written, open_still)
    assert str(draft) == f"COA-01@1 {state}"
