"""HOM-02 *Quote on the pier*, version 1: a boat by its dimensions, a table of minutes, a map, and a friend's guide.

Boats are drawn in tenths of a foot and kept in whole centimetres; a draw whose key would be another one for a reader
of feet, who sees every figure rounded in feet, is thrown away. The table of minutes is written into the file, for a
published version keeps the table it was set with. Ranges and limits stand in ``fixtures/scenarios/HOM-02-v1.toml``.
"""

from collections.abc import Callable, Mapping
from math import ceil
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.fields import Record
from assessments.scenarios.sketch import Thrown
from assessments.scenarios.spec import Kind
from courses.trade.estimate import (
    DISC_M2,
    PAD_M2,
    Grade,
    Job,
    discs,
    hours_of,
    labour,
    materials,
    section_m2,
)
from courses.trade.film import Hull, coating_by_rate_ml, hull_area_m2, of_factor, of_loss, whole_packs
from courses.trade.units import Preferences, from_shown, rounded, to_shown

Values = Mapping[str, object]
As = Callable[[float, str], float]

FOOT_M: Final = 0.3048
LOSS_PERCENT, FACTOR = 30.0, 1.3
GRADES: Final = (Grade("P1500", 4), Grade("P2000", 3))
STEPS: Final = (
    ("wash", "wash", 1),
    ("chem", "chem", 1),
    ("tape", "tape", 1),
    ("test_spot", "test_spot", 1),
    ("sand_four", "sand", 4),
    ("sand_three", "sand", 3),
    ("rotary", "rotary", 3),
    ("da_finish", "da_finish", 4),
    ("wipe", "wipe", 1),
    ("dry", "dry", 1),
    ("inspect", "inspect", 1),
    ("coat", "coat", 1),
)
"""The rows of the sheet in their order, the row of the trade's table each is taken from, and the passes it holds."""
SHEET_M2: Final = 10.0
"""The sheet gives its minutes for so many square metres: in feet they round to less than half a per cent."""
CLOSE: Final = 0.012
"""How far an area may be off where every figure was read in feet, and a little more."""
ALWAYS: Final = ("nonskid", "seats", "glazing", "steps")
SOMETIMES: Final = ("platform", "wheel", "anodes")
WALKED: Final = ("nonskid", "steps", "platform", "wheel", "seats")
UNTOUCHED: Final = ("glazing", "anodes")
"""What else an offer leaves out: solvent crazes the one, the other works bare."""


def draw(chance: Chance, kind: Kind) -> Values | Thrown:
    """Return the facts of one try, or the condition that threw it away."""
    facts: dict[str, object] = {
        **_boat(chance, kind),
        "formula": kind.pick(chance, "formula"),
        "grades": kind.pick(chance, "grades"),
        "loss": kind.pick(chance, "loss"),
        "pack_ml": float(kind.pick(chance, "pack_ml")),
        "stripe_ml": kind.between(chance, "stripe_ml"),
        "cure_d": kind.number("cure_d"),
        "map": [*ALWAYS, *(place for place in SOMETIMES if chance.happens(kind.number("share")))],
        "table": [{"step": step, "min": kind.number(f"{step}_min")} for step, _row, _passes in STEPS],
    }
    mine, theirs = (_worked(facts, reader) for reader in (_as_it_is, _in_feet))
    if mine["slack_pct"] not in kind.span("slack_pct"):
        return Thrown("the last pack holds too much, or too little, to spare")
    if _apart(mine, theirs) or _close_to_a_step(facts, mine["topsides"]):
        return Thrown("a reader of feet would come to another figure")
    return facts


def key(facts: Record) -> dict[str, object]:
    """Return the answer worked from the sheet and the map, and what is compared beside it."""
    mapped = _list(facts, "map")
    walked = [place for place in WALKED if place in mapped]
    must = [*walked, *(place for place in UNTOUCHED if place in mapped)]
    return {
        **_worked(facts, _as_it_is),
        "formula": facts["formula"],
        "loss": facts["loss"],
        "excluded": must,
        "coated": ["topsides", "deck_gloss"],
        "solvent_zones": ["topsides"],
        "spot": True,
        "cure_in_hours": False,
        "used_page": True,
        "walk_zones": walked,
        "must_exclude": must,
        "must_n": len(must),
    }


def _boat(chance: Chance, kind: Kind) -> dict[str, object]:
    """Return the dimensions, each a whole number of tenths of a foot, in metres to the centimetre."""
    length = kind.between(chance, "loa_ft")
    feet = {
        "loa_m": length,
        "lwl_m": length * kind.between(chance, "lwl_share"),
        "beam_m": length * kind.between(chance, "beam_share"),
        "draft_m": kind.between(chance, "draft_ft"),
        "freeboard_m": kind.between(chance, "freeboard_ft"),
    }
    return {name: rounded(rounded(each, 1) * FOOT_M, 2) for name, each in feet.items()}


def _worked(facts: Values, shown_as: As) -> dict[str, float]:
    """Return every figure of the quote, from the sheet as a reader sees it."""
    names = ("loa_m", "lwl_m", "beam_m", "draft_m", "freeboard_m")
    hull = Hull(**{name: shown_as(_number(facts, name), "m") for name in names})
    side = rounded(hull_area_m2("T1", hull), 2)
    job = Job(
        side,
        section_m2(hull.freeboard_m or 0.0),
        grades=GRADES if facts["grades"] == "two" else GRADES[:1],
        rotary=1,
        da_finish=1,
        coats=1,
    )
    need = rounded(coating_by_rate_ml(side), 1)
    packs = whole_packs(need, _number(facts, "pack_ml"))
    more = of_loss(LOSS_PERCENT) if facts["loss"] == "L1" else of_factor(FACTOR)
    return {
        "topsides": side,
        "area": rounded(hull_area_m2(str(facts["formula"]), hull), 2),
        "h": rounded(hours_of(labour(job, _minutes(facts))), 1),
        "discs": discs(job) + len(job.grades),
        "pads": sum(item.all for item in materials(job) if item.name.startswith("pads_")),
        "ml": need,
        "packs": packs.count,
        "slack_pct": rounded(packs.slack_percent, 1),
        "order_ml": rounded(_number(facts, "stripe_ml") * more, 0),
    }


def _minutes(facts: Values) -> dict[str, float]:
    """Return the trade's table, a square metre and pass, from the sheet's; no stage here cuts with a dual-action."""
    sheet = {str(row["step"]): float(str(row["min"])) for row in _rows(facts)}
    return {"da_cut": 0.0} | {row: sheet[step] / SHEET_M2 / passes for step, row, passes in reversed(STEPS)}


def _as_it_is(value: float, _unit: str) -> float:
    return value


def _in_feet(value: float, unit: str) -> float:
    """Return a length as somebody reads it in feet, to a tenth, back in metres."""
    number, _symbol = to_shown(value, unit, Preferences.us())
    return from_shown(rounded(number, Preferences.us().unit_for(unit).decimals), unit, Preferences.us())


def _apart(mine: Mapping[str, float], theirs: Mapping[str, float]) -> bool:
    return any(abs(theirs[name] / mine[name] - 1) > 0.005 for name in ("topsides", "area"))


def _close_to_a_step(facts: Values, side_m2: float) -> bool:
    """Whether a count that is rounded up would be another one if its area were a little larger or smaller."""
    section = section_m2(_number(facts, "freeboard_m"))
    parts = (side_m2 / section, section / DISC_M2, side_m2 / PAD_M2["rotary"], side_m2 / PAD_M2["da_finish"])
    return any(ceil(part * (1 - CLOSE)) != ceil(part * (1 + CLOSE)) for part in parts)


def _number(facts: Values, name: str) -> float:
    return float(str(facts[name]))


def _list(facts: Values, name: str) -> list[str]:
    found = facts[name]
    return [str(each) for each in found] if isinstance(found, list | tuple) else []


def _rows(facts: Values) -> list[Mapping[str, object]]:
    found = facts["table"]
    return [row for row in found if isinstance(row, Mapping)] if isinstance(found, list | tuple) else []
