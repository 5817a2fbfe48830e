"""What each pixel sees: the way there and back, areas, windows."""

import numpy as np
import pytest

from courses.pictures.camera import PANEL, STANDS, Camera, stand_for

SIZE = (96, 64)


@pytest.fixture(params=sorted(STANDS))
def camera(request: pytest.FixtureRequest) -> Camera:
    return Camera(stand_for(request.param, SIZE), SIZE)


def test_the_middle_of_the_picture_sees_the_middle_of_the_panel(camera: Camera) -> None:
    x, y = camera.stand.to_panel(0.5, 0.5)
    assert (x, y) == pytest.approx((PANEL[0] / 2, PANEL[1] / 2))


def test_projecting_is_the_way_back(camera: Camera) -> None:
    px, py = camera.project(camera.x.astype(float), camera.y.astype(float))
    assert px == pytest.approx(np.broadcast_to(np.arange(96), (64, 96)), abs=1e-3)
    assert py == pytest.approx(np.broadcast_to(np.arange(64)[:, None], (64, 96)), abs=1e-3)


def test_the_homography_is_the_same_map(camera: Camera) -> None:
    a, b, c, d, e, f, g, h = camera.stand.homography(SIZE[0])
    i, j = (np.arange(96) + 0.5)[None, :], (np.arange(64) + 0.5)[:, None]
    lean = 1 + g * i + h * j
    assert (a * i + b * j + c) / lean == pytest.approx(camera.x, abs=1e-2)
    assert (d * i + e * j + f) / lean == pytest.approx(camera.y, abs=1e-2)


def test_a_pixel_covers_what_its_neighbours_leave(camera: Camera) -> None:
    wide, high = np.gradient(camera.x, axis=1), np.gradient(camera.y, axis=0)
    assert camera.pixel_area[1:-1] == pytest.approx((wide * high)[1:-1], rel=0.01)
    assert camera.pixel_mm == pytest.approx(np.sqrt(np.median(wide * high)), rel=0.02)


def test_the_view_is_a_unit_vector_to_the_lens(camera: Camera) -> None:
    vx, vy, vz, distance = camera.view(slice(10, 20))
    assert vx**2 + vy**2 + vz**2 == pytest.approx(np.ones((10, 96)), abs=1e-5)
    assert (camera.y[10:20] + vy * distance) == pytest.approx(np.full((10, 96), camera.stand.eye[1]), rel=1e-4)


def test_a_window_holds_the_circle_round_a_place(camera: Camera) -> None:
    window = camera.window(300.0, 200.0, 40.0)
    assert window is not None
    near = np.hypot(camera.x - 300, camera.y - 200) < 40
    inside = np.zeros_like(near)
    inside[window.at] = True
    assert inside[near].all()
    assert np.hypot(window.dx, window.dy).min() < 8


def test_there_is_no_window_outside(camera: Camera) -> None:
    assert camera.window(9000.0, 200.0, 40.0) is None


def test_places_are_drawn_and_looked_up_where_they_are_seen(camera: Camera) -> None:
    hit = camera.drawn(camera.x[5, 7:9], camera.y[5, 7:9])
    assert np.argwhere(hit).tolist() == [[5, 7], [5, 8]]
    assert camera.look_up(camera.x, camera.x[5, 7], camera.y[5, 7]) == camera.x[5, 7]
    assert not camera.drawn(np.array([9000.0]), np.array([200.0])).any()
