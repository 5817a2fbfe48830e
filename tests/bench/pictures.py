"""A panel built, and its lamp moved, beside Pillow encoding the same picture: `python -m tests.bench.pictures`.

Prints for each scene the median of paired ratios of processor time, one core, and the most memory that a build and
five places of the lamp hold above what importing takes, each in a process of its own.
"""

import io
import re
import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

from PIL import Image

from courses.pictures import Panel, Scene, Shot
from tests.courses.pictures.trade import catalogue

ROUNDS = 7
LAMPS = ((0.5, 0.42), (0.3, 0.3), (0.7, 0.3), (0.3, 0.6), (0.7, 0.6))
SCENES = (
    ("swirl", 0.6, "black", "point"),
    ("hologram", 0.6, "black", "point"),
    ("hologram", 0.6, "black", "raking"),
    ("oxidation", 0.6, "navy", "diffuse"),
    ("blisters", 0.6, "white", "raking"),
)
"""Kind, severity, colour, light: marks by the hundred thousand, a film, a relief."""


def scene(kind: str, severity: float, colour: str) -> Scene:
    """Return a whole panel of one defect, 960 × 640."""
    defects = [{"kind": kind, "severity": severity, "direction": 20}]
    return Scene.of({"colour": colour, "size": [960, 640], "seed": 77, "defects": defects}, catalogue())


def timed(act: Callable[[], object]) -> float:
    """Return the seconds of processor time that an act takes."""
    began = time.process_time()
    act()
    return time.process_time() - began


def encoded(shot: Shot) -> bytes:
    """Return what Pillow makes of the picture, as WebP of quality 85."""
    kept = io.BytesIO()
    Image.fromarray(shot.rgb).save(kept, "WEBP", quality=85)
    return kept.getvalue()


def ratios(kind: str, severity: float, colour: str, light: str) -> tuple[float, float, int]:
    """Return build to encode, next lamp place to encode, and the bytes of the first picture."""
    shown = scene(kind, severity, colour)
    panel = Panel.build(shown, light)
    shot = panel.shoot()
    builds, shots = [], []
    for _ in range(ROUNDS):
        plain = timed(lambda: encoded(shot))
        builds.append(timed(lambda: Panel.build(shown, light)) / plain)
        shots.append(timed(lambda: panel.shoot((0.4, 0.5))) / plain)
    return statistics.median(builds), statistics.median(shots), len(shot.webp())


def held_mb() -> float:
    """Return the most memory this process has held so far, MB; Linux alone keeps that mark for each process."""
    held = re.search(r"VmHWM:\s+(\d+) kB", Path("/proc/self/status").read_text(encoding="ascii"))
    assert held is not None
    return int(held[1]) / 1024


def peak_mb(kind: str, severity: str, colour: str, light: str) -> float:
    """Return what a build and five places of the lamp held above importing, MB."""
    shown = scene(kind, float(severity), colour)
    before = held_mb()
    panel = Panel.build(shown, light)
    for lamp in LAMPS:
        panel.shoot(lamp).webp()
    return held_mb() - before


def main() -> None:
    """Measure every scene; with four words, only the memory of that one."""
    if len(sys.argv) == 5:
        print(peak_mb(*sys.argv[1:]))
        return
    for one in SCENES:
        words = [sys.executable, "-m", "tests.bench.pictures", *map(str, one)]
        held = float(subprocess.run(words, capture_output=True, text=True, check=True).stdout)
        build, move, size = ratios(*one)
        print(f"{' '.join(map(str, one))}: build {build:.1f} x, next place {move:.1f} x, {held:.0f} MB, {size} bytes")


if __name__ == "__main__":
    main()
