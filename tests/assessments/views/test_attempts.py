"""Pages of an attempt: whose they are, what they give away, what they refuse."""

import json
import re
from datetime import timedelta
from uuid import uuid4

import pytest
from django.urls import reverse
from django.utils import timezone

from assessments import journey
from assessments.models import Answer, Attempt, Scenario

pytestmark = pytest.mark.django_db
JSON = {"Accept": "application/json"}


@pytest.fixture
def practice(client, trainee):
    client.force_login(trainee)
    client.post(reverse("attempt-open", args=["COA-01"]), {"mode": "practice"})
    return Attempt.objects.get()


@pytest.fixture
def save(client, practice):
    def send(headers=None, **given):
        data = {"task": "dew_point", "client_key": str(uuid4()), "seen": "0", "value": "9.3", **given}
        return client.post(reverse("answer-save", args=[practice.pk]), data, headers=headers)

    return send


PAGES = ["attempt-detail", "attempt-verdict", "answer-save", "attempt-hand-in", "attempt-put-away"]


@pytest.mark.parametrize("name", PAGES)
@pytest.mark.parametrize("who", ["other", "instructor", "outsider"])
def test_anothers_attempt_is_not_found(client, practice, request, name, who):
    client.force_login(request.getfixturevalue(who))
    act = client.get if name in PAGES[:2] else client.post
    assert act(reverse(name, args=[practice.pk])).status_code == 404
    practice.refresh_from_db()
    assert practice.is_open


@pytest.mark.parametrize("name", PAGES)
def test_an_attempt_asks_who_you_are(client, practice, name):
    client.logout()
    act = client.get if name in PAGES[:2] else client.post
    assert act(reverse(name, args=[practice.pk])).status_code == 302


@pytest.mark.parametrize("name", PAGES[2:])
def test_nothing_is_changed_by_looking(client, practice, name):
    assert client.get(reverse(name, args=[practice.pk])).status_code == 405


def test_whoever_has_no_course_opens_nothing(client, shelves, outsider):
    client.force_login(outsider)
    assert client.post(reverse("attempt-open", args=["COA-01"]), {"mode": "practice"}).status_code == 404


@pytest.mark.parametrize("mode", ["", "exam"])
def test_a_mode_nobody_offers_is_refused(client, trainee, mode):
    client.force_login(trainee)
    assert client.post(reverse("attempt-open", args=["COA-01"]), {"mode": mode}).status_code == 400


def test_a_script_is_told_what_was_kept(save):
    answer = save(JSON)
    assert answer.status_code == 200
    kept = answer.json()
    assert (kept["sequence"], kept["answered"]) == (1, True)
    assert re.fullmatch(r"Saved \d\d:\d\d:\d\d", kept["words"])


def test_without_script_the_page_comes_back_with_the_answer(client, save, practice):
    answer = save()
    assert (answer.status_code, answer.url) == (302, f"/attempts/{practice.pk}/#task-dew_point")
    assert 'value="9.3"' in client.get(answer.url).content.decode()


@pytest.mark.parametrize(
    ("task", "value", "kept"),
    [
        ("dew_point", "12,5", 12.5),
        ("dew_point", "54 °F", pytest.approx(12.222, abs=1e-3)),
        ("margin", "5.4 °F", 3.0),
        ("decision", "wait", "wait"),
        ("next_steps", ["tell_owner", "probe_coldest"], ["tell_owner", "probe_coldest"]),
        ("why", "The panel is too cold.", "The panel is too cold."),
        ("dew_point", "", None),
    ],
)
def test_answers_are_understood_as_people_write_them(save, task, value, kept):
    assert save(JSON, task=task, value=value).status_code == 200
    stored = Answer.objects.get().value
    assert sorted(stored) == sorted(kept) if isinstance(kept, list) else stored == kept


def test_none_of_these_is_an_answer_and_nothing_ticked_is_none(save):
    save(JSON, task="next_steps", value=[], none="1")
    save(JSON, task="next_steps", value=[], seen="1")
    assert list(Answer.objects.order_by("pk").values_list("value", flat=True)) == [[], None]


@pytest.mark.parametrize("script", [True, False])
@pytest.mark.parametrize("value", ["warm", "5 mil", "1,2,3", "nan", "1e999", "−400 °C"])
def test_a_number_that_cannot_be_is_refused_with_a_sentence_and_kept_on_the_page(save, value, script):
    save(JSON, value="9.0")
    answer = save(JSON if script else None, value=value, seen="1")
    assert answer.status_code == 422
    said = answer.json()["error"] if script else answer.content.decode()
    assert said
    assert script or value in said
    assert list(Answer.objects.values_list("value", flat=True)) == [9.0]


@pytest.mark.parametrize(
    "crafted",
    [
        {"task": "decision", "value": "paint_it_black"},
        {"task": "next_steps", "value": ["tell_owner", "drop tables"]},
        {"task": "no_such_task"},
        {"client_key": "not-a-key"},
        {"seen": "-1"},
        {"seen": "x"},
        {"unheard": "x"},
    ],
)
@pytest.mark.parametrize("headers", [JSON, None])
def test_what_no_page_of_ours_sends_is_a_bad_request(save, crafted, headers):
    assert save(headers, **crafted).status_code == 400
    assert not Answer.objects.exists()


def test_two_tabs_are_told_of_both_answers(save, client, practice):
    save(JSON, value="9.0")
    both = save(JSON, value="8.0")
    assert both.status_code == 409
    assert {key: both.json()[key] for key in ("yours", "counts", "sequence")} == {
        "yours": 8.0,
        "counts": 9.0,
        "sequence": 1,
    }
    page = client.get(reverse("attempt-detail", args=[practice.pk])).content.decode()
    assert "This was answered in two tabs." in page


def test_without_script_the_page_shows_both_and_either_can_be_taken(save, client, practice):
    save(value="9.0")
    page = save(value="8.0")
    assert page.status_code == 409
    forms = re.findall(r"<form[^>]*>(?:(?!</form>).)*?Take.*?</form>", page.content.decode(), re.DOTALL)
    fields = [dict(re.findall(r'name="(\w+)" value="([^"]*)"', form)) for form in forms]
    assert [one["value"] for one in fields if "degc" in one["value"]] == ["9.0 degc", "8.0 degc"]
    client.post(reverse("answer-save", args=[practice.pk]), fields[1])
    assert journey.answers_of(practice) == {"dew_point": 8.0}
    assert "two tabs" not in client.get(reverse("attempt-detail", args=[practice.pk])).content.decode()


def test_a_late_answer_is_told_and_the_verdict_says_so(client, trainee, shelves):
    client.force_login(trainee)
    scenario = Scenario.objects.get(code="COA-01")
    paper = journey.open_attempt(trainee, scenario, "paper", now=timezone.now() - timedelta(minutes=13))
    data = {"task": "dew_point", "client_key": str(uuid4()), "seen": "0", "value": "9.3"}
    answer = client.post(reverse("answer-save", args=[paper.pk]), data, headers=JSON)
    assert (answer.status_code, answer.json()["late"]) == (410, True)
    assert "One answer came after time." in client.get(answer.json()["page"]).content.decode()


def test_the_page_of_a_paper_past_its_time_is_its_verdict(client, trainee, shelves):
    client.force_login(trainee)
    opened = timezone.now() - timedelta(minutes=13)
    paper = journey.open_attempt(trainee, Scenario.objects.get(code="COA-01"), "paper", now=opened)
    answer = client.get(reverse("attempt-detail", args=[paper.pk]))
    assert answer.url == reverse("attempt-verdict", args=[paper.pk])
    paper.refresh_from_db()
    assert paper.closed_at == paper.deadline


def test_while_it_is_open_there_is_no_verdict(client, practice):
    answer = client.get(reverse("attempt-verdict", args=[practice.pk]))
    assert (answer.status_code, answer.url) == (302, reverse("attempt-detail", args=[practice.pk]))


def test_nothing_of_the_key_is_in_any_answer_before_it_is_handed_in(client, practice, save):
    """Every byte that is served of an open attempt, for each of sixty draws: no key text, no emissivity, no seed."""
    for seed in range(60):
        Attempt.objects.filter(pk=practice.pk).update(closed_at=timezone.now())
        attempt = journey.open_attempt(practice.person, practice.scenario, "paper", now=timezone.now(), seed=seed)
        key = _key(attempt)
        pages = [client.get(reverse("attempt-detail", args=[attempt.pk])), client.get(reverse("home"))]
        served = "".join(page.content.decode() for page in pages)
        assert key["why"][:40] not in served
        assert attempt.seed not in re.findall(r"\d+", served) or seed < 100
        assert "emissivity" not in json.dumps(attempt.facts).replace("ir_set_emissivity", "")
        for word in ("main_step", "in_doubt", "outcome", "exemplar", "needed", "critical"):
            assert word not in served
        Attempt.objects.filter(pk=attempt.pk).update(closed_at=timezone.now())


def _key(attempt):
    from assessments.scenarios.draw import key_of

    return key_of(attempt.scenario.spec, journey.facts_of(attempt))


def test_two_draws_give_pages_of_one_shape(client, practice):
    """Order and marking of options tell nothing: every page lists the same options in the same order."""
    shapes = set()
    for seed in range(12):
        Attempt.objects.update(closed_at=timezone.now())
        attempt = journey.open_attempt(practice.person, practice.scenario, "practice", now=timezone.now(), seed=seed)
        page = client.get(reverse("attempt-detail", args=[attempt.pk])).content.decode()
        shapes.add(tuple(re.findall(r'<input type="(?:radio|checkbox)"[^>]*name="value" value="(\w+)"([^>]*)>', page)))
    assert len({tuple(value for value, _rest in shape) for shape in shapes}) == 1


def test_putting_practice_away_draws_new_facts(client, practice):
    answer = client.post(reverse("attempt-put-away", args=[practice.pk]))
    fresh = Attempt.objects.open().get()
    assert (answer.url, fresh.number) == (reverse("attempt-detail", args=[fresh.pk]), 2)
    assert fresh.facts != practice.facts


def test_a_paper_cannot_be_put_away(client, trainee, shelves):
    client.force_login(trainee)
    client.post(reverse("attempt-open", args=["COA-01"]), {"mode": "paper"})
    paper = Attempt.objects.get()
    answer = client.post(reverse("attempt-put-away", args=[paper.pk]), follow=True)
    assert "A paper can’t be put away" in answer.content.decode().replace("'", "’").replace("&#x27;", "’")
    assert Attempt.objects.open().count() == 1


def test_the_verdict_names_the_rule_that_decides_and_why(client, practice, save):
    save(task="next_steps", value=["fuel_heater"])
    answer = client.post(reverse("attempt-hand-in", args=[practice.pk]), follow=True)
    page = answer.content.decode()
    assert "Failed on a critical rule" in page
    assert "No fuel heater in the shut shed" in page
    assert "Not answered" in page


def test_handing_in_twice_leads_to_the_same_verdict(client, practice):
    first, second = (client.post(reverse("attempt-hand-in", args=[practice.pk])) for _time in range(2))
    assert first.url == second.url == reverse("attempt-verdict", args=[practice.pk])


def test_attempt_pages_are_never_kept_by_a_cache(client, practice):
    assert "no-store" in client.get(reverse("attempt-detail", args=[practice.pk]))["Cache-Control"]


@pytest.mark.parametrize("many", [0, 30])
def test_pages_ask_the_database_as_often_however_much_was_tried(client, practice, django_assert_num_queries, many):
    past = timezone.now() - timedelta(days=30)
    for number in range(many):
        one = journey.open_attempt(practice.person, practice.scenario, "paper", now=past, seed=number)
        journey.hand_in(one, now=past)
    with django_assert_num_queries(10):
        client.get(reverse("attempt-detail", args=[practice.pk]))
    with django_assert_num_queries(7):
        client.get(reverse("home"))
    with django_assert_num_queries(10):
        client.get(reverse("scenario-list"))
    with django_assert_num_queries(11):
        client.get(reverse("scenario-detail", args=["COA-01"]))
    journey.hand_in(practice, now=timezone.now())
    with django_assert_num_queries(15):
        client.get(reverse("attempt-verdict", args=[practice.pk]))
