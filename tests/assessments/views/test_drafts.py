"""The page of a draft: what is wrong, what changed, what the known answers come to, and the way out."""

import pytest
from django.urls import reverse

from assessments import drafting
from assessments.models import Draft, Scenario

pytestmark = pytest.mark.django_db


@pytest.fixture
def page(client, author, draft):
    """Return a function that opens the page of the draft as somebody."""

    def opened(who=author):
        client.force_login(who)
        return client.get(reverse("draft-detail", args=[draft.pk]), follow=True)

    return opened


@pytest.fixture
def send(client, author, draft):
    """Return a function that sends something to an address of the draft and gives the words that come back."""

    def sent(address, who=author, **data):
        client.force_login(who)
        answer = client.post(reverse(address, args=[draft.pk]), data, follow=True)
        return [str(one) for one in answer.context["messages"]]

    return sent


def test_it_begins_sound_with_nothing_changed(page):
    shown = page()
    assert shown.context["state"] == "Sound, and nothing is changed yet."
    assert (shown.context["known"], shown.context["deviations"], shown.context["idle"]) == (21, [], ())
    assert "R01 Washed before anything abrasive" in shown.content.decode()


def test_what_changed_stands_beside_what_it_was(page, draft, changed):
    changed(draft, test="near(answer.margin, key.margin, 0.6)", points=3)
    shown = page()
    (line,) = [rule for rule in shown.context["rules"] if rule["change"]]
    assert line["was"] == [
        ("Met when", "near(answer.margin, key.margin, 0.5)", "near(answer.margin, key.margin, 0.6)"),
        ("Points", "2", "3"),
    ]
    assert shown.context["state"] == "Sound. It can go to review."


def test_a_mistake_is_marked_at_its_characters(page, draft, changed):
    changed(draft, test="near(answer.margn, key.margin, 0.6)")
    shown = page()
    (line,) = [rule for rule in shown.context["rules"] if rule["marks"]]
    (mark,) = line["marks"]
    assert mark.sentence.startswith("There is no field 'margn'")
    assert (mark.before, mark.wrong, mark.after) == ("near(answer.", "margn", ", key.margin, 0.6)")
    assert shown.context["state"] == "One rule has a mistake."
    assert "near(answer.<u>margn</u>, key.margin, 0.6)" in shown.content.decode()


def test_a_shared_rule_is_brought_in_once(send, draft):
    assert send("draft-share", code="R22") == ["R22 is in. Open it to say what it weighs here."]
    draft.refresh_from_db()
    assert draft.rows[-1] == {"shared": "R22", "severity": "points", "points": 1}
    assert send("draft-share", code="R22")[0].startswith("Somebody changed this rule")
    assert send("draft-share", code="R20") == ["There is no shared rule R20. Choose one of the list."]


def test_a_shared_rule_that_the_scenario_has_no_names_for_is_marked(page, send):
    send("draft-share", code="R03")
    (line,) = [rule for rule in page().context["rules"] if rule["marks"]]
    assert (line["code"], line["shared"]) == ("R03", True)


def test_what_comes_out_otherwise_is_said_to_be_right_and_taken_back(page, send, draft, changed):
    changed(draft, code="COA-01.4", severity="needed")
    shown = page()
    assert shown.context["state"] == "Every rule is sound. Not every known answer comes out as said."
    lines = {line["name"]: line for line in shown.context["deviations"]}
    line = lines["right decision, fuel heater ticked"]
    assert (line["wanted"], line["got"], line["settles"]) == ("failed on a critical rule", "not yet satisfactory", True)
    assert line["often"] == "on 12 draws of 12"
    assert send("draft-settle", name=line["name"]) == [
        "“right decision, fuel heater ticked” is right as it comes out now. Whoever reviews sees that."
    ]
    assert line["name"] not in [one["name"] for one in page().context["deviations"]]
    send("draft-settle", name=line["name"], act="drop")
    assert line["name"] in [one["name"] for one in page().context["deviations"]]


def test_the_way_to_review_and_out(page, send, draft, changed, reviewer, author):
    assert send("draft-send") == ["Nothing is changed against version 1."]
    changed(draft, test="near(answer.margin, key.margin, 0.6)")
    assert send("draft-send") == ["It is in review. Somebody who wrote nothing in it publishes it."]
    assert "Publish it as version 2" not in page().content.decode()
    assert send("draft-publish") == ["You wrote in this draft. Somebody else has to review and publish it."]
    shown = page(reviewer)
    assert "Publish it as version 2" in shown.content.decode()
    assert shown.context["state"] == "Sound. It can be published."
    assert [rule["code"] for rule in shown.context["rules"]][:2] == ["COA-01.2", "COA-01.1"]
    assert send("draft-give-back", reviewer) == ["Say what has to change. Whoever wrote it reads that."]
    assert send("draft-give-back", reviewer, remark="Too wide.") == ["It can be written on again."]
    assert "Too wide." in page().content.decode()
    send("draft-send")
    assert send("draft-publish", reviewer) == ["Version 2 marks from now on. What was judged stays."]
    assert Scenario.objects.get(code="COA-01").rule_book.version == 2
    assert page().redirect_chain[-1][0] == "/rules/COA-01/"
    assert "written by Ada Author, reviewed by Rhea Reviewer" in page().content.decode()


def test_a_draft_is_thrown_away(client, author, draft):
    client.force_login(author)
    answer = client.post(reverse("draft-throw-away", args=[draft.pk]), follow=True)
    assert "The draft is thrown away. Version 1 marks as before." in answer.content.decode()
    answer = client.post(reverse("draft-throw-away", args=[draft.pk]), follow=True)
    assert "This draft is closed already." in answer.content.decode()
    assert Draft.objects.get().state == "discarded"


@pytest.mark.parametrize("many", [0, 12])
def test_the_page_asks_the_database_as_often_however_long_the_draft(
    client, author, draft, django_assert_num_queries, many
):
    for number in range(many):
        row = {**draft.row("COA-01.13"), "code": f"COA-01.{14 + number}"}
        draft = drafting.keep_rule(draft, row, author, seen="")
    client.force_login(author)
    with django_assert_num_queries(10):
        client.get(reverse("draft-detail", args=[draft.pk]))
