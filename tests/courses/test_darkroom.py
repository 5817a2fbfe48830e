"""The darkroom: each picture is made once, kept, found again, dropped when it is oldest; nobody waits for ever."""

import threading
import time

import pytest

from courses.darkroom import QUEUE, SEATS, Darkroom, DarkroomBusy, Easel, Exposure, Made, darkroom

SMALL = {"substrate": "gel_coat", "colour": "navy", "size": [96, 64], "seed": 3, "defects": [{"kind": "swirl"}]}
SEEN = [{"kind": "swirl", "cnr": 9.0, "rms_dl": 4.0, "area": 0.5}]


def exposure(place=0.5, seed=3, renderer=1, measure=False):
    """One lamp place of a small panel."""
    return Exposure({**SMALL, "seed": seed}, "point", (place, 0.42), renderer, measure)


def until(holds):
    """Wait for what another thread is about to do."""
    for _wait in range(500):
        if holds():
            return
        time.sleep(0.01)
    raise AssertionError("It did not come about within five seconds.")


class Slow:
    """Renders as told: counts, waits for a gate where there is one, breaks where it is asked to."""

    def __init__(self, size=1000):
        self.size, self.made, self.measured, self.gate, self.fault = size, [], [], None, None

    def shoot(self, one):
        if self.gate:
            assert self.gate.wait(10)
        if self.fault:
            raise self.fault
        self.made.append(one.name)
        return one.name[:1].encode() * self.size

    def measure(self, one):
        if self.fault:
            raise self.fault
        self.measured.append(one.name)
        return SEEN


@pytest.fixture
def slow():
    return Slow()


@pytest.fixture
def room(tmp_path, slow):
    return Darkroom(tmp_path / "pictures", 1_000_000, 1, slow)


def together(acts):
    """Run acts at the same time; return what each gave or raised, in their order."""
    found = [None] * len(acts)

    def run(place, act):
        try:
            found[place] = act()
        except Exception as wrong:
            found[place] = wrong

    threads = [threading.Thread(target=run, args=pair) for pair in enumerate(acts)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    return found


def test_a_picture_is_made_once_and_found_again(room, slow):
    first = room.picture(exposure())
    assert (room.picture(exposure()), slow.made) == (first, [exposure().name])
    assert first == Made(first.webp, None)


def test_pictures_outlive_the_process(room, slow, tmp_path):
    made = room.picture(exposure())
    other = Slow()
    assert (Darkroom(tmp_path / "pictures", 1_000_000, 1, other).picture(exposure()), other.made) == (made, [])


def test_a_name_is_of_all_that_a_picture_depends_on():
    names = {one.name for one in (exposure(), exposure(0.4), exposure(seed=4), exposure(renderer=2))}
    assert len(names) == 4
    assert exposure().panel == exposure(0.4).panel != exposure(seed=4).panel


def test_two_who_ask_for_one_picture_at_once_share_one_render(room, slow):
    slow.gate = threading.Event()
    threading.Timer(0.2, slow.gate.set).start()
    one, other = together([lambda: room.picture(exposure())] * 2)
    assert one == other
    assert slow.made == [exposure().name]


def test_two_processes_make_one_picture_once(room, slow, tmp_path):
    """A lock belongs to the open file, so two rooms of one folder meet as two processes do."""
    twin = Darkroom(tmp_path / "pictures", 1_000_000, 1, slow)
    slow.gate = threading.Event()
    threading.Timer(0.2, slow.gate.set).start()
    one, other = together([lambda: room.picture(exposure()), lambda: twin.picture(exposure())])
    assert one == other
    assert slow.made == [exposure().name]


def test_no_more_are_made_at_once_than_there_are_places(tmp_path):
    at_work, most = [], []

    class Counting(Slow):
        def shoot(self, one):
            at_work.append(one)
            most.append(len(at_work))
            time.sleep(0.05)
            at_work.remove(one)
            return b"x"

    rooms = [Darkroom(tmp_path, 1_000_000, 2, Counting()) for _process in range(4)]
    together([lambda room=room, seed=seed: room.picture(exposure(seed=seed)) for seed, room in enumerate(rooms)])
    assert (len(most), max(most)) == (4, 2)


def test_whoever_waits_too_long_is_told_when_to_ask_again_and_finds_it_made_then(room, slow):
    slow.gate = threading.Event()
    with pytest.raises(DarkroomBusy) as busy:
        room.picture(exposure(), wait_s=0.05)
    assert 2 <= busy.value.again_in_s <= 8
    slow.gate.set()
    assert room.picture(exposure()).webp
    assert slow.made == [exposure().name]


def test_only_so_many_wait_and_the_next_is_sent_away_at_once(room, slow):
    slow.gate = threading.Event()
    waiting = [threading.Thread(target=room.picture, args=[exposure(seed=seed)]) for seed in range(SEATS)]
    for thread in waiting:
        thread.start()
    until(lambda: not room._seats._value)
    began = time.monotonic()
    for seed in range(SEATS, SEATS + QUEUE + 5):
        with pytest.raises(DarkroomBusy):
            room.picture(exposure(seed=seed))
    assert time.monotonic() - began < 1
    slow.gate.set()
    for thread in waiting:
        thread.join()
    room.picture(exposure(seed=QUEUE - 1))
    assert len(slow.made) == QUEUE


def test_the_panel_that_stands_built_is_shot_before_another_is_built(room, slow):
    slow.gate = threading.Event()
    order = [exposure(0.3), exposure(0.3, seed=4), exposure(0.5)]
    for one in order:
        with pytest.raises(DarkroomBusy):
            room.picture(one, wait_s=0.02)
    slow.gate.set()
    until(lambda: len(slow.made) == 3)
    assert slow.made == [order[0].name, order[2].name, order[1].name]


def test_what_breaks_in_the_room_is_told_and_the_room_goes_on(room, slow):
    slow.fault = ZeroDivisionError("planted")
    with pytest.raises(ZeroDivisionError):
        room.picture(exposure())
    slow.fault = None
    assert room.picture(exposure()).webp


def test_what_was_asked_for_longest_ago_goes_first(tmp_path, slow):
    room = Darkroom(tmp_path, 3 * slow.size, 1, slow)
    for seed in range(3):
        room.picture(exposure(seed=seed))
        time.sleep(0.01)
    room.picture(exposure(seed=0))
    time.sleep(0.01)
    room.picture(exposure(seed=3))
    kept = [seed for seed in range(4) if room.find(exposure(seed=seed).name)]
    assert kept == [0, 2, 3]


def test_a_folder_too_small_for_one_picture_still_shows_it(tmp_path, slow):
    room = Darkroom(tmp_path, 10, 1, slow)
    assert room.picture(exposure()).webp
    assert room.picture(exposure(seed=4)).webp
    assert len(list(tmp_path.glob("*.webp"))) == 1


def test_a_picture_is_measured_after_it_was_shown_and_goes_with_its_numbers(tmp_path, slow):
    room = Darkroom(tmp_path, 1, 1, slow)
    one = exposure(measure=True)
    assert room.picture(one).seen is None
    until(lambda: room.seen(one.name))
    assert room.picture(one).seen == SEEN
    room.picture(exposure(seed=4))
    assert (room.find(one.name), room.seen(one.name)) == (None, None)


def test_half_a_measure_is_none_and_is_taken_again(room, slow, tmp_path):
    one = exposure(measure=True)
    room.picture(one)
    until(lambda: room.seen(one.name))
    (tmp_path / "pictures" / f"{one.name}.json").write_bytes(b"[{")
    assert room.picture(one).seen is None
    until(lambda: room.seen(one.name))
    assert slow.measured == [one.name] * 2


def test_a_measure_that_breaks_is_told_to_whoever_runs_the_site(room, slow, caplog):
    room.picture(exposure(measure=True))
    until(lambda: slow.measured)
    slow.fault = ZeroDivisionError("planted")
    room._measure_later(exposure(seed=4, measure=True))
    until(lambda: "could not be measured" in caplog.text)
    slow.fault = None
    assert room.picture(exposure(seed=5)).webp


def test_a_panel_is_built_once_for_its_lamp_places(monkeypatch):
    from courses import darkroom as module

    built = []
    build = module.Panel.build
    monkeypatch.setattr(module.Panel, "build", lambda scene, light: built.append(light) or build(scene, light))
    easel = Easel()
    left, right = easel.shoot(exposure(0.3)), easel.shoot(exposure(0.7))
    assert (len(built), left != right) == (1, True)
    easel.shoot(exposure(seed=4))
    assert len(built) == 2


def test_a_render_is_a_picture_and_its_measure_names_each_defect():
    easel = Easel()
    webp = easel.shoot(exposure())
    assert (webp[:4], webp[8:12]) == (b"RIFF", b"WEBP")
    (seen,) = easel.measure(exposure())
    assert (seen["kind"], sorted(seen)) == ("swirl", ["area", "cnr", "kind", "rms_dl"])


def test_a_process_has_one_room(settings, tmp_path):
    settings.PICTURES_ROOT = tmp_path
    assert darkroom() is darkroom()
    assert darkroom().folder == tmp_path
