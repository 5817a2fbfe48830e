"""The book of the bench, forty rules, and the schema of the cases it judges."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from assessments.rules import (
    Function,
    Kind,
    RuleBook,
    Schema,
    SharedBook,
    choice,
    integer,
    many,
    num,
    read_book,
    record,
    text,
    truth,
)
from courses.trade.air import dew_point_degc

SUBSTRATES = ("gel_coat", "topcoat_2k", "clear_coat")
DEFECTS = ("oxidation", "fading", "swirl", "hologram", "scratch", "haze", "water_spots_etched", "scum_line")
OPS = ("prerinse", "wash", "iron", "rinse", "dry", "tape", "sand", "wipe", "cut", "refine", "inspect", "coat")
KIT = ("gloves", "goggles", "respirator", "ear_defenders", "boots")
PRODUCTS = ("acid_wash", "alkaline_wash", "iron_remover", "panel_wipe", "compound", "polish", "coating")
PADS = ("block", "wool", "microfibre", "foam_cut", "foam_finish")
AIR = ("doors_shut", "doors_open", "extraction")
STAGES = ("sand", "cut", "refine")


def _defects() -> Kind:
    return many(choice(DEFECTS), 12)


FACTS = record(
    {
        "substrate": choice(SUBSTRATES),
        "defects": _defects(),
        "film_um": num("um"),
        "reserve_um": num("um"),
        "first_grit": integer(),
        "day_min": num("min"),
        "air_degc": num("degc"),
        "air_rh": num("rh"),
        "panel_degc": num("degc"),
        "ventilation": choice(AIR),
        "cure_h": num("h"),
        "gloss60_before": num("GU"),
        "gloss60_agreed": num("GU"),
    }
)
STEP = record(
    {
        "n": integer(),
        "op": choice(OPS),
        "grit": integer(),
        "pad": choice(PADS),
        "passes": integer(),
        "speed_rpm": num("rpm"),
        "minutes": num("min"),
        "dwell_min": num("min"),
        "um": num("um"),
        "wet": truth(),
        "taped": truth(),
    }
)
ANSWER = record(
    {
        "finding": choice(DEFECTS),
        "defects": _defects(),
        "stage": choice(STAGES),
        "film_um": num("um", opt=True),
        "surface_degc": num("degc", opt=True),
        "cure_h": num("h", opt=True),
        "minutes": num("min"),
        "kit": many(choice(KIT), 12),
        "products": many(choice(PRODUCTS), 20),
        "waste": text(80),
        "go_ahead": truth(),
        "sure": num(opt=True),
        "note": text(),
        "plan": many(STEP, 40),
    }
)
RESIDUAL = record({"kind": choice(DEFECTS), "depth_um": num("um"), "open": num()})
MODEL = record(
    {
        "film_um": num("um"),
        "removed_um": num("um"),
        "heat_degc": num("degc"),
        "gloss60": num("GU"),
        "minutes": num("min"),
        "residual": many(RESIDUAL, 40),
    }
)
KEY = record(
    {
        "finding": choice(DEFECTS),
        "absent": _defects(),
        "kit": many(choice(KIT), 12),
        "banned": many(choice(PRODUCTS), 20),
        "waste": text(80),
    }
)
SCHEMA = Schema({"facts": FACTS, "answer": ANSWER, "model": MODEL, "key": KEY})
FUNCTIONS = (Function("dew_point", (num("degc"), num("rh")), num("degc"), 10, dew_point_degc),)


@cache
def book() -> RuleBook:
    """Return the forty rules as an instructor wrote them."""
    file = Path(__file__).with_name("book.toml")
    return read_book(file.read_text(encoding="utf-8"), file.name, SharedBook({}))


def texts() -> tuple[str, ...]:
    """Return the test of each rule, in the order of the book."""
    return tuple(str(rule.test) for rule in book().rules)
