"""Scenes behind the pictures of a scenario, written as the door ``picture`` takes them.

What stands here is where things lie and how the lamp is moved; how deep and how strong they are is drawn.
"""

from collections.abc import Mapping
from typing import Final

Box = tuple[float, float, float, float]

SIZE: Final = (960, 640)
WHOLE: Final[Box] = (0.0, 0.0, 1.0, 1.0)
LAMP_PLACES: Final = ((0.2, 0.34), (0.36, 0.64), (0.5, 0.42), (0.64, 0.66), (0.8, 0.34))
"""Where the lamp's image stands at five places, in fractions of the picture from the upper left."""


def mark(kind: str, box: Box = WHOLE, **how: float) -> dict[str, object]:
    """Return one defect of a scene: its kind, the part of the picture it lies in, and ``severity`` or ``depth_um``.

    >>> mark("hologram", depth_um=0.22, direction=15)
    {'kind': 'hologram', 'region': {'box': [0.0, 0.0, 1.0, 1.0]}, 'depth_um': 0.22, 'direction': 15}
    """
    return {"kind": kind, "region": {"box": list(box)}, **how}


def scene(paint: tuple[str, str], seed: float, *marks: Mapping[str, object], **more: object) -> dict[str, object]:
    """Return the scene of a flat panel: ``paint`` is its substrate and colour; ``more`` are further keys of the door.

    >>> scene(("gel_coat", "navy"), 7, oils=True)["oils"]
    True
    """
    substrate, colour = paint
    return {
        "substrate": substrate,
        "colour": colour,
        "size": list(SIZE),
        "seed": int(seed),
        "defects": [dict(one) for one in marks],
        **more,
    }


def about(across: float, down: float, reach: tuple[float, float]) -> Box:
    """Return the box that reaches so far to both sides of a middle, all in fractions of the picture, kept inside it.

    >>> about(0.5, 0.25, (0.1, 0.3))
    (0.4, 0.0, 0.6, 0.55)
    """
    left, right = max(0.0, across - reach[0]), min(1.0, across + reach[0])
    top, bottom = max(0.0, down - reach[1]), min(1.0, down + reach[1])
    return round(left, 4), round(top, 4), round(right, 4), round(bottom, 4)
