"""`setup` asks nothing, can be run again, and tells what comes next."""

import json
import stat

import pytest
from django.core.management import CommandError, call_command

from assessments.models import Attempt, Scenario
from assessments.shipped import scenarios
from courses.models import Membership, Person, School

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def _own_folder(settings, tmp_path):
    settings.VAR = tmp_path / "var"
    settings.STATIC_ROOT = tmp_path / "static"


def test_a_bare_school_has_shelves_and_no_people(capsys):
    call_command("setup", "--bare")
    said = capsys.readouterr().out
    assert "python manage.py invite you@example.org --role manager" in said
    assert "9 of 9" in said
    assert (School.objects.count(), Person.objects.count(), Scenario.objects.count()) == (1, 0, len(scenarios()))


def test_the_demo_school_is_made_once_and_its_passwords_stay(settings, capsys):
    for _time in range(2):
        call_command("setup")
    said = capsys.readouterr().out
    kept = settings.VAR / "demo-passwords.json"
    passwords = json.loads(kept.read_text())
    assert stat.S_IMODE(kept.stat().st_mode) == 0o600
    assert (Person.objects.count(), Membership.objects.count(), len(passwords)) == (18, 18, 18)
    assert Attempt.objects.count() == 8
    assert all(said.count(password) == 2 for password in passwords.values())
    assert (
        Person.objects.with_email("noor@slackwater.example").get().check_password(passwords["noor@slackwater.example"])
    )


def test_demo_people_get_new_passwords_where_the_old_ones_were_lost(settings):
    call_command("setup")
    (settings.VAR / "demo-passwords.json").unlink()
    call_command("setup")
    passwords = json.loads((settings.VAR / "demo-passwords.json").read_text())
    assert all(person.check_password(passwords[person.email]) for person in Person.objects.all())


def test_a_published_version_that_changed_is_refused(other_fixtures):
    call_command("setup", "--bare")
    other_fixtures("scenarios/COA-01-v1.toml", "A cold hull", "A warm hull")
    with pytest.raises(
        CommandError, match="published and can't change. .* No lesson, scenario or person was changed."
    ) as refusal:
        call_command("setup", "--bare")
    assert refusal.value.returncode == 2
    assert "A cold hull" in Scenario.objects.get(code="COA-01").text
