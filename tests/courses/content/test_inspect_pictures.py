"""What lessons say of their own pictures is measured in these pictures again."""

from courses.pictures import Panel
from courses.pictures.colour import lightness
from courses.pictures.features import band_energy, glint_geometry
from tests.courses.content.reading import LISTED, panel_of, plain


def measured_at(code: str) -> list[tuple[float, float]]:
    """Evenness and strength of bands at the first, the middle and the last place of the lamp."""
    panel = Panel.build(panel_of(code), "point")
    found = []
    for lamp in LISTED[code].lamps[::3]:
        with_marks, without = (panel.shoot(lamp, without=frozenset(gone)).rgb for gone in ((), (0,)))
        change = lightness(with_marks) - lightness(without)
        found.append((glint_geometry(change, lamp)[1], band_energy(change, lamp)))
    return found


def test_the_swirls_of_l03_are_as_even_as_it_says():
    for evenness, bands in measured_at("swirl_navy"):
        assert evenness >= 0.97
        assert bands <= 0.7
    assert "Evenness 0.97 or more 0.87 or less" in plain("L03")


def test_the_hologram_of_l03_stands_in_bands_as_strong_as_it_says():
    for evenness, bands in measured_at("hologram_navy"):
        assert evenness <= 0.87
        assert bands >= 1.1, "a little weaker at a quarter of the pixels than the 1.2 of the page"
    assert "Bands 0.7 or less 1.2 or more" in plain("L03")
