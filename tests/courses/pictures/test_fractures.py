"""The lines of cracks: where they start, how they run, that they stop where they meet."""

from itertools import combinations

import numpy as np
import pytest

from courses.pictures.fractures import Fracture, parallel, rings, star

HALF = (60.0, 45.0)
PATTERNS = (star, rings, parallel)


def crosses(one: Fracture, other: Fracture) -> bool:
    """Return whether two lines cross, tried pair by pair of their segments."""
    ax, ay, bx, by = one.x[:-1, None], one.y[:-1, None], one.x[1:, None], one.y[1:, None]
    cx, cy, dx, dy = other.x[:-1], other.y[:-1], other.x[1:], other.y[1:]
    bottom = (bx - ax) * (dy - cy) - (by - ay) * (dx - cx)
    bottom = np.where(np.abs(bottom) < 1e-12, np.nan, bottom)
    t = ((cx - ax) * (dy - cy) - (cy - ay) * (dx - cx)) / bottom
    u = ((cx - ax) * (by - ay) - (cy - ay) * (bx - ax)) / bottom
    return bool(((t > 1e-6) & (t < 1 - 1e-6) & (u > 1e-6) & (u < 1 - 1e-6)).any())


def headings(line: Fracture) -> np.ndarray:
    """Return the direction of each segment of a line."""
    return np.arctan2(np.diff(line.y), np.diff(line.x))


@pytest.mark.parametrize("pattern", PATTERNS)
@pytest.mark.parametrize("number", [901, 902, 903])
def test_lines_stop_where_they_meet_another(pattern, number):
    lines = pattern(np.random.default_rng(number), HALF, 0.7)
    assert not [pair for pair in combinations(range(len(lines)), 2) if crosses(lines[pair[0]], lines[pair[1]])]


@pytest.mark.parametrize("number", [911, 912])
def test_the_long_lines_of_a_star_run_away_from_its_middle(number):
    lines = star(np.random.default_rng(number), HALF, 0.7)
    rays = [line for line in lines if np.hypot(line.x[0], line.y[0]) < 3 and np.hypot(line.x[-1], line.y[-1]) > 15]
    assert len(rays) >= 5
    for ray in rays:
        outwards = np.arctan2(ray.y[-1] - ray.y[0], ray.x[-1] - ray.x[0]) - np.arctan2(ray.y[-1], ray.x[-1])
        assert abs(np.sin(outwards)) < 0.25
    assert any(np.hypot(line.x[0], line.y[0]) > 10 for line in lines), "none forks"


@pytest.mark.parametrize("number", [921, 922])
def test_rings_keep_their_distance_from_the_middle_and_are_broken(number):
    lines = rings(np.random.default_rng(number), (50.0, 50.0), 0.6)
    round_ = [line for line in lines if line.x.size > 20]
    spread = [np.ptp(np.hypot(line.x, line.y)) / np.hypot(line.x, line.y).mean() for line in round_]
    assert max(spread) < 0.35
    assert min(spread) > 0.0005, "a perfect circle"
    turns = [abs(np.unwrap(np.arctan2(line.y, line.x))[[0, -1]] @ (-1, 1)) for line in round_]
    assert max(turns) < 2 * np.pi


@pytest.mark.parametrize("number", [931, 932])
def test_parallel_lines_run_one_way_and_taper_to_nothing(number):
    lines = parallel(np.random.default_rng(number), HALF, 0.6)
    long = [line for line in lines if np.ptp(line.x) > 20]
    assert len(long) >= 5
    assert np.percentile([abs(np.median(headings(line))) for line in long], 75) < 0.2
    assert all(line.gape[-1] < 0.35 for line in long)
    assert sum(line.gape[0] < 0.35 for line in long) > 0.6 * len(long), "only forks begin wide"
    gaps = np.diff(sorted(float(np.median(line.y)) for line in long))
    assert gaps.std() > 0.15 * gaps.mean(), "evenly ruled"


@pytest.mark.parametrize("pattern", PATTERNS)
def test_worse_cracks_have_more_line(pattern):
    def length(severity: float) -> float:
        lines = [line for n in range(6) for line in pattern(np.random.default_rng(n), HALF, severity)]
        return sum(float(np.hypot(np.diff(line.x), np.diff(line.y)).sum()) for line in lines)

    assert length(0.1) < length(0.5) < length(1.0)


def test_a_line_cut_short_closes_at_its_new_end():
    line = Fracture(np.arange(10.0), np.zeros(10), np.ones(10))
    assert line.up_to(6).x.size == 6
    assert line.up_to(6).gape.tolist() == sorted(line.up_to(6).gape, reverse=True)
    assert line.up_to(6).gape[-1] == 0.25
