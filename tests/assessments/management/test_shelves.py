"""What `setup` puts on the shelves."""

import pytest

from assessments import drafting
from assessments.management import shelves
from assessments.models import RuleBook, Scenario
from assessments.shipped import scenarios
from courses.models import Course, Lesson, Placement

pytestmark = pytest.mark.django_db


def test_filling_the_shelves_twice_leaves_the_same_rows(now):
    counts = []
    for _time in range(2):
        shelves.load(now)
        counts.append([model.objects.count() for model in (Course, Lesson, Placement, Scenario, RuleBook)])
    assert counts[0] == counts[1] == [2, 33, 66, len(scenarios()), len(scenarios())]


def test_what_is_shipped_reads_whole():
    assert shelves.refuse_broken() is None


@pytest.fixture
def shipped_second(settings, other_fixtures):
    """A second version of the rules of COA-01 among what is shipped, with a margin of four kelvin."""

    def ship():
        other_fixtures("rulebooks/COA-01-v1.toml", "# Rule book of COA-01", "# The rule book of COA-01")
        folder = settings.BASE_DIR / "fixtures" / "rulebooks"
        text = (folder / "COA-01-v1.toml").read_text(encoding="utf-8")
        text = text.replace("version = 1", "version = 2\nscenario_version = 1", 1)
        text = text.replace("near(answer.margin, key.margin, 0.5)", "near(answer.margin, key.margin, 4.0)")
        (folder / "COA-01-v2.toml").write_text(text, encoding="utf-8")

    return ship


def test_a_newer_shipped_rule_book_marks_from_then_on(school, now, shipped_second):
    shelves.load(now)
    shipped_second()
    shelves.load(now)
    assert [str(book) for book in RuleBook.objects.filter(code="COA-01")] == ["COA-01@1", "COA-01@2"]
    assert Scenario.objects.get(code="COA-01").rule_book.version == 2


def test_rules_written_here_stay_where_a_shipped_book_has_their_number(
    draft, changed, author, reviewer, now, shipped_second
):
    own = drafting.publish_draft(drafting.send_to_review(changed(draft, points=3), author, now=now), reviewer, now=now)
    shipped_second()
    said = []
    shelves.load(now, said.append)
    assert said == ["Rule book COA-01@2 was written here and stays; the shipped one of that number is left out."]
    assert (Scenario.objects.get(code="COA-01").rule_book, RuleBook.objects.filter(code="COA-01").count()) == (own, 2)
