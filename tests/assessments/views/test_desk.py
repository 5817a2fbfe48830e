"""The desk: a rule is kept, checked as it is typed, put together from words, tried."""

import pytest
from django.urls import reverse

from assessments.models import Draft

pytestmark = pytest.mark.django_db
RULE = {
    "sentence": "Dew point under the air",
    "way": "whole",
    "test": "answer.dew_point <= facts.air_degc",
    "severity": "points",
    "points": "2",
    "because": "No air holds more water than it can.",
    "lesson": "L24",
    "source": "practice",
}
HTMX = {"HTTP_HX_REQUEST": "true"}


@pytest.fixture
def desk(client, author, draft):
    """Return a function that sends a rule to the desk: a new one, or one by its code."""
    client.force_login(author)

    def sent(act, code="", *, plain=False, **data):
        url = reverse("rule-detail", args=[draft.pk, code]) if code else reverse("rule-write", args=[draft.pk])
        return client.post(url, {"act": act, **data}, **({} if plain else HTMX))

    return sent


def seen(client, draft, code):
    """Return the mark with which the page of a rule was opened."""
    return client.get(reverse("rule-detail", args=[draft.pk, code])).context["form"]["seen"].value()


def rows(draft):
    draft.refresh_from_db()
    return draft.rows


def test_a_new_rule_is_kept_behind_the_others(desk, draft):
    answer = desk("keep", plain=True, **RULE)
    assert (answer.status_code, answer.url) == (302, f"/drafts/{draft.pk}/")
    assert rows(draft)[-1] == {
        "code": "COA-01.14",
        "sentence": "Dew point under the air",
        "test": "answer.dew_point <= facts.air_degc",
        "points": 2,
        "severity": "points",
        "because": "No air holds more water than it can.",
        "lesson": "L24",
        "source": "practice",
    }


def test_a_rule_is_opened_as_it_stands_and_kept_in_its_place(client, desk, draft):
    page = client.get(reverse("rule-detail", args=[draft.pk, "COA-01.9"]))
    form = page.context["form"]
    assert (form["test"].value(), form["when"].value()) == ("'trial_section' not in answer.next_steps", "key.short")
    given = {name: form[name].value() or "" for name in form.fields}
    desk("keep", "COA-01.9", plain=True, **{**given, "points": "4"})
    place = [row.get("code") for row in rows(draft)].index("COA-01.9")
    assert (place, draft.rows[place]["points"], len(draft.rows)) == (10, 4, 15)


def test_what_is_missing_is_asked_for_and_nothing_typed_is_lost(desk, draft):
    answer = desk("keep", plain=True, **{**RULE, "because": "", "points": "many", "source": ""})
    assert (answer.status_code, Draft.objects.get().revision) == (422, 0)
    words = answer.content.decode()
    assert "Say why: the trainee reads it when the rule isn’t met." in words
    assert "Enter a number above 0, at most 100." in words
    assert "Choose what it stands on" in words
    assert "Dew point under the air" in words


def test_a_faulty_test_is_kept_and_marked(desk, draft, client):
    desk("keep", plain=True, **{**RULE, "test": "answer.dew_pont <= facts.air_degc"})
    page = client.get(reverse("rule-detail", args=[draft.pk, "COA-01.14"]))
    (mark,) = page.context["parts"]["test"].marks
    assert (mark.before, mark.wrong, mark.after) == ("answer.", "dew_pont", " <= facts.air_degc")
    assert page.context["found"] is None


def test_what_somebody_else_changed_meanwhile_stays_and_what_was_typed_too(client, desk, draft, changed):
    old = seen(client, draft, "COA-01.2")
    changed(draft, points=5)
    answer = desk("keep", "COA-01.2", plain=True, **{**RULE, "seen": old})
    assert answer.status_code == 422
    assert "Somebody changed this rule after you opened it." in answer.content.decode()
    assert Draft.objects.get().row("COA-01.2")["points"] == 5
    assert "Dew point under the air" in answer.content.decode()


def test_points_by_steps_and_by_share(desk, draft):
    steps = {
        "step_0": "answer.decision == 'wait'",
        "step_points_0": "1",
        "step_2": "answer.margin > 3",
        "step_points_2": "2.5",
    }
    desk("keep", plain=True, **{**RULE, "way": "steps", "points": "", **steps})
    assert rows(draft)[-1]["steps"] == [["answer.decision == 'wait'", 1], ["answer.margin > 3", 2.5]]
    desk("keep", plain=True, **{**RULE, "way": "share", "share": "answer.margin / key.margin"})
    last = rows(draft)[-1]
    assert (last["share"], last["points"], "test" in last) == ("answer.margin / key.margin", 2, False)


def test_a_shared_rule_keeps_its_test_and_takes_its_own_weight(client, desk, draft):
    page = client.get(reverse("rule-detail", args=[draft.pk, "R41"]))
    form = page.context["form"]
    assert "test" not in form.fields
    given = {name: form[name].value() or "" for name in form.fields}
    desk("keep", "R41", plain=True, **{**given, "points": "6"})
    assert draft.rows[3] == {**rows(draft)[3], "points": 5}
    assert {key: draft.rows[3][key] for key in ("shared", "severity", "points")} == {
        "shared": "R41",
        "severity": "critical",
        "points": 6,
    }
    assert "test" not in draft.rows[3]


def test_while_it_is_typed_it_is_checked_read_back_and_tried(desk):
    answer = desk("check", **RULE)
    words = answer.content.decode()
    assert "The trainee’s dew point is at most “Air in the shed”." in words
    assert answer.context["found"]["verdict"] == "met"
    assert "<html" not in words
    words = desk("check", **{**RULE, "test": "answer.dew_point <= facts.air_rh"}).content.decode()
    assert "This is in rh, but the left side is in degc." in words
    assert "<u>facts.air_rh</u>" in words


def test_a_phrase_fills_its_gaps_and_goes_into_the_test(desk):
    gaps = {"phrase": "within", "gap-value": "answer.margin", "gap-tolerance": "0.5", "gap-target": "key.margin"}
    panel = desk("phrase", phrase="within").context["panel"]
    assert [slot["name"] for slot in panel["slots"]] == ["gap-value", "gap-tolerance", "gap-target"]
    answer = desk("put", **gaps)
    assert answer.context["form"]["test"].value() == "near(answer.margin, key.margin, 0.5)"
    assert answer.context["panel"]["slots"] == []
    answer = desk("put", **gaps, test="answer.decision == 'wait' or key.short", how="and")
    assert answer.context["form"]["test"].value() == (
        "(answer.decision == 'wait' or key.short) and near(answer.margin, key.margin, 0.5)"
    )
    answer = desk("put", **gaps, test="key.short", how="instead", into="when")
    assert answer.context["form"]["when"].value() == "near(answer.margin, key.margin, 0.5)"


def test_a_gap_left_open_is_named(desk):
    answer = desk("put", phrase="within", **{"gap-value": "answer.margin"})
    assert any(slot["error"] for slot in answer.context["panel"]["slots"])
    assert answer.context["form"]["test"].value() in ("", None)


def test_without_script_the_same_buttons_give_a_whole_page(desk):
    for act in ("check", "phrase", "put", "try"):
        answer = desk(act, plain=True, **RULE)
        assert "<html" in answer.content.decode(), act
        assert answer.context["form"]["sentence"].value() == "Dew point under the air"


def test_ones_own_answer_is_kept_as_known(desk, draft):
    own = {
        "answers": "own",
        "seed": "1",
        "own-dew_point": "60",
        "own-margin": "",
        "own-decision": "wait",
        "exemplar": "a dew point over the air",
    }
    answer = desk("exemplar", plain=True, **RULE, **own)
    assert answer.status_code == 302
    rows(draft)
    (kept,) = draft.exemplars
    assert (kept["name"], kept["put"]["dew_point"], "COA-01.14" in kept["not_met"]) == (
        "a dew point over the air",
        60.0,
        True,
    )
    assert "margin" in kept["unanswered"]


def test_in_review_the_desk_is_shut(client, author, draft, changed, now):
    from assessments import drafting

    client.force_login(author)
    drafting.send_to_review(changed(draft, points=3), author, now=now)
    for url in (reverse("rule-write", args=[draft.pk]), reverse("rule-detail", args=[draft.pk, "COA-01.2"])):
        assert client.get(url).url == f"/drafts/{draft.pk}/"


def test_a_rule_is_taken_out(client, author, draft):
    client.force_login(author)
    url = reverse("rule-take-out", args=[draft.pk, "COA-01.12"])
    assert "COA-01.12 is taken out. Version 1 keeps it." in client.post(url, follow=True).content.decode()
    assert "The draft holds no rule COA-01.12." in client.post(url, follow=True).content.decode()
    assert client.get(reverse("rule-detail", args=[draft.pk, "COA-01.12"])).status_code == 404


def test_with_every_check_the_known_answers_are_tried(desk):
    known = desk("check", **RULE).context["known"]
    assert ([one["name"] for one in known["otherwise"]], known["idle"]) == ([], True)
    known = desk("check", "COA-01.4", **{**RULE, "test": "'fuel_heater' not in answer.next_steps"}).context["known"]
    lines = {one["name"]: one["got"] for one in known["otherwise"]}
    assert lines["right decision, fuel heater ticked"] == "satisfactory"
    assert not known["idle"]
    assert desk("check", **{**RULE, "test": "answer.dew_pont > 1"}).context["known"] is None
    steps = {"way": "steps", "step_0": "answer.margin > 3", "step_points_0": "2"}
    assert desk("check", **{**RULE, **steps}).context["known"]["idle"] is False


def test_a_shared_rule_is_tried_with_its_new_weight(desk):
    known = desk("check", "R41", severity="points", points="5", when="key.decision != 'coat_now'").context["known"]
    assert "only the decision changed to coating now" in [one["name"] for one in known["otherwise"]]


CRAFTED = [
    {"points": "nan"},
    {"points": "1e400"},
    {"points": "-5"},
    {"way": "sideways"},
    {"way": "steps", "step_0": "key.short", "step_points_0": "inf"},
    {"way": "share", "share": "1 / 0"},
    {"severity": "grave"},
    {"test": "x" * 5000},
    {"test": "\x00"},
    {"test": "(" * 300},
    {"test": "__import__('os')"},
    {"when": "answer.decision == '\u202e'"},
    {"source": "no-such"},
    {"lesson": "L99"},
    {"sentence": "\ud800".encode("utf-16", "surrogatepass").decode("utf-16", "replace")},
    {"seed": "9" * 400},
    {"answers": "00000000-0000-0000-0000-000000000000"},
    {"answers": "own", "own-dew_point": "1e999", "own-decision": "x", "own-next_steps": "y", "own-why": "\x00"},
    {"answers": "own", "own-next_steps": "none_of_these", "exemplar": "x" * 3000},
    {"phrase": "within", "gap-value": "__class__", "gap-target": "1e999", "gap-tolerance": "nan"},
    {"phrase": "one_of", "gap-value": "answer.decision", "gap-options": "'; drop"},
    {"into": "seen", "how": "xor", "phrase": "is", "gap-value": "answer.decision", "gap-target": "'wait'"},
]


@pytest.mark.parametrize("act", ["check", "put", "exemplar"])
@pytest.mark.parametrize("odd", CRAFTED, ids=[", ".join(one) for one in CRAFTED])
def test_whatever_is_sent_the_desk_answers(desk, act, odd):
    for plain in (True, False):
        assert desk(act, plain=plain, **{**RULE, **odd}).status_code in (200, 302, 422)
