"""Papers whose time is over are closed by a command."""

from datetime import timedelta

import pytest
from django.core.management import call_command
from django.utils import timezone

from assessments import journey
from assessments.models import Scenario

pytestmark = pytest.mark.django_db


def test_due_papers_are_closed_and_counted(trainee, other, capsys):
    scenario, now = Scenario.objects.get(code="COA-01"), timezone.now()
    past = journey.open_attempt(trainee, scenario, "paper", now=now - timedelta(hours=1))
    running = journey.open_attempt(other, scenario, "paper", now=now)
    call_command("close_due")
    past.refresh_from_db()
    running.refresh_from_db()
    assert capsys.readouterr().out == "1 closed\n"
    assert (past.closed_at, running.is_open) == (past.deadline, True)
