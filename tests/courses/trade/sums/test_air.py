"""The five first sums: the figures, the companions and what they add in words."""

import pytest

from courses.trade.sums import work_out


def figures(name: str, **inputs: object) -> dict[str, float]:
    result = work_out(name, inputs)
    return {one.name: one.value for one in (result.output, *result.also)}


def notes(name: str, **inputs: object) -> list[str]:
    return [str(note).split(":")[0] for note in work_out(name, inputs).notes]


@pytest.mark.parametrize(("t", "rh", "dew"), [(20, 50, 9.26), (25, 75, 20.26), (10, 90, 8.43), (10, 50, 0.05)])
def test_dew_point_gives_the_lowest_surface_too(t: float, rh: float, dew: float) -> None:
    # D17, D27, D06, D04
    assert figures("dew_point", air_degc=t, air_rh=rh) == {
        "dew_point_degc": dew,
        "lowest_surface_degc": pytest.approx(dew + 3),
    }


def test_the_worked_example_of_lesson_24() -> None:
    shaded = figures("dew_margin", air_degc=18, air_rh=65, surface_degc=13.0)
    assert shaded == {
        "dew_margin_k": 1.68,
        "dew_point_degc": 11.32,
        "surface_rh": pytest.approx(89.5, abs=0.1),
        "water_content_gkg": pytest.approx(8.3, abs=0.1),
    }
    assert figures("dew_margin", air_degc=18, air_rh=65, surface_degc=17.0)["dew_margin_k"] == 5.68


def test_margin_and_dew_point_add_up_to_the_surface() -> None:
    for rh in range(30, 100, 7):
        found = figures("dew_margin", air_degc=19.3, air_rh=rh, surface_degc=14.6)
        assert found["dew_margin_k"] + found["dew_point_degc"] == pytest.approx(14.6, abs=1e-9)


def test_humidity_at_the_surface_comes_with_dew_point_and_margin() -> None:
    found = figures("surface_rh", air_degc=22, air_rh=60, surface_degc=16)  # C06
    assert found["surface_rh"] == pytest.approx(87.24, abs=0.02)
    assert found["dew_margin_k"] == pytest.approx(16 - found["dew_point_degc"])


def test_water_content_takes_the_pressure_of_the_sea_unless_told() -> None:
    plain = figures("water_content", air_degc=20, air_rh=50)
    assert plain == figures("water_content", air_degc=20, air_rh=50, pressure_hpa=1013.25)
    assert (
        plain["water_content_gkg"]
        < figures("water_content", air_degc=20, air_rh=50, pressure_hpa=850)["water_content_gkg"]
    )


@pytest.mark.parametrize(
    ("inputs", "reading", "error"),
    [
        ({"surface_degc": 12, "around_degc": 22, "emissivity": 0.28}, 19.15, 7.15),
        ({"surface_degc": 12, "around_degc": 22, "emissivity": 0.90}, 12.55, 0.55),
        ({"surface_degc": 40, "around_degc": 22, "emissivity": 0.28}, 27.61, -12.39),
        ({"surface_degc": 15, "around_degc": -30, "emissivity": 0.90, "instrument_degc": 15}, 11.22, -3.78),
        ({"surface_degc": 11, "around_degc": 21, "emissivity": 0.28}, 18.15, 7.15),
    ],
)
def test_infrared_gives_the_error_too(inputs: dict[str, object], reading: float, error: float) -> None:
    # C52, C53, the hot rail, gel coat under clear sky, the worked example of L25 (printed there as 18.2)
    assert figures("infrared_reading", **inputs) == {
        "reading_degc": pytest.approx(reading, abs=0.006),
        "error_k": pytest.approx(error, abs=0.006),
    }


def test_frost_and_settling_water_are_said() -> None:
    frost = "Below 0\xa0°C this is the dew point of liquid water; frost settles at a slightly higher temperature."
    settles = "The surface is at or below the dew point"
    assert frost in notes("dew_point", air_degc=5, air_rh=60)
    assert frost not in notes("dew_point", air_degc=5, air_rh=85)
    assert settles in notes("dew_margin", air_degc=20, air_rh=80, surface_degc=10)
    assert settles in notes("surface_rh", air_degc=20, air_rh=80, surface_degc=10)
    assert notes("dew_margin", air_degc=20, air_rh=50, surface_degc=20) == []
    assert notes("surface_rh", air_degc=20, air_rh=50, surface_degc=20) == []


def test_a_mirror_is_said_where_it_moves_the_reading_by_a_degree() -> None:
    assert len(notes("infrared_reading", surface_degc=12, around_degc=22, emissivity=0.28)) == 1
    assert notes("infrared_reading", surface_degc=12, around_degc=22, emissivity=0.90) == []
