"""What a finish is to the eye of a glossmeter: the roughness of fine scratches, a few deep ones, and trails together.

Depths are model micrometres. How they are mixed is our training model's choice; gloss of it: `courses.trade.gloss`.
"""

from __future__ import annotations

from math import sqrt

from courses.trade.ranges import Range

DEPTH_UM = Range(0.0, 50.0, "um")
SHARE = Range(0.0, 1.0, "ratio")
RQ_PER_RZ = Range(0.01, 1.0, "ratio")


def rms_um(scratch_um: float, stray_um: float, trail_um: float, rq_per_rz: float, stray_share: float) -> float:
    """Rms roughness, µm, of mean scratches, of strays on ``stray_share`` of the area, and of trails.

    ``rq_per_rz``: rms ÷ depth. Depths 0 to 50 µm; `OutOfRange` beyond. Source: model.

    >>> round(rms_um(0.135, 0.2025, 0.0, 0.2, 0.05), 4), round(rms_um(0.135, 0.2025, 0.25, 0.2, 0.05), 4)
    (0.0278, 0.0572)
    """
    per = RQ_PER_RZ.checked("rq_per_rz", rq_per_rz)
    share = SHARE.checked("stray_share", stray_share)
    field, stray, trail = (
        per * DEPTH_UM.checked(name, depth)
        for name, depth in (("scratch_um", scratch_um), ("stray_um", stray_um), ("trail_um", trail_um))
    )
    return sqrt((1 - share) * field**2 + share * stray**2 + trail**2)


def length_um(scratch_um: float, trail_um: float, corr_um: float, trail_corr_um: float) -> float:
    """Correlation length, µm: that of scratches and that of trails, each weighed by the square of its depth.

    Without either it is ``corr_um``. Depths 0 to 50 µm; `OutOfRange` beyond. Source: model.

    >>> length_um(0.1, 0.0, 3.0, 8.0), length_um(0.1, 0.1, 3.0, 8.0)
    (3.0, 5.5)
    """
    field = DEPTH_UM.checked("scratch_um", scratch_um) ** 2
    trail = DEPTH_UM.checked("trail_um", trail_um) ** 2
    return (corr_um * field + trail_corr_um * trail) / (field + trail) if field + trail else corr_um
