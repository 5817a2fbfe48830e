"""The pages of rule books: versions, the one in use, the way back to an earlier one."""

import pytest
from django.urls import reverse

from assessments import drafting
from assessments.models import Draft, Scenario

pytestmark = pytest.mark.django_db
BOOK = "/rules/COA-01/"


@pytest.fixture
def signed_in(client, author, shelves):
    client.force_login(author)
    return client


def test_every_scenario_stands_with_the_version_in_use(signed_in, draft):
    page = signed_in.get(reverse("book-list"))
    (one,) = [book for book in page.context["books"] if book["scenario"].code == "COA-01"]
    assert (str(one["scenario"]), one["rules"], one["draft"]) == ("COA-01@1", 15, draft)


def test_a_version_reads_as_sentences(signed_in):
    page = signed_in.get(BOOK)
    rules = {rule["code"]: rule for rule in page.context["rules"]}
    (part,) = rules["COA-01.2"]["parts"]
    assert part.reading == "The trainee’s margin is within 0.5\u00a0K of the key’s margin."
    guard, test = rules["COA-01.9"]["parts"]
    assert (guard.name, guard.reading) == ("when", "“Not a day to coat on these readings” is yes.")
    assert test.reading == "“Coat one small section now and see” is not among the trainee’s next steps."
    assert (rules["R41"]["severity"], rules["R41"]["weighs"]) == ("critical", "5 points")


def test_beginning_a_draft_leads_to_it_and_twice_to_the_same(signed_in):
    pages = {signed_in.post(f"{BOOK}begin/").url for _time in range(2)}
    assert pages == {f"/drafts/{Draft.objects.get().pk}/"}


def test_an_earlier_version_is_looked_at_and_put_back(signed_in, second_book):
    scenario = Scenario.objects.get(code="COA-01")
    assert signed_in.get(f"{BOOK}?version=2").context["in_use"] is False
    signed_in.post(f"{BOOK}put-back/", {"version": "2"})
    scenario.refresh_from_db()
    assert scenario.rule_book == second_book
    page = signed_in.post(f"{BOOK}put-back/", {"version": "2"}, follow=True)
    assert "Version 2 is in use already." in page.content.decode()
    page = signed_in.post(f"{BOOK}put-back/", {"version": "7"}, follow=True)
    assert "There is no such version. Choose one of the list." in page.content.decode()


def test_results_of_another_version_are_counted(signed_in, sit, trainee, second_book):
    sit(trainee)
    assert signed_in.get(BOOK).context["otherwise"] == 0
    signed_in.post(f"{BOOK}put-back/", {"version": "2"})
    page = signed_in.get(BOOK)
    assert page.context["otherwise"] == 1
    assert "manage.py rejudge COA-01@1" in page.content.decode()


@pytest.mark.parametrize("versions", [0, 3])
def test_the_pages_ask_the_database_as_often_however_many_versions_there_are(
    signed_in, author, reviewer, draft, changed, now, django_assert_num_queries, versions
):
    for number in range(versions):
        one = changed(drafting.begin_draft(draft.scenario, author, now=now), points=3 + number)
        drafting.publish_draft(drafting.send_to_review(one, author, now=now), reviewer, now=now)
    signed_in.get(BOOK)
    with django_assert_num_queries(8):
        signed_in.get(reverse("book-list"))
    with django_assert_num_queries(11):
        signed_in.get(BOOK)
