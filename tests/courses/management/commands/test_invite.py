"""A link that brings one person in, printed."""

import re

import pytest
from django.core.management import CommandError, call_command

from courses.models import Invitation
from tests.factories import CohortFactory, PersonFactory

pytestmark = pytest.mark.django_db


def test_the_link_printed_opens_the_invitation(client, school, capsys):
    CohortFactory(name="Quay")
    call_command("invite", "new@test.example", "--cohort", "quay")
    (link,) = re.findall(r"http://localhost:8000(/come-in/\S+/)", capsys.readouterr().out)
    assert client.get(link).status_code == 200
    invitation = Invitation.objects.get()
    assert (invitation.email, invitation.role, invitation.cohort.name) == ("new@test.example", "trainee", "Quay")


def test_the_first_manager_needs_no_cohort(school):
    call_command("invite", "boss@test.example", "--role", "manager")
    assert Invitation.objects.get().role == "manager"


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        (["x", "--cohort", "Quay"], "'x' is no e-mail address. Write it like name@example.org."),
        (["--cohort", "Quai"], "There is no cohort 'Quai'. Cohorts here: Quay."),
        (["new@test.example"], "A trainee learns in a cohort. Name one."),
        (["here@test.example", "--cohort", "Quay"], "already belongs here"),
    ],
)
def test_what_cannot_be_made_is_said_in_a_sentence(school, words, sentence):
    CohortFactory(name="Quay")
    PersonFactory(email="here@test.example")
    with pytest.raises(CommandError, match=re.escape(sentence)) as refusal:
        call_command("invite", *words)
    assert (refusal.value.returncode, Invitation.objects.count()) == (2, 0)
