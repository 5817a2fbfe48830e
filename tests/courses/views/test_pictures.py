"""A picture by its address: signed in, hung, yours; kept by the browser for ever, or asked for again in a moment."""

import pytest
from django.urls import reverse

from courses import gallery
from courses.darkroom import Darkroom, DarkroomBusy
from tests.factories import PersonFactory

pytestmark = pytest.mark.django_db
SCENE = {"substrate": "gel_coat", "colour": "navy", "size": [96, 64], "seed": 3, "defects": [{"kind": "swirl"}]}
LAMPS = [(0.4, 0.42), (0.6, 0.42)]


@pytest.fixture(autouse=True)
def rendered(settings, tmp_path):
    """The folder of this test's pictures."""
    settings.PICTURES_ROOT = tmp_path / "pictures"
    return settings.PICTURES_ROOT


@pytest.fixture
def row(school):
    return gallery.hang(SCENE, "point", LAMPS, "lesson")


def made(folder):
    """Return how many pictures were made."""
    return len(list(folder.glob("*.webp")))


def test_a_picture_is_sent_to_be_kept_for_ever(client, outsider, row, rendered):
    client.force_login(outsider)
    answer = client.get(gallery.address(row, 1))
    assert (answer.status_code, answer["Content-Type"], answer.content[8:12]) == (200, "image/webp", b"WEBP")
    assert answer["Cache-Control"] == "private, max-age=31536000, immutable"
    assert made(rendered) == 1
    again = client.get(gallery.address(row, 1), headers={"If-None-Match": answer["ETag"]})
    assert (again.status_code, again.content) == (304, b"")
    assert client.head(gallery.address(row, 1)).status_code == 200


def test_each_place_of_the_lamp_is_a_picture_of_its_own(client, outsider, row):
    client.force_login(outsider)
    one, other = (client.get(gallery.address(row, number)).content for number in (1, 2))
    assert one != other


def test_what_nobody_hung_is_not_found_and_renders_nothing(client, outsider, row, rendered):
    client.force_login(outsider)
    forged = row.code[:-1] + ("A" if row.code[-1] != "A" else "B")
    addresses = [f"/pictures/{forged}/1.webp", f"/pictures/{row.code}/0.webp", f"/pictures/{row.code}/3.webp"]
    addresses += [f"/pictures/{row.code}/{10**40}.webp", f"/pictures/{row.code}/-1.webp", f"/pictures/{row.code}/"]
    addresses += [f"/pictures/{row.code}/1.png", f"/pictures/{row.code}/1.webp/", "/pictures/../1.webp", "/pictures/"]
    addresses += [f"/pictures/{row.code.lower()}/1.webp", f"/pictures/{row.pk}/1.webp", "/pictures/swirl/1.webp"]
    assert {client.get(one).status_code for one in addresses} == {404}
    assert made(rendered) == 0


def test_what_is_asked_beside_the_address_changes_nothing(client, outsider, row, rendered):
    client.force_login(outsider)
    plain = client.get(gallery.address(row, 1)).content
    asked = client.get(gallery.address(row, 1) + "?lamp=0.1,0.1&size=1920&kind=swirl&light=raking").content
    assert (asked, made(rendered)) == (plain, 1)


def test_the_picture_of_an_attempt_is_for_its_owner_and_staff(client, outsider, instructor, rendered):
    row = gallery.hang(SCENE, "point", LAMPS, "paper", owner=outsider)
    answers = []
    for person in (PersonFactory(), outsider, instructor):
        client.force_login(person)
        answers.append((client.get(gallery.address(row, 1)).status_code, made(rendered)))
    assert answers == [(404, 0), (200, 1), (200, 1)]


def test_a_picture_asks_who_you_are(client, row, rendered):
    answer = client.get(gallery.address(row, 1))
    assert (answer.status_code, answer.url.split("?")[0], made(rendered)) == (302, "/account/login/", 0)


def test_while_too_many_are_made_it_says_when_to_ask_again(client, outsider, row, monkeypatch):
    def busy(self, exposure, wait_s=0):
        raise DarkroomBusy(5)

    monkeypatch.setattr(Darkroom, "picture", busy)
    client.force_login(outsider)
    answer = client.get(gallery.address(row, 1))
    assert (answer.status_code, answer["Retry-After"], answer["Cache-Control"]) == (503, "5", "no-store")


def test_a_picture_takes_nothing(client, outsider, row):
    client.force_login(outsider)
    assert client.post(reverse("picture", args=[row.code, 1])).status_code == 405


@pytest.mark.parametrize(("purpose", "most"), [("lesson", 4), ("paper", 4)])
def test_a_picture_asks_the_database_little(client, outsider, django_assert_max_num_queries, purpose, most):
    """Session, person, school, row: the picture itself is a file."""
    row = gallery.hang(SCENE, "point", LAMPS[:1], purpose, owner=outsider if purpose == "paper" else None)
    client.force_login(outsider)
    client.get(gallery.address(row, 1))
    row.measured = {"1": []}
    row.save()
    with django_assert_max_num_queries(most):
        client.get(gallery.address(row, 1))
