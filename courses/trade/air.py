"""Air and surface: dew point, the margin above it, humidity at the surface, water in the air, what infra-red reads.

The dew point is always that of liquid water, also below 0 °C, where frost settles at a slightly higher temperature.
Formulas and derivations: docs/trade.md.
"""

from __future__ import annotations

from math import exp, log

from courses.trade.errors import OutOfRange
from courses.trade.ranges import Range

AIR_DEGC = Range(-20.0, 50.0, "degc")
AIR_RH = Range(1.0, 100.0, "rh")
SURFACE_DEGC = Range(-30.0, 80.0, "degc")
AROUND_DEGC = Range(-60.0, 60.0, "degc")
PRESSURE_HPA = Range(700.0, 1100.0, "hpa")
EMISSIVITY = Range(0.01, 1.0, "ratio")
SET_EMISSIVITY = Range(0.1, 1.0, "ratio")

SAFE_MARGIN_K = 3.0
"""The surface stays at least this far above the dew point: iso-8502-4, known second-hand only."""

METER_AIR_K = 0.5
METER_RH = 3.0
"""What a shop's thermometer and humidity meter may be off: practice."""

METER_INFRARED_K = 1.5
"""What an infra-red thermometer may be off by itself: practice."""

EMISSIVITY_DOUBT = 0.02
"""How closely the emissivity of a surface is known at best: our own choice; published tables part by much more."""

_A = 17.625
_B_K = 243.04
_E0_HPA = 6.1094
_WATER_TO_AIR = 0.622
_ZERO_K = 273.15
_C2_UM_K = 14_387.768_775
_BAND_UM = (8.0, 14.0)
_TERMS = 30
_COLDEST_DEGC, _HOTTEST_DEGC = -150.0, 400.0


def saturation_hpa(at_degc: float) -> float:
    """Pressure of water vapour over liquid water at ``at_degc``, in hPa: within 0.3 % from −5 to 50 °C, 1.4 % at 80 °C.

    Range −30 to 80 °C. Source: alduchov-eskridge-1996.

    >>> round(saturation_hpa(20.0), 2)
    23.33
    """
    t = SURFACE_DEGC.checked("at_degc", at_degc)
    return _E0_HPA * exp(_exponent(t))


def _exponent(t_degc: float) -> float:
    return _A * t_degc / (_B_K + t_degc)


def _dew_degc(air_degc: float, air_rh: float) -> float:
    g = log(air_rh / 100) + _exponent(air_degc)
    return _B_K * g / (_A - g)


def _vapour_hpa(air_degc: float, air_rh: float) -> float:
    return _E0_HPA * exp(_exponent(air_degc)) * air_rh / 100


def dew_point_degc(air_degc: float, air_rh: float) -> float:
    """Temperature to which this air must cool before water settles, °C: the formula of saturation turned round.

    ``air_degc`` −20 to 50 °C, ``air_rh`` 1 to 100 %; `OutOfRange` beyond. Within 0.06 °C of the reference equations
    from −5 to 45 °C and 5 to 100 %. Source: alduchov-eskridge-1996.

    >>> round(dew_point_degc(20.0, 50.0), 2), round(dew_point_degc(10.0, 90.0), 2)
    (9.26, 8.43)
    """
    return _dew_degc(AIR_DEGC.checked("air_degc", air_degc), AIR_RH.checked("air_rh", air_rh))


def dew_point_doubt_k(
    air_degc: float, air_rh: float, meter_air_k: float = METER_AIR_K, meter_rh: float = METER_RH
) -> float:
    """How far above `dew_point_degc` the dew point lies where both meters read low by these errors, in K.

    Ranges as `dew_point_degc`. The other way round it is a little more, on the safe side. Source: practice for the two
    errors, the rest computed.

    >>> round(dew_point_doubt_k(20.0, 65.0), 1), round(dew_point_doubt_k(20.0, 65.0, meter_air_k=0.0), 2)
    (1.2, 0.69)
    """
    return _dew_degc(air_degc + meter_air_k, air_rh + meter_rh) - dew_point_degc(air_degc, air_rh)


def dew_margin_k(air_degc: float, air_rh: float, surface_degc: float) -> float:
    """How far the surface stands above the dew point of this air, in K; below 0 water settles on it.

    ``surface_degc`` −30 to 80 °C, the air as in `dew_point_degc`. Source: alduchov-eskridge-1996.

    >>> round(dew_margin_k(16.0, 71.0, 13.0), 2)
    2.26
    """
    return SURFACE_DEGC.checked("surface_degc", surface_degc) - dew_point_degc(air_degc, air_rh)


def lowest_surface_degc(air_degc: float, air_rh: float) -> float:
    """The coldest surface, °C, that still stands `SAFE_MARGIN_K` above the dew point. Source: iso-8502-4, second-hand.

    >>> round(lowest_surface_degc(20.0, 50.0), 2)
    12.26
    """
    return dew_point_degc(air_degc, air_rh) + SAFE_MARGIN_K


def surface_rh(air_degc: float, air_rh: float, surface_degc: float) -> float:
    """Relative humidity of the air that touches the surface, %, never above 100: what a wet film breathes.

    Ranges as `dew_margin_k`. Source: alduchov-eskridge-1996.

    >>> round(surface_rh(22.0, 60.0, 16.0), 1), surface_rh(22.0, 60.0, 5.0)
    (87.2, 100.0)
    """
    surface = SURFACE_DEGC.checked("surface_degc", surface_degc)
    return min(100.0, vapour_hpa(air_degc, air_rh) / saturation_hpa(surface) * 100)


def surface_rh_doubt(air_degc: float, air_rh: float, surface_degc: float) -> float:
    """How far `surface_rh` lies above the figure where both air meters read low, in % RH. Source: practice.

    >>> round(surface_rh_doubt(22.0, 60.0, 16.0), 1)
    7.2
    """
    risen = _vapour_hpa(air_degc + METER_AIR_K, air_rh + METER_RH) - vapour_hpa(air_degc, air_rh)
    return risen / saturation_hpa(SURFACE_DEGC.checked("surface_degc", surface_degc)) * 100


def vapour_hpa(air_degc: float, air_rh: float) -> float:
    """Pressure of the water vapour in this air, hPa. Ranges as `dew_point_degc`. Source: alduchov-eskridge-1996.

    >>> round(vapour_hpa(20.0, 50.0), 2)
    11.67
    """
    return _vapour_hpa(AIR_DEGC.checked("air_degc", air_degc), AIR_RH.checked("air_rh", air_rh))


def water_content_gkg(air_degc: float, air_rh: float, pressure_hpa: float = 1013.25) -> float:
    """Water carried by each kilogram of dry air, in grams, at ``pressure_hpa`` (700 to 1100 hPa).

    The air as in `dew_point_degc`. Within 1 % of moist-air libraries. Source: alduchov-eskridge-1996 for the vapour,
    the gas law for the rest.

    >>> round(water_content_gkg(20.0, 50.0), 2)
    7.25
    """
    return _water_gkg(vapour_hpa(air_degc, air_rh), PRESSURE_HPA.checked("pressure_hpa", pressure_hpa))


def _water_gkg(vapour: float, pressure: float) -> float:
    return 1000 * _WATER_TO_AIR * vapour / (pressure - vapour)


def water_content_doubt_gkg(air_degc: float, air_rh: float, pressure_hpa: float = 1013.25) -> float:
    """How far `water_content_gkg` lies above the figure where both air meters read low, in g/kg. Source: practice.

    >>> round(water_content_doubt_gkg(20.0, 50.0), 2)
    0.68
    """
    risen = _vapour_hpa(air_degc + METER_AIR_K, air_rh + METER_RH)
    return _water_gkg(risen, pressure_hpa) - water_content_gkg(air_degc, air_rh, pressure_hpa)


def infrared_reading_degc(
    surface_degc: float,
    around_degc: float,
    emissivity: float,
    set_emissivity: float = 0.95,
    instrument_degc: float | None = None,
) -> float:
    """What an infra-red thermometer (8 to 14 µm) shows, °C, aimed at a surface that mirrors its surroundings.

    ``surface_degc`` −30 to 80 °C, ``around_degc`` (what the surface mirrors) and ``instrument_degc`` (left out: the
    same) −60 to 60 °C, ``emissivity`` 0.01 to 1, ``set_emissivity`` of the instrument 0.1 to 1. `OutOfRange` also where
    less than the radiance of −150 °C is left, so that no meter could show a figure. Source: planck-radiation-law.

    >>> round(infrared_reading_degc(12.0, 22.0, 0.28), 2), round(infrared_reading_degc(12.0, 22.0, 0.90), 2)
    (19.15, 12.55)
    """
    own, set_to = EMISSIVITY.checked("emissivity", emissivity), SET_EMISSIVITY.checked("set_emissivity", set_emissivity)
    around = AROUND_DEGC.checked("around_degc", around_degc)
    instrument = around if instrument_degc is None else AROUND_DEGC.checked("instrument_degc", instrument_degc)
    emitted = own * band_radiance(SURFACE_DEGC.checked("surface_degc", surface_degc))
    mirrored = (1 - own) * band_radiance(around)
    return _temperature_of((emitted + mirrored - (1 - set_to) * band_radiance(instrument)) / set_to)


def infrared_doubt_k(
    surface_degc: float,
    around_degc: float,
    emissivity: float,
    set_emissivity: float = 0.95,
    instrument_degc: float | None = None,
) -> float:
    """How far `infrared_reading_degc` may be off, in K: the instrument's own error and an emissivity known to ±0.02.

    Ranges and refusals as there. Source: practice for the instrument, model for the emissivity.

    >>> round(infrared_doubt_k(12.0, 22.0, 0.90), 1), round(infrared_doubt_k(12.0, 22.0, 0.28), 1)
    (1.7, 1.7)
    """
    around = EMISSIVITY.checked("emissivity", emissivity)
    other = around + EMISSIVITY_DOUBT if around + EMISSIVITY_DOUBT <= EMISSIVITY.high else around - EMISSIVITY_DOUBT
    scene = (surface_degc, around_degc), (set_emissivity, instrument_degc)
    readings = [infrared_reading_degc(*scene[0], own, *scene[1]) for own in (around, other)]
    return METER_INFRARED_K + abs(readings[1] - readings[0])


def band_radiance(at_degc: float) -> float:
    """Radiance of a black body between 8 and 14 µm, as a multiple of one constant that cancels wherever it is compared.

    Planck's law integrated term by term: exact to the last digits above −150 °C. Source: planck-radiation-law.

    >>> round(band_radiance(30.0) / band_radiance(10.0), 2)
    1.38
    """
    kelvin = at_degc + _ZERO_K
    low, high = (_radiance_beyond(_C2_UM_K / (wavelength * kelvin)) for wavelength in _BAND_UM)
    return kelvin**4 * (high - low)


def _radiance_beyond(x: float) -> float:
    """The integral of u³/(eᵘ − 1) from ``x`` upwards: all that is emitted at wavelengths shorter than that of ``x``."""
    return sum(exp(-n * x) * (x**3 / n + 3 * x**2 / n**2 + 6 * x / n**3 + 6 / n**4) for n in range(1, _TERMS))


def _temperature_of(radiance: float) -> float:
    """The temperature, °C, whose band radiance this is, by chords: its logarithm over 1/T is nearly straight."""
    if not band_radiance(_COLDEST_DEGC) <= radiance <= band_radiance(_HOTTEST_DEGC):
        raise OutOfRange(
            "With these figures no temperature is left to read; set the instrument nearer to the surface's own value.",
            "set_emissivity",
        )
    wanted = log(radiance)
    last, now = 1 / _ZERO_K, 1 / (_ZERO_K + 25)
    at_last = log(band_radiance(0.0))
    while abs(now - last) > 1e-13:
        at_now = log(band_radiance(1 / now - _ZERO_K))
        last, now, at_last = now, now + (wanted - at_now) * (now - last) / (at_now - at_last), at_now
    return 1 / now - _ZERO_K
