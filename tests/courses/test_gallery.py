"""The gallery: what is hung may be looked at, under a code that tells nothing; nothing else can be rendered."""

import re
import time

import pytest

from courses import gallery
from courses.darkroom import Darkroom
from courses.models import HungPicture
from courses.models.picture import Purpose
from courses.pictures import LIGHTS, SceneRefused
from courses.pictures.lookalikes import SHADES
from courses.shipped import catalogue, pictures
from tests.factories import PersonFactory

pytestmark = pytest.mark.django_db
SCENE = {
    "substrate": "gel_coat",
    "colour": "navy",
    "size": [96, 64],
    "seed": 3,
    "defects": [{"kind": "swirl", "severity": 0.6}],
}
LAMPS = [(0.3, 0.42), (0.5, 0.42), (0.7, 0.42)]
SEEN = [{"kind": "swirl", "cnr": 9.0, "rms_dl": 4.0, "area": 0.5}]


class Told:
    """Renders by writing down what was asked for."""

    def __init__(self):
        self.asked = []

    def shoot(self, exposure):
        self.asked.append(exposure)
        return b"picture"

    def measure(self, exposure):
        return SEEN


@pytest.fixture
def easel(monkeypatch, tmp_path):
    """A darkroom that renders nothing, and what it was asked for."""
    easel = Told()
    room = Darkroom(tmp_path / "pictures", 1_000_000, 1, easel)
    monkeypatch.setattr(gallery, "darkroom", lambda: room)
    return easel


def test_a_picture_hangs_once(school):
    rows = [gallery.hang(SCENE, "point", LAMPS, "lesson") for _time in range(2)]
    assert rows[0] == rows[1]
    assert HungPicture.objects.get().lamps == [[0.3, 0.42], [0.5, 0.42], [0.7, 0.42]]


def test_what_is_left_out_and_what_is_said_by_default_is_one_picture(school):
    short = {"substrate": "gel_coat", "colour": "navy", "size": [96, 64], "seed": 3, "defects": []}
    told = {**short, "curve": "flat", "removed_um": 0, "trail_um": 0, "tail_um": 0}
    assert gallery.hang(short, "point", LAMPS, "lesson") == gallery.hang(told, "point", LAMPS, "lesson")


def test_every_other_picture_has_another_code(school):
    person, other = PersonFactory(), PersonFactory()
    rows = [
        gallery.hang(SCENE, "point", LAMPS, "lesson"),
        gallery.hang(SCENE, "raking", LAMPS, "lesson"),
        gallery.hang(SCENE, "point", LAMPS[:2], "lesson"),
        gallery.hang({**SCENE, "seed": 4}, "point", LAMPS, "lesson"),
        gallery.hang(SCENE, "point", LAMPS, "paper", owner=person),
        gallery.hang(SCENE, "point", LAMPS, "paper", owner=other),
    ]
    assert len({row.code for row in rows}) == len(rows)


def test_a_code_is_of_this_installation_and_of_its_renderer(settings, monkeypatch):
    codes = [gallery.sheet(SCENE, "point", LAMPS, "lesson").code]
    monkeypatch.setattr(gallery, "RENDERER", 2)
    codes.append(gallery.sheet(SCENE, "point", LAMPS, "lesson").code)
    settings.SECRET_KEY = "another-secret-of-another-school"
    codes.append(gallery.sheet(SCENE, "point", LAMPS, "lesson").code)
    assert len(set(codes)) == 3
    assert all(re.fullmatch(r"[A-Za-z0-9_-]{32}", code) for code in codes)


def test_an_address_tells_nothing_of_the_panel(school):
    address = gallery.address(gallery.hang(SCENE, "point", LAMPS, "lesson"), 2)
    assert re.fullmatch(r"/pictures/[A-Za-z0-9_-]{32}/2\.webp", address)


@pytest.mark.parametrize(
    "change",
    [{"defects": [{"kind": "swril"}]}, {"size": [9, 9]}, {"colour": "no such"}, {"seed": "1"}, {"more": 1}],
)
def test_a_scene_that_cant_be_rendered_isnt_hung(school, change):
    with pytest.raises(SceneRefused):
        gallery.hang({**SCENE, **change}, "point", LAMPS, "lesson")
    assert not HungPicture.objects.exists()


@pytest.mark.parametrize(
    ("light", "lamps"),
    [
        ("sun", LAMPS),
        ("point", []),
        ("point", [(0.5, 0.42)] * 13),
        ("point", [(float("nan"), 0.5)]),
        ("point", [(9.0, 0.5)]),
    ],
)
def test_a_light_or_lamp_that_cant_be_is_refused_with_what_can(school, light, lamps):
    with pytest.raises(gallery.PictureRefused, match=r"Use one of|1 to 12 lamp places"):
        gallery.hang(SCENE, light, lamps, "lesson")


def test_what_is_shipped_hangs_once_however_often_setup_runs(school):
    of_lookalikes = (len(catalogue().kinds) + 1) * len(SHADES) * len(LIGHTS)
    assert gallery.hang_shipped() == HungPicture.objects.count()
    assert gallery.hang_shipped() == 0
    assert HungPicture.objects.filter(purpose=Purpose.LOOKALIKE).count() == of_lookalikes
    assert HungPicture.objects.filter(purpose=Purpose.LESSON).count() == len(pictures())


def test_every_address_of_a_lesson_leads_to_what_is_hung(school, django_assert_num_queries):
    gallery.hang_shipped()
    with django_assert_num_queries(0):
        frames = [gallery.lesson_frame([code]) for code in pictures()]
    hung = {address(row) for row in HungPicture.objects.filter(purpose=Purpose.LESSON)}
    assert {one.places[0].url for one in frames} == hung
    assert [one.alt for one in frames] == [one.alt for one in pictures().values()]


def address(row):
    return gallery.address(row, 1)


def test_a_frame_is_what_a_page_needs(school):
    row = gallery.hang(SCENE, "point", LAMPS, "lesson")
    frame = gallery.frame(row, "A panel.", "Panel 1")
    assert (frame.alt, frame.caption, frame.width, frame.height) == ("A panel.", "Panel 1", 96, 64)
    assert [(one.number, one.words) for one in frame.places] == [(1, "left"), (2, "middle"), (3, "right")]
    assert (frame.current, frame.here.url, frame.count) == (2, gallery.address(row, 2), 3)
    assert gallery.frame(row, "", "", current=3).current == 3


def test_pictures_side_by_side_share_a_lamp_and_keep_their_own_controls(school):
    rows = [gallery.hang({**SCENE, "seed": seed}, "point", LAMPS, "lesson") for seed in (1, 2)]
    one, other = (gallery.frame(row, "A panel.", f"Panel {row.pk}") for row in rows)
    assert gallery.together([one, other]).all == (gallery.together([one, other]), other)
    assert one.key != other.key


@pytest.mark.parametrize(
    ("across", "words"),
    [
        ([0.5], ["middle"]),
        ([0.2, 0.8], ["left", "right"]),
        ([0.2, 0.4, 0.6, 0.8], ["far left", "left", "right", "far right"]),
        ([0.1, 0.3, 0.5, 0.7, 0.9], ["far left", "left", "middle", "right", "far right"]),
        ([0.1, 0.2, 0.3, 0.4, 0.5, 0.6], ["1", "2", "3", "4", "5", "6"]),
        ([0.8, 0.2], ["1", "2"]),
    ],
)
def test_a_place_of_the_lamp_is_told_in_neutral_words(across, words):
    assert list(gallery.place_words([(x, 0.4) for x in across])) == words


def test_a_picture_is_asked_for_as_it_hangs(school, easel):
    row = gallery.hang(SCENE, "point", LAMPS, "lesson")
    assert gallery.shown(row, 3).webp == b"picture"
    (asked,) = easel.asked
    assert (asked.scene, asked.light, asked.lamp, asked.measure) == (row.scene, "point", (0.7, 0.42), False)


@pytest.mark.parametrize("number", [0, 4, -1, 10**30])
def test_a_place_the_lamp_never_stands_at_is_none_and_renders_nothing(school, easel, number):
    assert gallery.shown(gallery.hang(SCENE, "point", LAMPS, "lesson"), number) is None
    assert easel.asked == []


def test_what_was_measured_in_the_picture_of_an_attempt_is_kept_with_it(school, easel):
    row = gallery.hang(SCENE, "point", LAMPS, "paper", owner=PersonFactory())
    for number in (1, 2):
        gallery.shown(row, number)
    names = [gallery._exposure(row, number).name for number in (1, 2)]
    for _wait in range(500):
        if all(gallery.darkroom().seen(name) for name in names):
            break
        time.sleep(0.01)
    gallery.shown(row, 2)
    row.refresh_from_db()
    assert row.measured == {"1": SEEN, "2": SEEN}


def test_when_an_attempt_closes_its_pictures_keep_what_was_measured(school, easel):
    row = gallery.hang(SCENE, "point", LAMPS[:1], "paper", owner=PersonFactory())
    gallery.shown(row, 1)
    exposure = gallery._exposure(row, 1)
    for _wait in range(500):
        if gallery.darkroom().seen(exposure.name):
            break
        time.sleep(0.01)
    assert gallery.gather([row.code, "a-code-nobody-hung"])[0].measured == {"1": SEEN}


def test_the_first_measure_stands(school, easel):
    row = gallery.hang(SCENE, "point", LAMPS[:1], "paper", owner=PersonFactory())
    row.measured = {"1": []}
    row.save()
    gallery.shown(row, 1)
    assert gallery.gather_measured(row).measured == {"1": []}


def tried(colour):
    """Return the rows of a small panel before and after a plan."""
    return gallery.tried_sheets([{**SCENE, "colour": colour}, {**SCENE, "colour": colour, "removed_um": 2.0}], "point")


def test_pictures_of_a_tried_plan_hang_when_somebody_asked_and_for_everybody(school):
    rows = tried("navy")
    assert not gallery.are_hung(rows)
    gallery.hang_tried(rows)
    gallery.hang_tried(rows)
    assert gallery.are_hung(rows)
    assert {row.owner for row in HungPicture.objects.filter(purpose="tried")} == {None}
    assert HungPicture.objects.count() == 2


def test_of_too_many_tried_plans_the_oldest_pictures_are_taken_down(school, monkeypatch):
    monkeypatch.setattr(gallery, "MOST_TRIED", 4)
    for colour in ("navy", "black", "red"):
        gallery.hang_tried(tried(colour))
    assert [gallery.are_hung(tried(colour)) for colour in ("navy", "black", "red")] == [False, True, True]
