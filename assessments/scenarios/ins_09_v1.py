"""INS-09 *Not with this kit*, version 1: six dull patches of one boat, and what each of them turns out to be.

What a patch can be, where it lies and what its edge, the rag and the papers say of it stands in
``fixtures/scenarios/INS-09-v1.toml``; here they are dealt out.
"""

from collections.abc import Callable, Mapping
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.sketch import Thrown
from assessments.scenarios.spec import Kind

PATCHES: Final = 6
PAINT: Final = ("two_pack", "flake")
CLEAR_PLASTIC: Final = ("acrylic", "polycarbonate", "clear_vinyl")
NO_ACID: Final = ("wrap", "anodised", "teak")
WATER_ALONE: Final = ("anodised", "teak")


def draw(chance: Chance, kind: Kind) -> Mapping[str, object] | Thrown:
    """Return the facts of one try, or the condition that threw it away."""
    under = _shuffled(chance, _under(chance, kind))
    places = [kind.pick(chance, f"place_{what}") for what in under]
    if len(set(places)) < PATCHES:
        return Thrown("two patches lie in one place")
    facts: dict[str, object] = {f"place_{n}": place for n, place in enumerate(places, 1)}
    for n, what in enumerate(under, 1):
        facts[f"edge_{n}"] = kind.pick(chance, f"edge_{what}")
        facts[f"rag_{n}"] = kind.pick(chance, f"rag_{what}")
    papers = [kind.pick(chance, f"paper_{what}") for what in under if kind.has(f"paper_{what}")]
    return {
        **facts,
        "paper": "; ".join(papers),
        "under": [{"n": n, "what": what} for n, what in enumerate(under, 1)],
    }


def key(facts: Record) -> dict[str, object]:
    """Return the answer worked from what lies under each patch, and which patches each ban is about."""
    under = under_of(facts)
    plastics = _those(under, CLEAR_PLASTIC.__contains__)
    rubbed = _those(under, ("gel_coat", *PAINT).__contains__)
    return {
        "asked": ["paper", *(f"edge_{n}" for n in under), *(f"rag_{n}" for n in rubbed)],
        "patches": [
            {
                "n": n,
                "what": what,
                "verdict": "polish" if what == "gel_coat" else "leave",
                "cleaner": "water" if what in WATER_ALONE else "soap",
            }
            for n, what in under.items()
        ],
        "steps": [
            {"op": "wash"},
            {"op": "tape", "zone": "rest"},
            *({"op": op, "zone": "main"} for op in ("test_spot", "cut", "finish")),
            {"op": "record"},
            {"op": "tell"},
        ],
        "plastics": plastics,
        "no_rag": [f"rag_{n}" for n in plastics],
        "no_paper": _those(under, PAINT.__contains__),
        "no_acid": _those(under, NO_ACID.__contains__),
        "leave": _those(under, lambda what: what != "gel_coat"),
        "gel": _those(under, lambda what: what == "gel_coat"),
        "record_zones": ["all"],
    }


def model(facts: Record, _key: Mapping[str, object], answer: Mapping[str, object]) -> dict[str, object]:
    """Return how many of the patches were named right."""
    rows, under = answer["patches"], under_of(facts)
    said = [row for row in rows if isinstance(row, Mapping)] if isinstance(rows, list | tuple) else []
    return {"named": sum(row.get("what") == under.get(int(str(row["n"]))) for row in said)}


def under_of(facts: Record) -> dict[int, str]:
    """Return what lies under each patch, by its number from 1 to 6."""
    rows = facts["under"]
    read = [row for row in rows if isinstance(row, Record)] if isinstance(rows, tuple) else []
    return {round(row.number("n")): str(row["what"]) for row in read}


def _under(chance: Chance, kind: Kind) -> list[str]:
    """Return six things, gel coat once or twice: a paint, a clear plastic, one thing more, and others at will."""
    things = ["gel_coat"] * round(kind.number("gel"))
    things += [kind.pick(chance, group) for group in ("paint", "plastic", "other")]
    while len(things) < PATCHES:
        left = [what for what in (*PAINT, *CLEAR_PLASTIC, *NO_ACID) if what not in things]
        things.append(chance.pick(left))
    return things


def _shuffled(chance: Chance, things: list[str]) -> list[str]:
    left = list(things)
    return [left.pop(chance.whole(len(left))) for _ in things]


def _those(under: Mapping[int, str], belongs: Callable[[str], bool]) -> list[int]:
    return [n for n, what in under.items() if belongs(what)]
