"""The sums of gloss: what a smooth film mirrors, what roughness leaves of it, and what a glossmeter reads."""

from __future__ import annotations

from courses.trade import gloss
from courses.trade.sums.shape import Input, Note, Output, Quantity, Sum, Worked

_NM = 1000.0
_INDEX_DOUBT, _RQ_DOUBT = 0.01, 0.10

_INDEX = Input.over(gloss.INDEX, "index", "Refractive index of the film")
_ANGLE = Input.over(gloss.ANGLE_DEG, "angle_deg", "Angle from the upright")
_RQ = Input("rq_nm", "Rms roughness", "nm", gloss.RQ_UM.low * _NM, gloss.RQ_UM.high * _NM)
_LAMP = Input(
    *("wavelength_nm", "Wavelength", "nm", gloss.WAVELENGTH_UM.low * _NM, gloss.WAVELENGTH_UM.high * _NM),
    default=gloss.LAMP_UM * _NM,
)

_SMOOTH = Output("smooth_gu", "Gloss of a smooth film", "gu", 2)
_NOT_A_HUNDRED = Note("Black glass reads 100. No film of a lower index does, however well it is finished.")


def _reflectance(index: float, angle_deg: float) -> Worked:
    share = gloss.reflectance(index, angle_deg)
    return Worked(
        {"reflectance": share, _SMOOTH.name: gloss.smooth_gloss(index, angle_deg)},
        abs(gloss.reflectance(_beside(index), angle_deg) - share),
        (_NOT_A_HUNDRED,) if index < gloss.STANDARD_INDEX else (),
    )


def _coherent_share(rq_nm: float, angle_deg: float, wavelength_nm: float) -> Worked:
    scene = (angle_deg, wavelength_nm / _NM)
    share = gloss.coherent_share(rq_nm / _NM, *scene)
    return Worked(
        {"coherent_share": share, "scattered_share": gloss.scattered_share(rq_nm / _NM, *scene)},
        share - gloss.coherent_share(_rougher(rq_nm) / _NM, *scene),
    )


def _gloss(index: float, rq_nm: float, corr_um: float) -> Worked:
    film = (index, rq_nm / _NM, corr_um)
    read = {f"gloss{angle}_gu": gloss.gloss(*film, angle) for angle in (60, 20, 85)}
    by_index = abs(gloss.gloss(_beside(index), *film[1:], 60) - read["gloss60_gu"])
    by_roughness = abs(gloss.gloss(index, film[1] * (1 - _RQ_DOUBT), corr_um, 60) - read["gloss60_gu"])
    return Worked(
        {**read, "haze_percent": gloss.haze(*film), _SMOOTH.name: gloss.smooth_gloss(index, 60.0)},
        by_index + by_roughness,
        (_which(read["gloss60_gu"]), _HAZE),
    )


def _which(gloss60: float) -> Note:
    return _READ_AT[gloss.geometry(gloss60)]


_READ_AT = {
    20: Note("It reads above 70 at 60°: read it at 20°, where fine and perfect part."),
    60: Note("It reads from 10 to 70 at 60°: that is the angle for it."),
    85: Note("It reads below 10 at 60°: read it at 85°."),
}
_HAZE = Note("Haze rises and falls again as a film gets rougher: more haze is not always rougher.")


def _beside(index: float) -> float:
    return index + (_INDEX_DOUBT if index + _INDEX_DOUBT <= gloss.INDEX.high else -_INDEX_DOUBT)


def _rougher(rq_nm: float) -> float:
    return min(rq_nm * (1 + _RQ_DOUBT), gloss.RQ_UM.high * _NM)


_KNOWN_TO = (("index", Quantity(_INDEX_DOUBT, "ratio")), ("rough", Quantity(_RQ_DOUBT * 100, "percent", 0)))

GLOSS_SUMS = (
    Sum(
        "gloss",
        "What a glossmeter reads",
        "Gloss of a film at the three angles, from its refractive index, its roughness and how long its waves are.",
        (
            _INDEX,
            _RQ,
            Input.over(gloss.CORR_UM, "corr_um", "Correlation length of the roughness"),
        ),
        (
            Output("gloss60_gu", "Gloss at 60°", "gu", 2),
            Output("gloss20_gu", "Gloss at 20°", "gu", 2),
            Output("gloss85_gu", "Gloss at 85°", "gu", 2),
            Output("haze_percent", "Haze at 20°, of the standard’s gloss", "percent", 2, page_decimals=1),
            Output("smooth_gu", "Gloss at 60° if it were smooth", "gu", 2),
        ),
        "G = 100·R(n) ÷ R(1.567)·share caught; share = Σ e⁻ᵍ·gᵐ ÷ m!·erf(…)·erf(…), g = (4π·rq·cos θ ÷ λ)²",
        "davies-1954",
        "model",
        Note("An index known to ±{index} and a roughness known to ±{rough} leave about ±{doubt} at 60°.", _KNOWN_TO),
        _gloss,
    ),
    Sum(
        "reflectance",
        "What a smooth film mirrors",
        "The share of light that a clear, smooth surface mirrors, and the gloss units that makes at the same angle.",
        (_INDEX, _ANGLE),
        (Output("reflectance", "Share mirrored", "ratio", 5, page_decimals=3), _SMOOTH),
        "R = ½·[((cos θ − q) ÷ (cos θ + q))² + ((n²·cos θ − q) ÷ (n²·cos θ + q))²], q = √(n² − sin² θ)",
        "fresnel-equations",
        "calc",
        Note("An index known to ±{index} leaves about ±{doubt}.", _KNOWN_TO[:1]),
        _reflectance,
    ),
    Sum(
        "coherent_share",
        "What roughness leaves of the mirror image",
        "The share of mirrored light that still makes a sharp image on a rough film; the rest is thrown aside.",
        (_RQ, _ANGLE, _LAMP),
        (
            Output("coherent_share", "Share still mirrored", "ratio", 4, page_decimals=2),
            Output("scattered_share", "Share thrown aside", "ratio", 4),
        ),
        "share = exp(−g), g = (4π·rq·cos θ ÷ λ)²",
        "davies-1954",
        "calc",
        Note("A roughness known to ±{rough} leaves about ±{doubt}.", _KNOWN_TO[1:]),
        _coherent_share,
    ),
)
