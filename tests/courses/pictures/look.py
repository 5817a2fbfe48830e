"""A sheet of pictures to look at:

`python -m tests.courses.pictures.look swirl:0.6 --colour black white --out sheet.png`.
"""

import argparse
import time
from pathlib import Path

import numpy as np
from PIL import Image

from courses.pictures import LIGHTS, Panel, Scene, measured
from tests.courses.pictures.trade import catalogue


def scene(kind: str, colour: str, args: argparse.Namespace) -> Scene:
    """Return the scene of one cell of the sheet: kind:severity, or `clean`."""
    name, _colon, severity = kind.partition(":")
    width, height = (int(side) for side in args.size.split("x"))
    box = [float(edge) for edge in args.box.split(",")]
    defect = {"kind": name, "severity": float(severity or 0.6), "region": {"box": box}, "direction": args.direction}
    raw = {
        "substrate": args.substrate,
        "colour": colour,
        "size": [width, height],
        "seed": args.seed,
        "curve": args.curve,
        "defects": [] if name == "clean" else [defect],
    }
    return Scene.of(raw, catalogue())


def main() -> None:
    """Render the sheet and write it."""
    parser = argparse.ArgumentParser()
    parser.add_argument("kinds", nargs="+")
    parser.add_argument("--colour", nargs="+", default=["black", "navy", "white"])
    parser.add_argument("--light", nargs="+", default=list(LIGHTS))
    parser.add_argument("--size", default="480x320")
    parser.add_argument("--box", default="0,0,1,1")
    parser.add_argument("--lamp", default="0.5,0.42")
    parser.add_argument("--seed", type=int, default=5)
    parser.add_argument("--direction", type=float, default=20.0)
    parser.add_argument("--substrate", default="clear_coat")
    parser.add_argument("--curve", default="flat")
    parser.add_argument("--measure", action="store_true")
    parser.add_argument("--out", type=Path, default=Path("sheet.png"))
    args = parser.parse_args()
    x, y = (float(part) for part in args.lamp.split(","))
    rows = []
    for kind in args.kinds:
        row = []
        for colour in args.colour:
            for light in args.light:
                began = time.perf_counter()
                shown = scene(kind, colour, args)
                row.append(Panel.build(shown, light).shoot((x, y)).rgb)
                took = time.perf_counter() - began
                seen = measured(shown, light, (x, y)) if args.measure else ""
                print(kind, colour, light, f"{took:.2f} s", *seen, flush=True)
        rows.append(np.hstack(row))
    Image.fromarray(np.vstack(rows)).save(args.out)


if __name__ == "__main__":
    main()
