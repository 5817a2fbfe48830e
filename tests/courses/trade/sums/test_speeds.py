"""The sums of rubbing speed: arithmetic of a circle, done again by counting turns."""

from math import hypot, pi

import pytest

from courses.trade.sums import work_out


def figures(name: str, **inputs: object) -> list[float]:
    result = work_out(name, inputs)
    return [one.value for one in (result.output, *result.also)]


def test_the_rim_runs_its_circumference_at_every_turn() -> None:
    edge, mean, road = figures("edge_speed", pad_mm=200, speed_rpm=1500)
    assert edge == pytest.approx(pi * 0.2 * 25, abs=0.005)  # 1500 a minute are 25 a second
    assert mean == pytest.approx(edge * 2 / 3, abs=0.006)
    assert road == pytest.approx(edge * 3600 / 1000, abs=0.1)


def test_the_mean_is_that_of_all_rings_of_a_pad() -> None:
    """Two thirds: rings of 1 µm of radius, each weighed with its own length."""
    rings = range(1, 1001)
    mean = sum(ring * ring for ring in rings) / sum(rings) / 1000
    edge, of_pad, _road = figures("edge_speed")
    assert of_pad / edge == pytest.approx(mean, abs=0.002)


def test_over_1800_a_rotary_is_warned_of() -> None:
    assert work_out("edge_speed", {"speed_rpm": 1800}).notes == ()
    assert str(work_out("edge_speed", {"speed_rpm": 1801}).notes[0]).startswith("Over 1800")


def test_two_machines_may_rub_alike() -> None:
    first, spin, both = figures("orbit_speed", orbit_mm=15, speed_rpm=4800)
    assert first == figures("orbit_speed", orbit_mm=8, speed_rpm=9000)[0] == 3.77
    assert spin == pytest.approx(2 / 3 * pi * 0.15 * 5, abs=0.005)
    assert both == pytest.approx(hypot(first, spin), abs=0.01)


def test_a_pad_that_stands_still_does_not_rub() -> None:
    assert figures("orbit_speed", speed_rpm=0, spin_rpm=0) == [0.0, 0.0, 0.0]
    assert figures("edge_speed", speed_rpm=0) == [0.0, 0.0, 0.0]
