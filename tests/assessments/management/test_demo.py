"""The demo school: made once, from real draws, by the verbs that everybody's rows go through."""

import json
import stat
from collections import Counter
from io import StringIO

import pytest
from django.core.management import CommandError, call_command

from assessments.management import demo
from assessments.models import Answer, Attempt, Decision, Finding, LogEntry
from assessments.scenarios.errors import DrawNeverSettled
from courses.models import Cohort, Course, Lesson, Membership, Person, School

pytestmark = pytest.mark.django_db

ROWS = (School, Cohort, Person, Membership, Attempt, Answer, Finding)


def counted() -> dict[str, int]:
    return {model.__name__: model.objects.count() for model in ROWS}


@pytest.fixture
def told(shelves, tmp_path, now):
    """What was said while the demo school was made."""
    said: list[str] = []
    demo.load(tmp_path / "var", now, said.append)
    return said


def test_loading_twice_leaves_the_same_rows(told, tmp_path, now):
    before = counted()
    demo.load(tmp_path / "var", now, told.append)
    assert counted() == before
    assert {name: before[name] for name in ("School", "Cohort", "Person", "Membership", "Attempt")} == {
        "School": 1,
        "Cohort": 2,
        "Person": 18,
        "Membership": 18,
        "Attempt": 8,
    }
    assert told[:10] == told[10:]
    assert told[0] == "Kofi Marland sits COA-01"
    assert told[2] == "Davit Rowsell decides on COA2 of Wren Sallow"


def test_what_was_decided_stands_in_the_log(told):
    made = list(Decision.objects.values_list("person__name", "kind", "by__name"))
    assert made == [("Wren Sallow", "signed", "Davit Rowsell"), ("Joss Perrin", "declined", "Davit Rowsell")]
    kinds = Counter(LogEntry.objects.values_list("kind", flat=True))
    assert kinds == {"role_given": 18, "evidence": 8, "signed": 1, "declined": 1}
    out = StringIO()
    call_command("verify_log", stdout=out)
    assert json.loads(out.getvalue())["ok"] is True


def test_the_instructor_has_a_code_device_whose_key_can_be_shown_again(told):
    (davit,) = demo.signers()
    assert (davit.name, len(demo.device_key(davit))) == ("Davit Rowsell", 32)
    assert demo.device_key(davit) == demo.device_key(davit)


def test_who_gave_the_key_is_satisfactory(told):
    keyed = Attempt.objects.exclude(person__name="Ruben Stroud").order_by("opened_at")
    assert [(one.person.name, one.mode, one.outcome, one.points == one.of) for one in keyed] == [
        ("Kofi Marland", "practice", "satisfactory", True),
        ("Wren Sallow", "paper", "satisfactory", True),
        ("Joss Perrin", "paper", "satisfactory", True),
        ("Noor Hadley", "paper", "satisfactory", True),
        ("Elin Vashti", "paper", "satisfactory", True),
    ]


def test_ruben_refused_three_good_days(told):
    attempts = Attempt.objects.filter(person__name="Ruben Stroud").order_by("number")
    found = [sorted(one.findings.filter(verdict="not_met").values_list("code", flat=True)) for one in attempts]
    assert [one.outcome for one in attempts] == ["not_yet_satisfactory"] * 3
    assert found == [["COA-01.3", "R21"]] * 3


def test_people_read_as_the_file_says(told):
    people = {one.name: one for one in Person.objects.all()}
    priya, wren, aiko = people["Priya Dasmar"], people["Wren Sallow"], people["Aiko Bramwell"]
    assert (priya.film, priya.temperature) == ("um", "degf")
    assert (wren.film, wren.temperature, wren.length) == ("um", "degc", "m")
    assert (aiko.extra_time_percent, priya.extra_time_percent) == (25, 0)
    assert [one.role for one in demo.staff_first()][:5] == [
        "manager",
        "instructor",
        "instructor",
        "examiner",
        "trainee",
    ]


def test_passwords_are_for_their_owner_alone_and_stay(tmp_path):
    known = demo.passwords(tmp_path, ["orla@slackwater.example"])
    kept = tmp_path / "demo-passwords.json"
    assert stat.S_IMODE(kept.stat().st_mode) == 0o600
    assert demo.passwords(tmp_path, ["orla@slackwater.example"]) == demo.passwords(tmp_path) == known
    assert json.loads(kept.read_text()) == known


def test_somebody_new_gets_a_password_and_nobody_elses_changes(tmp_path):
    first = demo.passwords(tmp_path, ["orla@slackwater.example"])
    both = demo.passwords(tmp_path, ["orla@slackwater.example", "davit@slackwater.example"])
    assert set(both) == {"orla@slackwater.example", "davit@slackwater.example"}
    assert first.items() <= both.items()
    assert stat.S_IMODE((tmp_path / "demo-passwords.json").stat().st_mode) == 0o600


def test_a_broken_file_stops_setup_and_changes_nothing(other_fixtures, settings, tmp_path):
    settings.VAR = tmp_path / "var"
    other_fixtures("demo/school.toml", 'person = "Noor Hadley"', 'person = "Nora Hadley"')
    with pytest.raises(CommandError) as refused:
        call_command("setup")
    assert str(refused.value) == (
        "fixtures/demo/school.toml, line 105, sitting[1].person: 'Nora Hadley' isn't known here; "
        "did you mean Noor Hadley? Nothing was changed."
    )
    assert refused.value.returncode == 2
    assert (set(counted().values()), Course.objects.count(), Lesson.objects.count()) == ({0}, 0, 0)
    assert not settings.VAR.exists()


def test_an_exemplar_that_fits_no_draw_leaves_no_rows(shelves, tmp_path, now, monkeypatch):
    monkeypatch.setattr(demo, "TRIES", 0)
    with pytest.raises(DrawNeverSettled, match="in 0 draws of COA-01 none fits the exemplar 'key'"):
        demo.load(tmp_path / "var", now, str)
    assert (Person.objects.count(), Attempt.objects.count()) == (0, 0)
