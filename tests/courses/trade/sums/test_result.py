"""A result, as the door prints it and as a person reads it."""

from courses.trade.sums import work_out
from courses.trade.units import Preferences


def test_the_door_prints_exactly_its_shape() -> None:
    assert work_out("dew_point", {"air_degc": 20, "air_rh": 50}).as_json() == {
        "name": "dew_point",
        "title": "Dew point",
        "inputs": {"air_degc": 20.0, "air_rh": 50.0},
        "output": {"value": 9.26, "unit": "degc"},
        "also": [{"name": "lowest_surface_degc", "value": 12.26, "unit": "degc"}],
        "formula": "Td = 243.04·g ÷ (17.625 − g), g = ln(RH ÷ 100) + 17.625·T ÷ (243.04 + T), in °C",
        "source": "alduchov-eskridge-1996",
        "mark": "calc",
        "notes": [
            "With meters off by 0.5\xa0K and 3\xa0% the dew point is known to about ±1.3\xa0K.",
            "The lowest surface is 3.0\xa0K above the dew point: "
            "the common rule, read by us in guides, not in its standard.",
        ],
    }


def test_a_person_reads_a_result_in_their_own_units() -> None:
    result = work_out("dew_margin", {"air_degc": "64.4", "air_rh": "65", "surface_degc": "55.4"}, Preferences.us())
    said = result.shown(Preferences.us())
    assert [(line.name, line.text) for line in (said.output, *said.also)] == [
        ("dew_margin_k", "3.0\xa0°F"),
        ("dew_point_degc", "52.4\xa0°F"),
        ("surface_rh", "90\xa0%"),
        ("water_content_gkg", "8.3\xa0g/kg"),
    ]
    assert [line.text for line in said.inputs] == ["64.4\xa0°F", "65\xa0%", "55.4\xa0°F"]
    assert said.uncertainty.startswith(
        "With meters off by 0.9\xa0°F and 3\xa0% the dew point alone moves it by ±2.1\xa0°F"
    )


def test_a_difference_shown_is_that_of_the_two_numbers_shown() -> None:
    # 13.0 − 11.25 is 1.75, shown as 1.8; but 11.25 is shown as 11.3, and 13.0 − 11.3 is 1.7.
    result = work_out("dew_margin", {"air_degc": 17.92, "air_rh": 65, "surface_degc": 13.0})
    said = result.shown(Preferences.metric())
    surface, dew, margin = (
        float(text.split("\xa0")[0]) for text in (said.inputs[2].text, said.also[0].text, said.output.text)
    )
    assert margin == round(surface - dew, 1)


def test_an_input_left_out_for_good_is_not_shown() -> None:
    said = work_out("infrared_reading", {"surface_degc": 12, "around_degc": 22, "emissivity": 0.28}).shown(
        Preferences.metric()
    )
    assert [line.name for line in said.inputs] == ["surface_degc", "around_degc", "emissivity", "set_emissivity"]
    assert (said.output.text, said.also[0].text) == ("19.2\xa0°C", "7.2\xa0K")


def test_a_figure_knows_its_name_title_and_unit() -> None:
    figure = work_out("dew_point", {"air_degc": 20, "air_rh": 50}).output
    assert (figure.name, figure.title, figure.unit, figure.value) == ("dew_point_degc", "Dew point", "degc", 9.26)


def test_a_length_of_the_model_stays_a_model_micrometre_for_everybody() -> None:
    asked = {"layer_um": 10, "removed_um": 12, "spread": 0.3}
    said = [work_out("oxidation_left", asked).shown(prefs) for prefs in (Preferences.metric(), Preferences.us())]
    assert said[0] == said[1]
    assert said[0].also[0].text == "14.9\xa0model\xa0µm"
    assert said[0].inputs[0].text == "10\xa0µm"
    assert work_out("removal", {}).shown(Preferences.us()).uncertainty.endswith("±1.2\xa0model\xa0µm at best.")


def test_somebody_who_reads_mils_types_model_lengths_in_micrometres() -> None:
    asked = {"layer_um": "10", "removed_um": "12", "spread": "0.3"}
    assert work_out("oxidation_left", asked, Preferences.us()).value == 25.2
