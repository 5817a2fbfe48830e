"""The register of sums: each refusal named, each answer the same from numbers and from text."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.trade.errors import MissingInput, OutOfRange, UnknownInput, UnknownSum
from courses.trade.sums import SUMS, listing, refusals, sum_named, work_out
from courses.trade.units import Preferences

SETTINGS = ("cuts", "machine", "speed_rpm", "passes", "force_n", "arm_mps")
EDGE = ("edge_gain", "edge_ratio")
INPUTS = {
    "dew_point": ["air_degc", "air_rh"],
    "dew_margin": ["air_degc", "air_rh", "surface_degc"],
    "surface_rh": ["air_degc", "air_rh", "surface_degc"],
    "water_content": ["air_degc", "air_rh", "pressure_hpa"],
    "infrared_reading": ["surface_degc", "around_degc", "emissivity", "set_emissivity", "instrument_degc"],
    "gauge_statistics": ["zero_um", "before_um", "after_um"],
    "gloss": ["index", "rq_nm", "corr_um"],
    "reflectance": ["index", "angle_deg"],
    "coherent_share": ["rq_nm", "angle_deg", "wavelength_nm"],
    "grain_ratio": ["from_grade", "to_grade"],
    "nearest_grade": ["d50_um", "american"],
    "scratch_depth": ["grade", "backing", "rz_um", "stray"],
    "edge_speed": ["pad_mm", "speed_rpm"],
    "orbit_speed": ["orbit_mm", "speed_rpm", "pad_mm", "spin_rpm"],
    "removal": [*SETTINGS, "overlap", "pad_mm", "k", "eta"],
    "sets_to_clear": ["grade", "depth_um", "cuts", "machine", "cut_um", "eta"],
    "sanding": ["grade", "passes", "area_m2", "section_m2", "apart_min"],
    "finish_left": ["cuts", "machine", "substrate", "rest", "trail_um"],
    "panel_temperature": [
        *SETTINGS,
        "panel_degc",
        "section_m2",
        "softens_degc",
        "overlap",
        "pad_mm",
        "heat_share",
    ],
    "film_left": ["film_um", "cut_um", "substrate", "reserve_um", "budget_um", "reading_um", *EDGE],
    "burn_probability": ["film_um", "cut_um", "substrate", "taped", "spread", *EDGE],
    "oxidation_left": ["layer_um", "removed_um", "spread"],
    "share_deeper": ["median_um", "depth_um", "gsd"],
    "hull_area": ["formula", "loa_m", "lwl_m", "beam_m", "draft_m", "freeboard_m", "left_out_m2"],
    "coating_needed": [
        "area_m2",
        "coats",
        "method",
        "substrate",
        "dry_um",
        "solids_percent",
        "loss",
        "loss_percent",
        "factor",
        "pack_ml",
    ],
}

REFUSING = {"infrared_reading", "gloss", "hull_area", "coating_needed"}
"""Together, inputs within their ranges may leave nothing to read, or too steep a film, or no hull, or half a coat."""
ABRADING = set(list(INPUTS)[list(INPUTS).index("grain_ratio") : list(INPUTS).index("hull_area")])
"""Their defaults are held against the shipped model in `test_cuts`."""
EITHER_OR = {"nearest_grade", "sets_to_clear", "removal", "panel_temperature"}
"""Of these two inputs exclude each other, or a machine can't turn as fast as another."""


def test_the_sums_are_registered_under_their_names() -> None:
    assert {name: [one.name for one in declared.inputs] for name, declared in SUMS.items()} == INPUTS
    assert all(declared.name == name for name, declared in SUMS.items())


def test_no_sum_names_a_figure_twice() -> None:
    for declared in SUMS.values():
        names = [one.name for one in (*declared.inputs, *declared.outputs)]
        assert len(names) == len(set(names)), declared.name


def test_differences_are_taken_between_named_figures_of_the_same_sum() -> None:
    for declared in SUMS.values():
        names = {one.name for one in (*declared.inputs, *declared.outputs)}
        assert all(set(out.difference_of or ()) <= names for out in declared.outputs), declared.name


def test_the_list_has_the_shape_of_the_door() -> None:
    listed = {entry["name"]: entry for entry in listing()}
    assert listed["dew_margin"] == {
        "name": "dew_margin",
        "title": "Surface above dew point",
        "inputs": [
            {"name": name, "unit": unit, "min": low, "max": high, "default": None, "choices": None, "columns": None}
            for name, unit, low, high in [
                ("air_degc", "degc", -20.0, 50.0),
                ("air_rh", "rh", 1.0, 100.0),
                ("surface_degc", "degc", -30.0, 80.0),
            ]
        ],
        "output": {"unit": "K"},
        "also": [
            {"name": "dew_point_degc", "unit": "degc"},
            {"name": "surface_rh", "unit": "rh"},
            {"name": "water_content_gkg", "unit": "gkg"},
        ],
    }
    others = [entry for name, entry in listed.items() if name not in ABRADING]
    defaults = {one["name"]: one["default"] for entry in others for one in entry["inputs"]}  # type: ignore[attr-defined]
    assert {name: value for name, value in defaults.items() if value is not None} == {
        "pressure_hpa": 1013.25,
        "set_emissivity": 0.95,
        "zero_um": 0.0,
        "wavelength_nm": 550.0,
        "formula": "T1",
        "left_out_m2": 0.0,
        "coats": 1.0,
        "method": "C1",
        "substrate": "gel_coat",
        "solids_percent": 35.0,
        "loss": "L1",
        "loss_percent": 30.0,
        "factor": 1.3,
        "pack_ml": 50.0,
    }


def test_text_with_units_works_like_numbers() -> None:
    assert work_out("dew_point", {"air_degc": "68 °F", "air_rh": "50 %"}).as_json() == (
        work_out("dew_point", {"air_degc": 20, "air_rh": 50.0}).as_json()
    )


def test_a_persons_bare_numbers_are_in_their_units() -> None:
    assert work_out("dew_point", {"air_degc": "68", "air_rh": "50"}, Preferences.us()).value == 9.26


def test_an_unknown_sum_is_refused_with_the_nearest() -> None:
    with pytest.raises(UnknownSum) as refusal:
        sum_named("dewpoint")
    assert str(refusal.value) == "There is no sum 'dewpoint'; did you mean dew_point?"


@pytest.mark.parametrize(
    ("inputs", "kind", "sentence"),
    [
        (
            {"air_degc": 20, "air_rh": 140},
            OutOfRange,
            "air_rh: 140\xa0% lies outside 1\xa0% to 100\xa0%; give a value within.",
        ),
        (
            {"air_degc": 20},
            MissingInput,
            "air_rh: Relative humidity of the air is missing; give a value such as 65 %.",
        ),
        ({"air_degc": 20, "rh": 50}, UnknownInput, "rh: There is no such input; did you mean air_rh?"),
    ],
)
def test_bad_input_is_refused_by_name(inputs: dict[str, object], kind: type[Exception], sentence: str) -> None:
    with pytest.raises(kind) as refusal:
        work_out("dew_point", inputs)
    assert str(refusal.value) == sentence


def test_a_form_learns_of_every_bad_field_at_once() -> None:
    assert refusals("dew_margin", {"air_degc": "140", "air_rh": "140", "surface_degc": ""}, Preferences.us()) == {
        "air_degc": "140\xa0°F lies outside −4\xa0°F to 122\xa0°F; give a value within.",
        "air_rh": "140\xa0% lies outside 1\xa0% to 100\xa0%; give a value within.",
        "surface_degc": "Surface temperature is missing; give a value such as 18 °C or 64 °F.",
    }
    assert refusals("dew_point", {"air_degc": 20, "air_rh": 50}) == {}


@given(data=st.data(), name=st.sampled_from(sorted(set(SUMS) - REFUSING - EITHER_OR)))
def test_every_sum_answers_everywhere_in_its_ranges(data: st.DataObject, name: str) -> None:
    inputs: dict[str, object] = {}
    for one in SUMS[name].inputs:
        value = st.sampled_from(one.choices) if one.choices else st.floats(one.low, one.high)
        inputs[one.name] = data.draw(st.lists(value, min_size=2, max_size=6) if one.count else value)
    result = work_out(name, inputs)
    assert result.doubt >= 0
    assert result.shown(Preferences.us()).output.text
