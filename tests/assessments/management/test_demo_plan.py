"""The file of the demo school: read whole, or refused with file, line and key."""

import re
from pathlib import Path

import pytest

from assessments.management.demo_plan import FILE, CohortPlan, PersonPlan, SittingPlan, read_plan
from courses.content.errors import FileRefused

TEXT = (Path(__file__).parents[3] / FILE).read_text(encoding="utf-8")


def test_the_shipped_school_reads_whole():
    plan = read_plan()
    assert (plan.school["name"], plan.school["metric"]) == ("Slackwater Yard School of Surface Care", False)
    assert plan.cohorts == (CohortPlan("Quay", "in_person", "in_person"), CohortPlan("Lantern", "remote", "remote"))
    assert (len(plan.people), len(plan.sittings)) == (18, 8)
    assert plan.people[1] == PersonPlan(
        "Davit Rowsell", "instructor", "", ("INS", "WAD", "PLN", "CUT"), ("COA2",), metric=False, film="",
        extra_time_percent=0,
    )  # fmt: skip
    assert (plan.people[6].email, plan.people[6].film) == ("priya@slackwater.example", "um")
    assert plan.sittings[0] == SittingPlan("Noor Hadley", "COA-01", "paper", 3, "key", 1)


@pytest.mark.parametrize(
    ("old", "new", "key", "says"),
    [
        ("[school]", "[school", "toml", "this is not TOML"),
        ("[school]", "[shcool]", "shcool", "'shcool' isn't known here; did you mean school?"),
        ('place = "Port', 'plaec = "Port', "school.plaec", "did you mean place?"),
        ('zone = "America/New_York"\n', "", "school.zone", "this is missing; write zone ="),
        ('jurisdiction = "us"', 'jurisdiction = "fr"', "school.jurisdiction", "there are us, uk, eu."),
        ('name = "Lantern"', 'name = "Quay"', "cohort[2].name", "'Quay' stands above already"),
        ('mode = "remote"', 'mode = "remot"', "cohort[2].mode", "did you mean remote?"),
        ('course = "in_person"', 'course = "in_persn"', "cohort[1].course", "did you mean in_person?"),
        ('name = "Bo Lindqvane"', 'name = "Tamsin Orrey"', "person[6].name", "stands above already"),
        ('name = "Bo Lindqvane"', 'name = "Tamsin Lin"', "person[6].name", "tamsin@slackwater.example is somebody's"),
        ('role = "examiner"', 'role = "examinr"', "person[4].role", "did you mean examiner?"),
        ('teaches = ["SAF"', 'teaches = ["SAFE"', "person[3].teaches", "'SAFE' isn't known here; did you mean SAF"),
        ('may_sign = ["COA2"]', 'may_sign = ["COA9"]', "person[2].may_sign", "did you mean COA"),
        ('name = "Tamsin Orrey"\ncohort = "Quay"', 'name = "Tamsin Orrey"', "person[5].cohort", "this is missing"),
        ('cohort = "Lantern"', 'cohort = "Lanten"', "person[13].cohort", "did you mean Lantern?"),
        ('film = "um"', 'film = "mm"', "person[7].film", "there are mil, um."),
        ("extra_time_percent = 25", "extra_time_percent = 400", "person[11].extra_time_percent", "outside 0 to 300"),
        ('person = "Noor Hadley"', 'person = "Nora Hadley"', "sitting[1].person", "did you mean Noor Hadley?"),
        ('scenario = "COA-01"', 'scenario = "COA-10"', "sitting[1].scenario", "did you mean COA-01?"),
        ('mode = "practice"', 'mode = "practise"', "sitting[5].mode", "did you mean practice?"),
        ('exemplar = "refuses a', 'exemplar = "refuse a', "sitting[5].exemplar", "did you mean refuses a good day"),
        ("days_ago = 3\n", "", "sitting[1].days_ago", "this is missing; write days_ago ="),
        ("nth = 1", 'nth = "1"', "sitting[1].nth", "'1' is not a whole number; write nth = 1"),
    ],
)  # fmt: skip
def test_a_broken_file_is_refused_with_file_line_and_key(other_fixtures, old, new, key, says):
    other_fixtures("demo/school.toml", old, new)
    with pytest.raises(FileRefused, match=re.escape(says)) as refused:
        read_plan()
    assert (refused.value.file, refused.value.key) == ("fixtures/demo/school.toml", key)


def test_a_refusal_stands_at_its_line(other_fixtures):
    other_fixtures("demo/school.toml", 'film = "um"', 'film = "mm"')
    with pytest.raises(FileRefused) as refused:
        read_plan()
    assert refused.value.line == 1 + TEXT[: TEXT.index('film = "um"')].count("\n")
