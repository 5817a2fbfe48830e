"""The door to the renderer: `picture SPEC.json --light L --lamp X,Y --out F.webp [--masks DIR] [--json]`."""

import math
import re
import resource
import sys
import time
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from django.core.management.base import CommandParser

from courses.management.door import Door, DoorError, read_json
from courses.pictures import LAMP, LIGHTS, Panel, Scene, Seen, mask_files, measured
from courses.shipped import catalogue

STATUS = Path("/proc/self/status")
"""What the kernel says of a process, where it says so."""


class Command(Door):
    """Renders one picture of a scene, and says how each of its defects shows."""

    help = "Render a panel, such as: picture panel.json --light point --lamp 0.5,0.42 --out panel.webp --json"

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("spec", help="the scene as a JSON object; - for standard input")
        parser.add_argument("--light", choices=LIGHTS, default="point", help="what the panel is looked at under")
        parser.add_argument("--lamp", default="{},{}".format(*LAMP), help="where the lamp's reflection stands, X,Y")
        parser.add_argument("--out", required=True, help="the picture to write, a name that ends in .webp")
        parser.add_argument("--masks", help="a folder for one PNG a defect, white where it lies")
        parser.add_argument("--json", action="store_true", help="answer in JSON")

    def answer(self, **options: Any) -> object:
        lamp = _place(options["lamp"])
        out, masks = _to_write(options["out"]), options["masks"] and _folder(options["masks"])
        scene = Scene.of(_object(options["spec"]), catalogue())
        light = options["light"]
        began = time.perf_counter()
        picture = Panel.build(scene, light).shoot(lamp).webp()
        took, peak = time.perf_counter() - began, _peak_mb()
        seen = measured(scene, light, lamp)
        _written(out, picture)
        if masks:
            _written_all(masks, mask_files(scene, light))
        said = {
            "size": list(scene.size),
            "bytes": len(picture),
            "ms": round(took * 1000, 1),
            "peak_mb": peak,
            "defects": [_shown(one) for one in seen],
        }
        return said if options["json"] else _in_words(said)


def _object(source: str) -> Mapping[str, object]:
    read = read_json(source)
    if isinstance(read, dict):
        return read
    raise DoorError(f'{source} holds no object; write {{"substrate": …, "colour": …, "defects": […]}}.')


def _place(given: str) -> tuple[float, float]:
    wrong = f"--lamp {given!r} is no place; write two fractions of the picture from 0 to 1, such as 0.5,0.42."
    try:
        x, y = (float(part) for part in given.split(","))
    except ValueError:
        raise DoorError(wrong) from None
    if not all(math.isfinite(part) and 0 <= part <= 1 for part in (x, y)):
        raise DoorError(wrong)
    return x, y


def _to_write(name: str) -> Path:
    path = Path(name)
    if path.suffix != ".webp":
        raise DoorError(f"--out {name!r} is no WebP picture; end its name in .webp.")
    if path.is_dir() or not path.parent.is_dir():
        raise DoorError(f"--out {name!r} can't be written; name a file in a folder that is there.")
    return path


def _folder(name: str) -> Path:
    path = Path(name)
    if path.exists() and not path.is_dir():
        raise DoorError(f"--masks {name!r} is a file; name a folder.")
    return path


def _written(path: Path, content: bytes) -> None:
    try:
        path.write_bytes(content)
    except OSError as wrong:
        raise DoorError(f"{path} can't be written: {wrong.strerror}; name another place.") from wrong


def _written_all(folder: Path, files: Mapping[str, bytes]) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as wrong:
        raise DoorError(f"{folder} can't be made: {wrong.strerror}; name another folder.") from wrong
    for name, content in files.items():
        _written(folder / name, content)


def _peak_mb(status: Path = STATUS) -> float:
    """The most memory this process has held so far.

    On Linux `getrusage` also counts what the parent held before this process began, so the kernel's own mark is read.
    """
    if status.is_file():
        held = re.search(r"VmHWM:\s+(\d+) kB", status.read_text(encoding="ascii", errors="replace"))
        if held:
            return round(int(held[1]) / 2**10, 1)
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return round(most / (2**20 if sys.platform == "darwin" else 2**10), 1)


def _shown(seen: Seen) -> dict[str, object]:
    return {
        "kind": seen.kind,
        "cnr": round(seen.cnr, 2),
        "rms_dl": round(seen.rms_dl, 2),
        "area": round(seen.area, 4),
    }


def _in_words(said: dict[str, Any]) -> str:
    width, height = said["size"]
    lines = [f"{width} × {height} pixels, {said['bytes']} bytes, {said['ms']} ms, {said['peak_mb']} MB at most"]
    lines += [
        f"{one['kind']}: contrast {one['cnr']}, change of lightness {one['rms_dl']}, {one['area']:.1%} of the picture"
        for one in said["defects"]
    ]
    return "\n".join(lines)
