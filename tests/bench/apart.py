"""Can the kinds be told apart? `python tests/bench/apart.py` prints who is taken for whom, leave-one-out.

Every kind on one navy clear coat, so that the colour of the panel is no clue, on panels whose numbers no constant was
chosen on. Features are worked out from the change against the twin without the defect, which no trainee sees: this
shows that pictures differ, not that people can tell them apart.
"""

import sys
from collections import Counter
from functools import cache
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from courses.pictures import LIGHTS, Panel, Scene
from courses.pictures.arrays import blur
from courses.pictures.colour import lightness
from courses.pictures.features import band_energy, glint_geometry, glints
from courses.pictures.kinds import KINDS
from tests.courses.pictures.trade import catalogue

NUMBERS = (7901, 7902, 7903, 7904)
SEVERITIES = (0.45, 0.6, 0.6, 0.75)
BOX = [0.12, 0.1, 0.88, 0.9]
LAMPS = ((0.5, 0.42), (0.62, 0.46))
SHOTS = (("point", LAMPS[0]), ("point", LAMPS[1]), ("diffuse", LAMPS[0]), ("raking", LAMPS[0]))


def shots(number: int, *defects: dict[str, object]) -> list[np.ndarray]:
    """Return the pictures of one panel in every light."""
    raw = {"substrate": "clear_coat", "colour": "navy", "size": [480, 320], "seed": number, "defects": list(defects)}
    scene = Scene.of(raw, catalogue())
    panels = {light: Panel.build(scene, light) for light in LIGHTS}
    return [panels[light].shoot(lamp).rgb.astype(np.float32) for light, lamp in SHOTS]


@cache
def clean(number: int) -> list[np.ndarray]:
    """Return the pictures of the clean panel."""
    return shots(number)


def rms(change: np.ndarray) -> float:
    """Return the root mean square, never quite 0."""
    return float(np.sqrt((change**2).mean())) + 0.02


def coherence(change: np.ndarray) -> float:
    """Return how much the marks run one way, 0 to 1."""
    gy, gx = np.gradient(blur(glints(change.astype(np.float32)), 0.8))
    xx, yy, xy = (gx * gx).sum(), (gy * gy).sum(), (gx * gy).sum()
    return float(np.hypot(xx - yy, 2 * xy) / (xx + yy + 1e-9))


def features(kind: str, number: int, severity: float, turn: float) -> list[float]:
    """Return what sets a kind apart, worked out from its change in four shots."""
    defect = {"kind": kind, "severity": severity, "direction": turn, "region": {"box": BOX}}
    found, bare = shots(number, defect), clean(number)
    point, moved, soft, raking = (lightness(a) - lightness(b) for a, b in zip(found, bare, strict=True))
    hue = found[2] - bare[2]
    tangency, evenness = glint_geometry(point, LAMPS[0])
    same = float((point * moved).mean() / (rms(point) * rms(moved)))
    out = [tangency, evenness, np.log(band_energy(point, LAMPS[0]) + 0.01), same, coherence(point), coherence(soft)]
    for change in (point, soft, raking):
        fine = glints(change.astype(np.float32))
        strong = np.abs(change) > 2
        out += [np.log(rms(change)), float(change.mean()) / rms(change), np.log(rms(fine) / rms(change))]
        out += [float(np.log(strong.mean() + 1e-3)), float(np.cbrt((fine**3).mean()) / rms(fine))]
    out += [float((hue[..., 0] - hue[..., 2]).mean() / rms(hue)), float((hue[..., 1] - hue[..., 2]).mean() / rms(hue))]
    return [*out, rms(hue - hue.mean(axis=2, keepdims=True)) / rms(hue)]


def main() -> None:
    """Measure every kind, leave each picture out in turn, name the kind whose mean is nearest."""
    names, rows = [], []
    for kind in KINDS:
        for nth, (number, severity) in enumerate(zip(NUMBERS, SEVERITIES, strict=True)):
            rows.append(features(kind, number, severity, 25.0 * nth))
            names.append(kind)
        print(kind, file=sys.stderr, flush=True)
    table = np.array(rows)
    table = (table - table.mean(axis=0)) / (table.std(axis=0) + 1e-9)
    labels, misses = np.array(names), Counter[tuple[str, str]]()
    for nth, kind in enumerate(names):
        keep = np.arange(len(names)) != nth
        means = {other: table[keep & (labels == other)].mean(axis=0) for other in KINDS}
        nearest = min(means, key=lambda other: float(((table[nth] - means[other]) ** 2).sum()))
        if nearest != kind:
            misses[kind, nearest] += 1
    print(f"{len(names) - sum(misses.values())} of {len(names)} right")
    for (kind, taken), count in sorted(misses.items()):
        print(f"{kind} taken for {taken}: {count}")


if __name__ == "__main__":
    main()
