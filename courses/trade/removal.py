"""Removal: how fast a pad moves, what a pass takes off, how long it takes and how warm the film gets.

Preston 1927: wear is proportional to pressure, speed and time. Over one pass a point lies under the pad for
A ÷ (arm speed · stripe), so pressure times area, the force, is all that is left of the pad's size. Lengths are metres
unless a name says otherwise; what is taken off is model micrometres.
"""

from __future__ import annotations

from math import hypot, pi, sqrt
from typing import Final

from courses.trade.ranges import Range

__all__ = [
    *("edge_speed_mps", "orbit_speed_mps", "rotary_slip_mps", "dual_action_slip_mps", "stripe_m", "pressure_pa"),
    *("pass_removal_um", "pass_s_m2", "pass_min_m2", "heat_flux", "local_rise_k", "bulk_rise_k", "sets_to_clear"),
]

PAD_M: Final = Range(0.01, 0.5, "m")
ORBIT_M: Final = Range(0.0, 0.05, "m")
SPEED_RPM: Final = Range(0.0, 15000.0, "rpm")
SLIP_MPS: Final = Range(0.0, 100.0, "mps")
FORCE_N: Final = Range(0.1, 300.0, "n")
ARM_MPS: Final = Range(0.005, 1.0, "mps")
OVERLAP: Final = Range(0.0, 0.95, "ratio")
ON_PANEL: Final = Range(0.05, 1.0, "ratio")
PRESTON_K: Final = Range(0.0, 1e-6, "ratio")

MEAN_OF_EDGE: Final = 2 / 3
"""Mean speed over the area of a turning pad ÷ speed of its edge: the mean of r over a circle."""


def edge_speed_mps(pad_m: float, rpm: float) -> float:
    """Speed of the edge of a pad, m/s. ``pad_m`` 0.01 to 0.5 m, ``rpm`` 0 to 15 000. Arithmetic of a circle.

    >>> round(edge_speed_mps(0.2, 1500), 2), round(edge_speed_mps(0.18, 1800), 2)
    (15.71, 16.96)
    """
    return pi * PAD_M.checked("pad_m", pad_m) * SPEED_RPM.checked("rpm", rpm) / 60


def orbit_speed_mps(orbit_m: float, rpm: float) -> float:
    """Speed of a pad that runs in orbits of this diameter, m/s. ``orbit_m`` 0 to 0.05 m. Arithmetic of a circle.

    >>> round(orbit_speed_mps(0.015, 4800), 2), round(orbit_speed_mps(0.008, 9000), 2)
    (3.77, 3.77)
    """
    return pi * ORBIT_M.checked("orbit_m", orbit_m) * SPEED_RPM.checked("rpm", rpm) / 60


def rotary_slip_mps(pad_m: float, rpm: float) -> float:
    """Mean speed of a turning pad over the film, m/s: two thirds of its edge. Ranges as `edge_speed_mps`.

    >>> round(rotary_slip_mps(0.2, 1500), 2)
    10.47
    """
    return MEAN_OF_EDGE * edge_speed_mps(pad_m, rpm)


def dual_action_slip_mps(pad_m: float, orbit_m: float, rpm: float, spin_rpm: float) -> float:
    """Mean speed of a pad that orbits and slowly spins, m/s: both at right angles. Ranges as above. Source: model.

    >>> round(dual_action_slip_mps(0.15, 0.015, 4800, 300), 2), round(dual_action_slip_mps(0.15, 0.005, 8000, 250), 2)
    (4.08, 2.47)
    """
    return hypot(orbit_speed_mps(orbit_m, rpm), rotary_slip_mps(pad_m, spin_rpm))


def stripe_m(pad_m: float, overlap: float) -> float:
    """Distance between two stripes, m. ``overlap`` 0 to 0.95 of the pad.

    >>> stripe_m(0.2, 0.5)
    0.1
    """
    return PAD_M.checked("pad_m", pad_m) * (1 - OVERLAP.checked("overlap", overlap))


def pressure_pa(force_n: float, pad_m: float) -> float:
    """Mean pressure under a round pad, Pa. ``force_n`` 0.1 to 300, the machine's weight included.

    >>> round(pressure_pa(30, 0.2)), round(pressure_pa(50, 0.15))
    (955, 2829)
    """
    return FORCE_N.checked("force_n", force_n) / _area_m2(pad_m)


def _area_m2(pad_m: float) -> float:
    return pi * PAD_M.checked("pad_m", pad_m) ** 2 / 4


def pass_removal_um(k: float, force_n: float, slip_mps: float, arm_mps: float, stripe: float) -> float:
    """What one pass takes off, model µm: k · F · v ÷ (arm speed · stripe). ``k`` in 1/Pa. Source: preston-1927.

    ``slip_mps`` 0 to 100, ``arm_mps`` 0.005 to 1. On a rotary v and stripe both grow with the pad, so its size cancels:

    >>> small, large = (pass_removal_um(3.18e-11, 30, rotary_slip_mps(d, 1500), 0.05, d / 2) for d in (0.1, 0.2))
    >>> round(small, 3), round(large, 3)
    (1.998, 1.998)
    """
    pull = FORCE_N.checked("force_n", force_n) * SLIP_MPS.checked("slip_mps", slip_mps)
    return 1e6 * PRESTON_K.checked("k", k) * pull / (ARM_MPS.checked("arm_mps", arm_mps) * stripe)


def pass_s_m2(arm_mps: float, stripe: float) -> float:
    """Seconds that one pass over a square metre takes while the pad is on it. Ranges as above.

    >>> round(pass_s_m2(0.05, 0.1))
    200
    """
    return 1 / (ARM_MPS.checked("arm_mps", arm_mps) * stripe)


def pass_min_m2(arm_mps: float, stripe: float, on_panel: float) -> float:
    """Minutes that one pass over a square metre takes in all, the pad being on it for a share ``on_panel``, 0.05 to 1.

    >>> round(3 * pass_min_m2(0.05, 0.1, 0.65), 1), round(4 * pass_min_m2(0.15, 0.075, 0.65), 1)
    (15.4, 9.1)
    """
    return pass_s_m2(arm_mps, stripe) / 60 / ON_PANEL.checked("on_panel", on_panel)


def heat_flux(heat_share: float, friction: float, force_n: float, pad_m: float, slip_mps: float) -> float:
    """Heat that flows into the film under the pad, W/m²: its share of friction times pressure times speed.

    >>> round(heat_flux(0.45, 0.4, 30, 0.2, 10.47))
    1800
    """
    return heat_share * friction * pressure_pa(force_n, pad_m) * SLIP_MPS.checked("slip_mps", slip_mps)


def local_rise_k(flux: float, pad_m: float, arm_mps: float, effusivity: float) -> float:
    """How much warmer the film gets while the pad crosses a point, K: 2q·√(t ÷ π) ÷ e, t = pad ÷ arm speed.

    The rise of the face of a thick body under a steady flux. Source: model.

    >>> round(local_rise_k(1800, 0.2, 0.05, 581), 1)
    7.0
    """
    return 2 * flux * sqrt(PAD_M.checked("pad_m", pad_m) / ARM_MPS.checked("arm_mps", arm_mps) / pi) / effusivity


def bulk_rise_k(flux: float, pad_m: float, section_m2: float, work_s: float, effusivity: float) -> float:
    """How much warmer the whole section gets over the time it is worked, K: the same with the mean flux. Source: model.

    >>> round(bulk_rise_k(1800, 0.2, 0.36, 216, 581), 1)
    4.5
    """
    return 2 * flux * _area_m2(pad_m) / section_m2 * sqrt(work_s / pi) / effusivity


def sets_to_clear(depth_um: float, removal_um: float, eta: float) -> float:
    """How many sets level a mark of this depth, each taking ``removal_um`` and gaining ``eta`` of it. Source: model.

    >>> round(sets_to_clear(2.87, 4.0, 0.75), 2)
    0.96
    """
    return depth_um / (removal_um * eta)
