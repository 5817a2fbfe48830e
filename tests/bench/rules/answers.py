"""Two hundred cases for the book: drawn, answered well and badly, about one optional value in seven left out."""

from __future__ import annotations

from random import Random
from typing import Any

from tests.bench.rules.book import AIR, DEFECTS, KIT, PADS, PRODUCTS, STAGES, SUBSTRATES

Case = dict[str, Any]
CASES, SEED = 200, 41
MISSING = 0.15
WASTE = "Into the tank, never the drain"
START = ("prerinse", "wash", "iron", "rinse", "dry", "tape")
FINISH = ("cut", "wipe", "refine", "inspect", "coat")


def cases(count: int = CASES, seed: int = SEED) -> list[Case]:
    """Return so many cases, the same for the same seed."""
    chance = Random(seed)
    return [_case(chance) for _ in range(count)]


def _case(chance: Random) -> Case:
    facts = _facts(chance)
    key = _key(chance, facts)
    answer = _answer(chance, facts)
    return {"facts": facts, "answer": answer, "model": _model(chance, facts, answer["plan"]), "key": key}


def _between(chance: Random, low: float, high: float) -> float:
    return round(chance.uniform(low, high), 2)


def _maybe(chance: Random, value: float) -> float | None:
    return None if chance.random() < MISSING else value


def _facts(chance: Random) -> Case:
    film = _between(chance, 25, 160)
    return {
        "substrate": chance.choice(SUBSTRATES),
        "defects": chance.sample(DEFECTS, 3),
        "film_um": film,
        "reserve_um": round(film * 0.6, 2),
        "first_grit": chance.choice([600, 800, 1000]),
        "day_min": _between(chance, 120, 300),
        "air_degc": _between(chance, 5, 32),
        "air_rh": _between(chance, 30, 95),
        "panel_degc": _between(chance, 4, 38),
        "ventilation": chance.choice(AIR),
        "cure_h": _between(chance, 12, 48),
        "gloss60_before": _between(chance, 20, 60),
        "gloss60_agreed": _between(chance, 70, 88),
    }


def _key(chance: Random, facts: Case) -> Case:
    return {
        "finding": facts["defects"][0],
        "absent": [defect for defect in DEFECTS if defect not in facts["defects"]][:3],
        "kit": chance.sample(KIT, 2),
        "banned": chance.sample(PRODUCTS, 2),
        "waste": WASTE,
    }


def _answer(chance: Random, facts: Case) -> Case:
    named = chance.sample(facts["defects"], chance.choice([1, 2, 2]))
    stray = [chance.choice(DEFECTS)] if chance.random() < 0.4 else []
    return {
        "finding": chance.choice(facts["defects"]),
        "defects": list(dict.fromkeys([*named, *stray])),
        "stage": chance.choice(STAGES),
        "film_um": _maybe(chance, round(facts["film_um"] + chance.uniform(-15, 15), 2)),
        "surface_degc": _maybe(chance, _between(chance, 5, 35)),
        "cure_h": _maybe(chance, _between(chance, 8, 60)),
        "minutes": _between(chance, 80, 220),
        "kit": chance.sample(KIT, 4),
        "products": chance.sample(PRODUCTS, 3),
        "waste": chance.choice(["into the  tank, NEVER the drain", f"{WASTE} ", "down the drain"]),
        "go_ahead": chance.random() < 0.6,
        "sure": _maybe(chance, _between(chance, 0, 1)),
        "note": "x" * chance.randint(0, 60),
        "plan": [_step(chance, n, op) for n, op in enumerate(_ops(chance))],
    }


def _ops(chance: Random) -> list[str]:
    """Return a plan in good order, sometimes with two steps changed about, sometimes with one left out."""
    ops = [*START, *["sand", "wipe"] * chance.randint(0, 4), *FINISH]
    if chance.random() < 0.4:
        one, other = chance.randrange(len(ops)), chance.randrange(len(ops))
        ops[one], ops[other] = ops[other], ops[one]
    if chance.random() < 0.3:
        ops.pop(chance.randrange(len(ops)))
    return ops


def _step(chance: Random, n: int, op: str) -> Case:
    cuts = op in ("sand", "cut", "refine")
    return {
        "n": n,
        "op": op,
        "grit": chance.choice([600, 800, 1000, 1500, 2000]),
        "pad": chance.choice(PADS),
        "passes": chance.randint(1, 5),
        "speed_rpm": _between(chance, 600, 1900),
        "minutes": _between(chance, 3, 20),
        "dwell_min": _between(chance, 0, 12),
        "um": _between(chance, 0, 6.2) if cuts else 0.0,
        "wet": chance.random() < 0.93,
        "taped": chance.random() < 0.4,
    }


def _model(chance: Random, facts: Case, plan: list[Case]) -> Case:
    removed = round(sum(step["um"] for step in plan) + chance.uniform(-4, 4), 2)
    slip = chance.choice([0, 0, 0, facts["film_um"] / 2])
    return {
        "film_um": round(facts["film_um"] - removed - slip, 2),
        "removed_um": removed,
        "heat_degc": _between(chance, 35, 66),
        "gloss60": _between(chance, 65, 95),
        "minutes": _between(chance, 80, 220),
        "residual": [_mark(chance) for _ in range(chance.randint(0, 5))],
    }


def _mark(chance: Random) -> Case:
    return {"kind": chance.choice(DEFECTS), "depth_um": _between(chance, 0, 2.4), "open": _between(chance, 0, 0.07)}
