"""The sums of how fast a machine rubs: the rim of a turning pad, and an orbit."""

from __future__ import annotations

from courses.trade import removal
from courses.trade.sums import cuts as shop
from courses.trade.sums.shape import Input, Note, Output, Quantity, Sum, Worked

_RPM_DOUBT = 0.05
_TURNS = (("turns", Quantity(_RPM_DOUBT * 100, "percent", 0)),)


def _edge_speed(pad_mm: float, speed_rpm: float) -> Worked:
    edge = removal.edge_speed_mps(pad_mm / 1000, speed_rpm)
    return Worked(
        {
            "edge_mps": edge,
            "mean_mps": removal.rotary_slip_mps(pad_mm / 1000, speed_rpm),
            "edge_kmh": edge * 3.6,
        },
        edge * _RPM_DOUBT,
        (shop.OVER_1800,) if speed_rpm > shop.TOO_FAST_RPM else (),
    )


def _orbit_speed(orbit_mm: float, speed_rpm: float, pad_mm: float, spin_rpm: float) -> Worked:
    orbit = removal.orbit_speed_mps(orbit_mm / 1000, speed_rpm)
    return Worked(
        {
            "orbit_mps": orbit,
            "spin_mps": removal.rotary_slip_mps(pad_mm / 1000, spin_rpm),
            "mean_mps": removal.dual_action_slip_mps(pad_mm / 1000, orbit_mm / 1000, speed_rpm, spin_rpm),
        },
        orbit * _RPM_DOUBT,
    )


SPEED_SUMS = (
    Sum(
        "edge_speed",
        "Speed of a pad’s rim",
        "How fast the rim of a turning pad rubs, and the whole pad on average.",
        (
            Input.over(shop.PAD_MM, "pad_mm", "Pad", 200.0),
            Input.over(removal.SPEED_RPM, "speed_rpm", "Turns a minute", 1500.0),
        ),
        (
            Output("edge_mps", "Rim", "mps", 2, page_decimals=2),
            Output("mean_mps", "Mean of the pad", "mps", 2, page_decimals=2),
            Output("edge_kmh", "Rim, as on a road sign", "kmh", 1),
        ),
        "rim = π·D·n ÷ 60; mean = ⅔ of it",
        "preston-1927",
        "calc",
        Note("Turns known to ±{turns} leave ±{doubt}.", _TURNS),
        _edge_speed,
    ),
    Sum(
        "orbit_speed",
        "Speed of an orbit",
        "How fast a dual action rubs: its orbit, its slow spin, and both together.",
        (
            Input.over(shop.ORBIT_MM, "orbit_mm", "Orbit, its diameter", 15.0),
            Input.over(removal.SPEED_RPM, "speed_rpm", "Orbits a minute", 4800.0),
            Input.over(shop.PAD_MM, "pad_mm", "Pad", 150.0),
            Input("spin_rpm", "Turns of the pad under load", "rpm", 0.0, 1000.0, 300.0),
        ),
        (
            Output("orbit_mps", "Orbit", "mps", 2, page_decimals=2),
            Output("spin_mps", "Spin, mean of the pad", "mps", 2, page_decimals=2),
            Output("mean_mps", "Both together", "mps", 2, page_decimals=2),
        ),
        "orbit = π·d·n ÷ 60; spin = ⅔·π·D·spin ÷ 60; both = √(orbit² + spin²)",
        "preston-1927",
        "calc",
        Note("Orbits known to ±{turns} leave ±{doubt}.", _TURNS),
        _orbit_speed,
    ),
)
