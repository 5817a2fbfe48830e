"""Where drops stood."""

import numpy as np

from courses.pictures.drops import Drops, drops
from courses.trade.surfaces import Catalogue
from tests.courses.pictures.films import PATCH, WHOLE, chance, film, plate_of
from tests.courses.pictures.trade import catalogue


def dried(severity: float, box: tuple[float, ...] = WHOLE, light: str = "point") -> Drops:
    """Return the drops of a region."""
    plate = plate_of(film("water_spots_mineral", severity, box=box), light)
    return drops(plate.defect, plate, chance())


def lobes(found: Drops, first: int, last: int) -> np.ndarray:
    """Return which drops have any of these lobes."""
    return (found.blots.r[:, first:last] > 0).any(1)


def test_worse_means_more_of_them_and_the_old_ones_stay() -> None:
    few, many = dried(0.2), dried(0.9)
    assert 2 * len(few.force) < len(many.force)
    old = {tuple(place) for place in np.c_[few.blots.x[:, 0], few.blots.y[:, 0]]}
    assert old <= {tuple(place) for place in np.c_[many.blots.x[:, 0], many.blots.y[:, 0]]}


def test_some_have_run_together_and_a_few_have_run_down() -> None:
    found = dried(0.9)
    assert 0.10 < lobes(found, 4, 6).mean() < 0.35
    assert 0.01 < lobes(found, 6, 28).mean() < 0.15


def test_a_trail_lies_above_the_drop_it_was_left_by() -> None:
    found = dried(0.9)
    ran = lobes(found, 6, 28)
    assert (found.blots.y[ran, 27] < found.blots.y[ran, 0]).all()
    assert (found.blots.r[ran, 27] < found.blots.r[ran, 0]).all()


def test_they_stay_in_their_region() -> None:
    found = dried(0.9, PATCH)
    u, v = found.plate.stand.to_picture(found.blots.x[:, 0], found.blots.y[:, 0])
    assert np.abs(np.array([u, v]) - 0.5).max() < 0.38


def test_the_catalogue_calls_them_thin_so_that_cells_are_counted_by_a_fingertip() -> None:
    trade: Catalogue = catalogue()
    assert [trade.kinds[f"water_spots_{kind}"].thin for kind in ("mineral", "etched")] == [True, True]
