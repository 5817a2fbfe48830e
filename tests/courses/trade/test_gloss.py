"""Gloss against printed constants, a library of thin-film optics, and scattering worked out by other means.

Numbers 22 to 34 are check values of the product's own fact sheet on surfaces; where they rest on the receptor's
openings, those are from memory.
"""

from math import cos, erf, inf, radians

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tmm import coh_tmm

from courses.trade import gloss
from courses.trade.errors import ImpossibleChoice, OutOfRange

INDICES = (1.46, 1.50, 1.54, 1.55, 1.56, 1.567)
ANGLES = (0.0, 20.0, 45.0, 60.0, 75.0, 85.0)


@pytest.mark.parametrize("index", INDICES)
@pytest.mark.parametrize("angle", ANGLES)
def test_reflectance_is_that_of_a_thin_film_library(index: float, angle: float) -> None:
    """The package tmm 0.2: the mean of both polarisations at a bare surface between air and the film."""
    theirs = [coh_tmm(way, [1.0, index], [inf, inf], radians(angle), 0.55)["R"] for way in "sp"]
    assert gloss.reflectance(index, angle) == pytest.approx(sum(theirs) / 2, abs=1e-12)


@pytest.mark.parametrize(
    ("index", "angle", "share"),
    [(1.50, 0.0, 0.0400), (1.567, 20.0, 0.04908), (1.567, 60.0, 0.10006), (1.567, 85.0, 0.61915)],
)
def test_reflectance_of_the_fact_sheet(index: float, angle: float, share: float) -> None:
    assert gloss.reflectance(index, angle) == pytest.approx(share, abs=6e-6)  # 22 to 25


def test_light_that_grazes_is_mirrored_whole() -> None:
    assert gloss.reflectance(1.5, 90.0) == pytest.approx(1.0)


@pytest.mark.parametrize("angle", gloss.RECEPTORS)
def test_black_glass_reads_a_hundred(angle: int) -> None:
    assert gloss.gloss(gloss.STANDARD_INDEX, 0.0, 3.0, angle) == pytest.approx(100.0)  # ISO 2813


@pytest.mark.parametrize(
    ("index", "g20", "g60", "g85"),
    [
        (1.46, 71.8, 82.4, 98.2),
        (1.50, 82.0, 89.1, 99.0),  # 27
        (1.54, 92.7, 95.7, 99.6),
        (1.55, 95.4, 97.3, 99.8),  # 26
        (1.56, 98.1, 98.9, 99.9),
    ],
)
def test_smooth_films_read_less_than_the_standard(index: float, g20: float, g60: float, g85: float) -> None:
    read = [gloss.smooth_gloss(index, angle) for angle in (20, 60, 85)]
    assert read == pytest.approx([g20, g60, g85], abs=0.051)


def test_a_thousandth_of_index_is_a_quarter_of_a_unit_at_20_degrees() -> None:
    steps = [gloss.smooth_gloss(1.567, angle) - gloss.smooth_gloss(1.566, angle) for angle in (20, 60, 85)]
    assert steps == pytest.approx([0.27, 0.16, 0.013], abs=0.006)  # 28


@pytest.mark.parametrize(
    ("rq", "at20", "at60", "at85"),  # the fact sheet's table, 550 nm; 29 and 30 among them
    [
        (0.005, 0.9885, 0.9967, 0.9999),
        (0.010, 0.9550, 0.9870, 0.9996),
        (0.020, 0.8316, 0.9491, 0.9984),
        (0.050, 0.3159, 0.7216, 0.9901),
        (0.100, 0.0100, 0.2712, 0.9611),
        (0.200, 0.0000, 0.0054, 0.8533),
    ],
)
def test_the_share_still_mirrored(rq: float, at20: float, at60: float, at85: float) -> None:
    shares = [gloss.coherent_share(rq, angle) for angle in (20, 60, 85)]
    assert shares == pytest.approx([at20, at60, at85], abs=6e-5)


def test_bennett_and_porteus_at_normal_incidence() -> None:
    assert gloss.scattered_share(0.010, 0.0) == pytest.approx(0.0509, abs=6e-5)  # 31
    # Below a hundredth of the wavelength the scattered share is (4π·rq ÷ λ)²: their formula for small roughness.
    assert gloss.scattered_share(0.001, 0.0) == pytest.approx((4 * 3.14159265 * 0.001 / 0.55) ** 2, rel=3e-4)


def test_half_is_still_mirrored_at_60_degrees_from_73_nanometres() -> None:
    assert gloss.coherent_share(0.0729, 60.0) == pytest.approx(0.5, abs=0.001)  # 32


@pytest.mark.parametrize(
    ("rq", "short", "long", "haze"),  # index 1.55: 20, 60, 85° over 3 and over 10 µm; haze over 3 µm
    [
        (0.005, (94.4, 97.1, 99.8), (95.1, 97.3, 99.8), 0.3),
        (0.010, (91.7, 96.5, 99.7), (94.3, 97.1, 99.7), 1.0),
        (0.020, (81.7, 94.1, 99.6), (91.2, 96.7, 99.6), 3.6),
        (0.030, (67.5, 90.2, 99.4), (86.2, 95.9, 99.5), 7.0),
        (0.050, (37.7, 79.3, 98.8), (71.9, 93.3, 99.0), 12.0),  # 33
        (0.075, (14.0, 62.4, 97.7), (51.6, 88.3, 98.0), 11.6),
        (0.100, (5.4, 46.2, 96.1), (35.0, 81.5, 96.6), 7.9),
        (0.200, (0.9, 13.5, 85.8), (9.8, 51.7, 87.9), 1.9),
    ],
)
def test_gloss_and_haze_of_the_fact_sheets_table(
    rq: float, short: tuple[float, ...], long: tuple[float, ...], haze: float
) -> None:
    assert [gloss.gloss(1.55, rq, 3.0, angle) for angle in (20, 60, 85)] == pytest.approx(short, abs=0.06)
    assert [gloss.gloss(1.55, rq, 10.0, angle) for angle in (20, 60, 85)] == pytest.approx(long, abs=0.06)
    assert gloss.haze(1.55, rq, 3.0) == pytest.approx(haze, abs=0.06)


@pytest.mark.parametrize(
    ("rq", "corr", "angle", "share"),
    [(0.05, 8.0, 20, 0.6649), (0.30, 10.0, 60, 0.3568)],
)
def test_the_series_agrees_with_random_surfaces(rq: float, corr: float, angle: int, share: float) -> None:
    """The shares were found by Fourier transform of random phase screens, independent code, ±0.0006."""
    assert gloss.caught_share(rq, corr, angle) == pytest.approx(share, rel=0.012)


@pytest.mark.parametrize("angle", [20, 60])
def test_a_very_rough_film_scatters_by_its_slopes_alone(angle: int) -> None:
    """Geometry, not the series: a facet tilted by δ turns light by 2δ, slopes are Gaussian with Beckmann's width."""
    rq, corr = 1.5, 40.0
    width = gloss.slope_width(rq, corr)
    along, across = (radians(opening) / 2 for opening in gloss.RECEPTORS[angle])
    upright = cos(radians(angle))
    expected = erf(along / 2 / width) * erf(across / (2 * upright) / width)
    assert gloss.caught_share(rq, corr, angle) == pytest.approx(expected, rel=0.02)


def test_the_highlight_of_a_finish_is_as_wide_as_its_gloss_says() -> None:
    """What ties a rendered lamp to a quoted figure: wider slopes over one length, less gloss, step by step."""
    films = [(0.003, 3.0), (0.006, 3.0), (0.03, 3.0), (0.1, 3.0)]
    widths = [gloss.slope_width(*film) for film in films]
    at20 = [gloss.gloss(1.5, *film, 20) for film in films]
    assert widths == pytest.approx([0.002, 0.004, 0.02, 0.0667], abs=1e-4)
    assert widths == sorted(widths)
    assert at20 == sorted(at20, reverse=True)


def test_haze_is_no_measure_of_roughness() -> None:
    assert gloss.haze(1.55, 0.02, 3.0) < gloss.haze(1.55, 0.05, 3.0) > gloss.haze(1.55, 0.1, 3.0)


def test_roughness_alone_does_not_fix_gloss() -> None:
    assert gloss.gloss(1.55, 0.05, 10.0, 60) - gloss.gloss(1.55, 0.05, 3.0, 60) == pytest.approx(14.0, abs=0.1)


@pytest.mark.parametrize(("read", "angle"), [(88.0, 20), (70.0, 60), (10.0, 60), (6.0, 85)])
def test_the_angle_follows_from_the_reading_at_60(read: float, angle: int) -> None:
    assert gloss.geometry(read) == angle  # 34, ASTM D523


@given(st.floats(1.3, 1.567), st.floats(0.0, 0.12), st.floats(0.5, 30.0))
def test_gloss_never_passes_that_of_the_smooth_film(index: float, rq: float, corr: float) -> None:
    for angle in gloss.RECEPTORS:
        assert 0 <= gloss.gloss(index, rq, corr, angle) <= gloss.smooth_gloss(index, angle) * (1 + 1e-9)


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: gloss.reflectance(0.9, 20.0), "index: 0.9 lies outside 1.3 to 2.5; give a value within."),
        (lambda: gloss.reflectance(1.5, 91.0), "angle_deg: 91° lies outside 0° to 90°; give a value within."),
        (
            lambda: gloss.coherent_share(-0.1, 0.0),
            "rq_um: −0.1\xa0µm lies outside 0\xa0µm to 2\xa0µm; give a value within.",
        ),
        (lambda: gloss.caught_share(0.5, 1.0, 60), "corr_um: A roughness of 0.5 µm over 1 µm is too steep"),
        (lambda: gloss.slope_width(0.5, 1.0), "corr_um: A roughness of 0.5 µm over 1 µm is too steep"),
    ],
)
def test_what_lies_outside_is_refused(call, sentence: str) -> None:
    with pytest.raises(OutOfRange) as refusal:
        call()
    assert str(refusal.value).startswith(sentence)


def test_a_glossmeter_has_three_angles() -> None:
    with pytest.raises(ImpossibleChoice, match="A glossmeter reads at 20, 60 or 85°, not at 45°"):
        gloss.gloss(1.5, 0.01, 3.0, 45)
