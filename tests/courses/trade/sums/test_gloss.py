"""The three sums of gloss: their figures, and what they add in words."""

import pytest

from courses.trade.errors import OutOfRange
from courses.trade.sums import work_out
from courses.trade.units import Preferences


def figures(name: str, **inputs: object) -> list[float]:
    result = work_out(name, inputs)
    return [one.value for one in (result.output, *result.also)]


def test_gloss_is_given_at_every_angle_with_haze() -> None:
    # Fact sheet, index 1.55, 50 nm over 3 µm: 79.3, 37.7, 98.8, haze 12.0; smooth 97.3.
    assert figures("gloss", index=1.55, rq_nm=50, corr_um=3) == pytest.approx([79.3, 37.7, 98.8, 12.0, 97.3], abs=0.06)


@pytest.mark.parametrize(("rq_nm", "angle"), [(10, "20°"), (100, "that is the angle"), (400, "85°")])
def test_the_angle_to_read_at_is_said(rq_nm: float, angle: str) -> None:
    assert angle in str(work_out("gloss", {"index": 1.55, "rq_nm": rq_nm, "corr_um": 3}).notes[0])


def test_too_steep_a_film_is_refused() -> None:
    with pytest.raises(OutOfRange, match="too steep"):
        work_out("gloss", {"index": 1.5, "rq_nm": 500, "corr_um": 1})


def test_reflectance_says_what_a_smooth_film_reads() -> None:
    assert figures("reflectance", index=1.5, angle_deg=60) == pytest.approx([0.0892, 89.1], abs=0.05)
    said = work_out("reflectance", {"index": 1.5, "angle_deg": 60}).shown(Preferences.metric())
    assert (said.output.text, said.uncertainty) == ("0.089", "An index known to ±0.01 leaves about ±0.002.")
    assert len(said.notes) == 1
    assert work_out("reflectance", {"index": 1.6, "angle_deg": 60}).notes == ()
    assert work_out("reflectance", {"index": 2.5, "angle_deg": 0}).doubt > 0


def test_what_is_mirrored_and_what_is_thrown_aside_make_one() -> None:
    assert figures("coherent_share", rq_nm=50, angle_deg=60) == [0.7216, 0.2784]
    assert figures("coherent_share", rq_nm=50, angle_deg=20, wavelength_nm=550) == [0.3159, 0.6841]
    assert work_out("coherent_share", {"rq_nm": "0.05 µm", "angle_deg": "60°"}).value == 0.7216
