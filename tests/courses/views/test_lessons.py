"""Lessons: who may read them, what stands in them, that they were read."""

import re

import pytest
from django.urls import reverse

from courses import gallery
from courses.models import HungPicture, Lesson, LessonRead
from tests.factories import PlacementFactory

pytestmark = pytest.mark.django_db
TAUGHT = ["dew-point", "instruments-lie"]
SEEING = ["three-lights", "order-of-tests", "swirl-or-hologram", "stop-and-refer", "what-am-i-touching"]


@pytest.mark.parametrize("slug", TAUGHT + SEEING)
def test_a_trainee_reads_the_lessons_of_their_course(client, trainee, slug):
    client.force_login(trainee)
    assert client.get(reverse("lesson-detail", args=[slug])).status_code == 200


def test_whoever_teaches_reads_every_lesson(client, shelves, instructor):
    client.force_login(instructor)
    assert client.get(reverse("lesson-detail", args=["dew-point"])).status_code == 200


@pytest.mark.parametrize("name", ["lesson-detail", "lesson-read", "lesson-check"])
def test_a_lesson_is_not_found_by_whoever_has_no_course(client, shelves, outsider, name):
    client.force_login(outsider)
    act = client.get if name == "lesson-detail" else client.post
    assert act(reverse(name, args=["dew-point"])).status_code == 404


def test_a_lesson_asks_who_you_are(client, shelves):
    answer = client.get(reverse("lesson-detail", args=["dew-point"]))
    assert (answer.status_code, answer.url) == (302, "/account/login/?next=/lessons/dew-point/")


def test_a_lesson_not_yet_taught_is_a_title_without_a_link(client, trainee):
    client.force_login(trainee)
    untaught = Lesson.objects.get(code="L26")
    assert client.get(reverse("lesson-detail", args=[untaught.slug])).status_code == 404
    listed = client.get(reverse("lesson-list")).content.decode()
    assert untaught.title in listed
    assert f"/lessons/{untaught.slug}/" not in listed


def test_a_lesson_speaks_the_readers_units(client, trainee):
    client.force_login(trainee)
    celsius = client.get(reverse("lesson-detail", args=["dew-point"])).content.decode()
    trainee.temperature = "degf"
    trainee.save()
    fahrenheit = client.get(reverse("lesson-detail", args=["dew-point"])).content.decode()
    assert "3.0\u00a0K" in celsius
    assert "5.4\u00a0°F" in fahrenheit
    assert "3.0\u00a0K" not in fahrenheit


def test_reading_is_remembered_and_leads_on(client, trainee):
    client.force_login(trainee)
    answer = client.post(reverse("lesson-read", args=["dew-point"]))
    assert answer.url == reverse("lesson-detail", args=["instruments-lie"])
    assert list(LessonRead.objects.values_list("person", "lesson__code", "version")) == [(trainee.pk, "L24", 1)]
    on = client.post(reverse("lesson-read", args=["instruments-lie"])).url
    assert on == reverse("lesson-detail", args=["estimate"])


def test_after_the_last_lesson_that_is_taught_comes_the_list(client, trainee):
    client.force_login(trainee)
    assert client.post(reverse("lesson-read", args=["estimate"])).url == reverse("lesson-list")


def test_looking_at_a_lesson_doesnt_mark_it_read(client, trainee):
    client.force_login(trainee)
    client.get(reverse("lesson-detail", args=["dew-point"]))
    assert client.get(reverse("lesson-read", args=["dew-point"])).status_code == 405
    assert not LessonRead.objects.exists()


@pytest.mark.parametrize("script", [True, False])
def test_a_check_says_at_once_whether_it_holds_and_why(client, trainee, script):
    client.force_login(trainee)
    headers = {"HX-Request": "true"} if script else {}
    said = [
        client.post(reverse("lesson-check", args=["dew-point"]), {"check": "c1", "pick": pick}, headers=headers)
        for pick in "abc"
    ]
    words = [answer.content.decode() for answer in said]
    assert sum("That holds." in text for text in words) == 1
    assert sum("That doesn’t hold." in text for text in words) == 2
    assert all(("<html" in text) != script for text in words)


@pytest.mark.parametrize("given", [{"check": "c99", "pick": "a"}, {}])
def test_a_check_nobody_asked_is_not_found(client, trainee, given):
    client.force_login(trainee)
    assert client.post(reverse("lesson-check", args=["dew-point"]), given).status_code == 404


@pytest.mark.parametrize("many", [0, 40])
def test_pages_ask_the_database_as_often_however_long_the_course(client, trainee, django_assert_num_queries, many):
    module = trainee.memberships.get().cohort.course.modules.last()
    for place in range(100, 100 + many):
        PlacementFactory(module=module, place=place)
    client.force_login(trainee)
    with django_assert_num_queries(10):
        client.get(reverse("lesson-list"))
    with django_assert_num_queries(12):
        client.get(reverse("lesson-detail", args=["dew-point"]))


def test_a_lesson_shows_its_pictures_side_by_side_with_what_there_is_to_see(client, trainee):
    client.force_login(trainee)
    page = client.get(reverse("lesson-detail", args=["swirl-or-hologram"])).content.decode()
    assert "close to whole rings round the lamp" in page
    assert "As the lamp moves, the bands stay on their lines" in page
    assert page.count('data-at="1"') == 4


def test_a_lesson_shows_a_drawing_that_says_what_it_shows(client, trainee):
    client.force_login(trainee)
    page = client.get(reverse("lesson-detail", args=["what-am-i-touching"])).content.decode()
    assert page.count('<figure class="drawing"') == 2
    assert "<title>Four skins in section on one scale</title>" in page


def test_a_lesson_with_pictures_asks_the_database_as_often_as_one_without(client, trainee, django_assert_num_queries):
    client.force_login(trainee)
    with django_assert_num_queries(12):
        plain = client.get(reverse("lesson-detail", args=["dew-point"])).content.decode()
    with django_assert_num_queries(12):
        pictured = client.get(reverse("lesson-detail", args=["swirl-or-hologram"])).content.decode()
    assert ("lamp.js" in plain, "lamp.js" in pictured) == (False, True)


def test_every_picture_of_a_lesson_is_told_in_words_and_hangs(client, trainee):
    gallery.hang_shipped()
    client.force_login(trainee)
    page = client.get(reverse("lesson-detail", args=["three-lights"])).content.decode()
    shown = re.findall(r'src="/pictures/([\w-]{32})/\d+\.webp" width="\d+" height="\d+" alt="([^"]+)"', page)
    assert page.count("<img ") == len(shown) > 3
    assert HungPicture.objects.filter(code__in=[code for code, _alt in shown]).count() == len(dict(shown))
