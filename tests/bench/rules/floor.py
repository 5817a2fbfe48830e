"""The floor: the forty rules as anyone would write them in Python, one function each, no engine."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from courses.trade.air import dew_point_degc as dew_point

Part = dict[str, Any]
Rule = Callable[[Part, Part, Part, Part], bool]


def near(a: float, b: float, tolerance: float) -> bool:
    """Return whether a lies within the tolerance of b."""
    return abs(a - b) <= tolerance


def overlap(xs: list[str], ys: list[str]) -> int:
    """Return how many of xs are in ys."""
    found = 0
    for x in xs:
        if x in ys:
            found += 1
    return found


def before(steps: list[Part], a: str, b: str) -> bool:
    """Return whether the last a stands before the first b."""
    last = first = -1
    for place, step in enumerate(steps):
        op = step["op"]
        if op == a:
            last = place
        if op == b and first < 0:
            first = place
    return 0 <= last < first


def starts_before(steps: list[Part], a: str, b: str) -> bool:
    """Return whether the first a stands before the first b."""
    seen = False
    for step in steps:
        op = step["op"]
        if op == b:
            return seen
        if op == a:
            seen = True
    return False


def norm(text: str) -> str:
    """Return the text without capitals, trimmed, single spaces."""
    return " ".join(text.casefold().split())


def rule_1(f: Part, a: Part, m: Part, k: Part) -> bool:
    return a["finding"] == k["finding"]


def rule_2(f: Part, a: Part, m: Part, k: Part) -> bool:
    return overlap(a["defects"], f["defects"]) >= 2


def rule_3(f: Part, a: Part, m: Part, k: Part) -> bool:
    return m["film_um"] >= f["reserve_um"]


def rule_4(f: Part, a: Part, m: Part, k: Part) -> bool:
    return m["removed_um"] <= 0.25 * f["film_um"]


def rule_5(f: Part, a: Part, m: Part, k: Part) -> bool:
    return a["film_um"] is not None and near(a["film_um"], f["film_um"], 10.0)


def rule_6(f: Part, a: Part, m: Part, k: Part) -> bool:
    return m["heat_degc"] < 60.0


def rule_7(f: Part, a: Part, m: Part, k: Part) -> bool:
    return a["surface_degc"] is not None and a["surface_degc"] - dew_point(f["air_degc"], f["air_rh"]) >= 3.0


def rule_8(f: Part, a: Part, m: Part, k: Part) -> bool:
    return "respirator" in a["kit"] or f["ventilation"] == "extraction"


def rule_9(f: Part, a: Part, m: Part, k: Part) -> bool:
    if f["substrate"] == "gel_coat":
        return a["stage"] in ("sand", "cut")
    return a["stage"] in ("cut", "refine")


def rule_10(f: Part, a: Part, m: Part, k: Part) -> bool:
    return a["cure_h"] is not None and a["cure_h"] >= f["cure_h"]


def rule_11(f: Part, a: Part, m: Part, k: Part) -> bool:
    return a["cure_h"] is not None and (f["air_rh"] <= 80.0 or a["cure_h"] >= f["cure_h"] * 1.5)


def rule_12(f: Part, a: Part, m: Part, k: Part) -> bool:
    return m["gloss60"] >= f["gloss60_agreed"]


def rule_13(f: Part, a: Part, m: Part, k: Part) -> bool:
    return m["gloss60"] - f["gloss60_before"] >= 20.0


def rule_14(f: Part, a: Part, m: Part, k: Part) -> bool:
    return abs(a["minutes"] - m["minutes"]) <= 0.2 * m["minutes"]


def rule_15(f: Part, a: Part, m: Part, k: Part) -> bool:
    fair = 10.0 <= f["panel_degc"] <= 30.0
    return a["go_ahead"] if fair else not a["go_ahead"]


def rule_16(f: Part, a: Part, m: Part, k: Part) -> bool:
    return before(a["plan"], "wash", "iron")


def rule_17(f: Part, a: Part, m: Part, k: Part) -> bool:
    return before(a["plan"], "iron", "sand") or not any(s["op"] == "sand" for s in a["plan"])


def rule_18(f: Part, a: Part, m: Part, k: Part) -> bool:
    return before(a["plan"], "sand", "cut")


def rule_19(f: Part, a: Part, m: Part, k: Part) -> bool:
    return before(a["plan"], "cut", "refine")


def rule_20(f: Part, a: Part, m: Part, k: Part) -> bool:
    return starts_before(a["plan"], "tape", "cut")


def rule_21(f: Part, a: Part, m: Part, k: Part) -> bool:
    return all(d in f["defects"] for d in a["defects"])


def rule_22(f: Part, a: Part, m: Part, k: Part) -> bool:
    return all(s["wet"] for s in a["plan"] if s["op"] == "sand")


def rule_23(f: Part, a: Part, m: Part, k: Part) -> bool:
    return all(s["grit"] >= f["first_grit"] for s in a["plan"] if s["op"] == "sand")


def rule_24(f: Part, a: Part, m: Part, k: Part) -> bool:
    return all(s["passes"] <= 4 for s in a["plan"] if s["op"] in ("cut", "refine"))


def rule_25(f: Part, a: Part, m: Part, k: Part) -> bool:
    return all(s["speed_rpm"] <= 1800.0 for s in a["plan"] if s["pad"] == "wool")


def rule_26(f: Part, a: Part, m: Part, k: Part) -> bool:
    return all(worn in a["kit"] for worn in k["kit"])


def rule_27(f: Part, a: Part, m: Part, k: Part) -> bool:
    return not any(p in k["banned"] for p in a["products"])


def rule_28(f: Part, a: Part, m: Part, k: Part) -> bool:
    return any(s["op"] == "coat" and 2.0 <= s["dwell_min"] <= 10.0 for s in a["plan"])


def rule_29(f: Part, a: Part, m: Part, k: Part) -> bool:
    return all(r["open"] <= 0.05 for r in m["residual"] if r["kind"] in f["defects"])


def rule_30(f: Part, a: Part, m: Part, k: Part) -> bool:
    return all(s["um"] <= 6.0 for s in a["plan"])


def rule_31(f: Part, a: Part, m: Part, k: Part) -> bool:
    plan = a["plan"]
    return all(any(t["op"] == "wipe" and t["n"] == s["n"] + 1 for t in plan) for s in plan if s["op"] == "sand")


def rule_32(f: Part, a: Part, m: Part, k: Part) -> bool:
    unnamed = all(d not in a["defects"] for d in k["absent"])
    return unnamed and (a["sure"] is None or a["sure"] >= 0.5 or len(a["note"]) > 20)


def rule_33(f: Part, a: Part, m: Part, k: Part) -> bool:
    return any(s["op"] == "inspect" and s["minutes"] >= 5.0 for s in a["plan"])


def rule_34(f: Part, a: Part, m: Part, k: Part) -> bool:
    return sum(s["op"] == "sand" for s in a["plan"]) <= 3


def rule_35(f: Part, a: Part, m: Part, k: Part) -> bool:
    return sum(r["depth_um"] > 2.0 for r in m["residual"]) == 0


def rule_36(f: Part, a: Part, m: Part, k: Part) -> bool:
    return 3 <= sum(s["taped"] for s in a["plan"]) <= 8


def rule_37(f: Part, a: Part, m: Part, k: Part) -> bool:
    return sum(s["um"] for s in a["plan"]) <= f["film_um"] - f["reserve_um"]


def rule_38(f: Part, a: Part, m: Part, k: Part) -> bool:
    return near(sum(s["um"] for s in a["plan"]), m["removed_um"], 3.0)


def rule_39(f: Part, a: Part, m: Part, k: Part) -> bool:
    return sum(s["minutes"] for s in a["plan"]) <= f["day_min"]


def rule_40(f: Part, a: Part, m: Part, k: Part) -> bool:
    return norm(a["waste"]) == norm(k["waste"])


RULES: tuple[Rule, ...] = tuple(globals()[f"rule_{number}"] for number in range(1, 41))
