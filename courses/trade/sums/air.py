"""The sums of the air: dew point, margin, humidity at the surface, water carried, and what infra-red shows."""

from __future__ import annotations

from courses.trade import air
from courses.trade.sums.shape import Input, Note, Output, Quantity, Sum, Worked
from courses.trade.units import rounded

_AIR = Input.over(air.AIR_DEGC, "air_degc", "Air temperature")
_RH = Input.over(air.AIR_RH, "air_rh", "Relative humidity of the air")
_SURFACE = Input.over(air.SURFACE_DEGC, "surface_degc", "Surface temperature")

_DEW = Output("dew_point_degc", "Dew point", "degc", 2)
_MARGIN = Output("dew_margin_k", "Surface above dew point", "K", 2, ("surface_degc", "dew_point_degc"))
_SURFACE_RH = Output("surface_rh", "Relative humidity at the surface", "rh", 2)
_WATER = Output("water_content_gkg", "Water in the air", "gkg", 2)

_METERS = (("air", Quantity(air.METER_AIR_K, "K")), ("rh", Quantity(air.METER_RH, "rh")))
_FROST = Note(
    "Below {zero} this is the dew point of liquid water; frost settles at a slightly higher temperature.",
    (("zero", Quantity(0.0, "degc", 0)),),
)
_RULE = Note(
    "The lowest surface is {margin} above the dew point: the common rule, read by us in guides, not in its standard.",
    (("margin", Quantity(air.SAFE_MARGIN_K, "K")),),
)
_SETTLES = Note("The surface is at or below the dew point: water settles on it.")

_DEW_FORMULA = "Td = 243.04·g ÷ (17.625 − g), g = ln(RH ÷ 100) + 17.625·T ÷ (243.04 + T), in °C"
_SATURATION_FORMULA = "es(T) = 6.1094·exp(17.625·T ÷ (243.04 + T)) hPa, T in °C"
_TAKEN_WITH = "With meters off by {air} and {rh} "
_PROBE_TOO = "; the surface probe's own error is added."


def _dew_point(air_degc: float, air_rh: float) -> Worked:
    dew = air.dew_point_degc(air_degc, air_rh)
    return Worked(
        {_DEW.name: dew, "lowest_surface_degc": rounded(dew, _DEW.decimals) + air.SAFE_MARGIN_K},
        air.dew_point_doubt_k(air_degc, air_rh),
        (*_frost(dew), _RULE),
    )


def _dew_margin(air_degc: float, air_rh: float, surface_degc: float) -> Worked:
    dew = rounded(air.dew_point_degc(air_degc, air_rh), _DEW.decimals)
    margin = surface_degc - dew
    return Worked(
        {
            _MARGIN.name: margin,
            _DEW.name: dew,
            _SURFACE_RH.name: air.surface_rh(air_degc, air_rh, surface_degc),
            _WATER.name: air.water_content_gkg(air_degc, air_rh),
        },
        air.dew_point_doubt_k(air_degc, air_rh),
        _frost(dew) + ((_SETTLES,) if margin <= 0 else ()),
    )


def _surface_rh(air_degc: float, air_rh: float, surface_degc: float) -> Worked:
    at_surface = air.surface_rh(air_degc, air_rh, surface_degc)
    dew = rounded(air.dew_point_degc(air_degc, air_rh), _DEW.decimals)
    return Worked(
        {_SURFACE_RH.name: at_surface, _DEW.name: dew, _MARGIN.name: surface_degc - dew},
        air.surface_rh_doubt(air_degc, air_rh, surface_degc),
        _frost(dew) + ((_SETTLES,) if at_surface >= 100 else ()),
    )


def _water_content(air_degc: float, air_rh: float, pressure_hpa: float) -> Worked:
    return Worked(
        {
            _WATER.name: air.water_content_gkg(air_degc, air_rh, pressure_hpa),
            "vapour_hpa": air.vapour_hpa(air_degc, air_rh),
            _DEW.name: air.dew_point_degc(air_degc, air_rh),
        },
        air.water_content_doubt_gkg(air_degc, air_rh, pressure_hpa),
        _frost(air.dew_point_degc(air_degc, air_rh)),
    )


def _infrared_reading(
    surface_degc: float,
    around_degc: float,
    emissivity: float,
    set_emissivity: float,
    instrument_degc: float | None,
) -> Worked:
    scene = (surface_degc, around_degc, emissivity, set_emissivity, instrument_degc)
    reading = air.infrared_reading_degc(*scene)
    error = rounded(reading, 2) - surface_degc
    return Worked(
        {"reading_degc": reading, "error_k": error},
        air.infrared_doubt_k(*scene),
        _mirror(surface_degc, around_degc, error),
    )


def _frost(dew_degc: float) -> tuple[Note, ...]:
    return (_FROST,) if dew_degc < 0 else ()


def _mirror(surface_degc: float, around_degc: float, error: float) -> tuple[Note, ...]:
    towards = abs(error) >= 1 and (error > 0) == (around_degc > surface_degc)
    return (Note("The surface mirrors what is around it; read it by contact."),) if towards else ()


AIR_SUMS = (
    Sum(
        "dew_point",
        "Dew point",
        "The temperature to which this air must cool before water settles out of it.",
        (_AIR, _RH),
        (_DEW, Output("lowest_surface_degc", "Lowest surface to coat", "degc", 2)),
        _DEW_FORMULA,
        "alduchov-eskridge-1996",
        "calc",
        Note(_TAKEN_WITH + "the dew point is known to about ±{doubt}.", _METERS),
        _dew_point,
    ),
    Sum(
        "dew_margin",
        "Surface above dew point",
        "How far the surface stands above the dew point of the air around it.",
        (_AIR, _RH, _SURFACE),
        (_MARGIN, _DEW, _SURFACE_RH, _WATER),
        f"margin = surface − Td; {_DEW_FORMULA}",
        "alduchov-eskridge-1996",
        "calc",
        Note(
            _TAKEN_WITH + "the dew point alone moves it by ±{doubt}; the surface probe's own error is added.", _METERS
        ),
        _dew_margin,
    ),
    Sum(
        "surface_rh",
        "Relative humidity at the surface",
        "The humidity of the air that touches the surface: what a wet film breathes, not what the room meter shows.",
        (_AIR, _RH, _SURFACE),
        (_SURFACE_RH, _DEW, _MARGIN),
        f"RHs = RH·es(air) ÷ es(surface), at most 100 %; {_SATURATION_FORMULA}",
        "alduchov-eskridge-1996",
        "calc",
        Note(
            _TAKEN_WITH + "it is known to about ±{doubt} of humidity; the surface probe's own error is added.", _METERS
        ),
        _surface_rh,
    ),
    Sum(
        "water_content",
        "Water in the air",
        "Grams of water carried by each kilogram of dry air; a moisture-cure film lives on it.",
        (_AIR, _RH, Input.over(air.PRESSURE_HPA, "pressure_hpa", "Air pressure", 1013.25)),
        (
            _WATER,
            Output("vapour_hpa", "Pressure of the vapour", "hpa", 2),
            _DEW,
        ),
        f"W = 622·e ÷ (p − e) g/kg, e = es·RH ÷ 100; {_SATURATION_FORMULA}",
        "alduchov-eskridge-1996",
        "calc",
        Note(_TAKEN_WITH + "it is known to about ±{doubt}.", _METERS),
        _water_content,
    ),
    Sum(
        "infrared_reading",
        "What an infra-red thermometer shows",
        "The figure on the display when a surface sends out less than the instrument is set for and mirrors the rest.",
        (
            _SURFACE,
            Input.over(air.AROUND_DEGC, "around_degc", "Temperature of what the surface mirrors"),
            Input.over(air.EMISSIVITY, "emissivity", "Emissivity of the surface"),
            Input.over(air.SET_EMISSIVITY, "set_emissivity", "Emissivity set on the instrument", 0.95),
            Input.over(
                air.AROUND_DEGC,
                "instrument_degc",
                "Temperature of the instrument, if not that of the surroundings",
                optional=True,
            ),
        ),
        (
            Output("reading_degc", "Reading", "degc", 2),
            Output("error_k", "Reading less surface", "K", 2, ("reading_degc", "surface_degc")),
        ),
        "L(reading) = [ε·L(surface) + (1 − ε)·L(around) − (1 − ε set)·L(instrument)] ÷ ε set, L = radiance of 8–14 µm",
        "planck-radiation-law",
        "calc",
        Note(
            "An instrument off by {own} and an emissivity off by {emissivity} leave about ±{doubt}.",
            (
                ("own", Quantity(air.METER_INFRARED_K, "K")),
                ("emissivity", Quantity(air.EMISSIVITY_DOUBT, "ratio")),
            ),
        ),
        _infrared_reading,
    ),
)
