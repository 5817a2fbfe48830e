"""The shared rules on steps, told once more as somebody would walk along a plan with a pencil, on random plans."""

import random
import re

import pytest

from tests.assessments.rules.shared_trials import FAMILIES, ZONES, judged


def first_before(plan, op):
    """No abrasive step before the first `op`."""
    seen = False
    for act in plan:
        seen = seen or act == op
        if act in FAMILIES["abrade"] and not seen:
            return False
    return True


def looked_at_dry(plan):
    """After every sanding step, up to the next abrasive one, the panel is dried and looked at."""
    for at, act in enumerate(plan):
        rest = plan[at + 1 :]
        until = next((n for n, other in enumerate(rest) if other in FAMILIES["abrade"]), len(rest))
        if act == "sand" and not {"dry", "inspect"} <= set(rest[:until]):
            return False
    return True


def nothing_reacts(plan):
    """From one chemistry to the next: a rinse, or after bleach a flush that was proved."""
    last, since = None, set()
    for act in plan:
        if act not in FAMILIES["chem"]:
            since.add(act)
            continue
        if last and "flush_prove" not in since and (last == "bleach" or "rinse" not in since):
            return False
        last, since = act, set()
    return True


def wiped_last(plan):
    """Somewhere behind the last abrasive step there is a wipe."""
    while plan and plan[-1] not in FAMILIES["abrade"]:
        if plan[-1] == "wipe":
            return True
        plan = plan[:-1]
    return False


def water_first(plan):
    """There is water, and no call before it."""
    return "flush" in plan and "call" not in plan[: plan.index("flush")]


APPLIES = {
    **{code: lambda plan: any(act in FAMILIES["abrade"] for act in plan) for code in ("R01", "R02", "R11")},
    "R09": lambda plan: "sand" in plan,
    "R28": lambda plan: sum(act in FAMILIES["chem"] for act in plan) > 1,
}
"""Where a rule has something to judge."""

ACTS = {
    "R01": (lambda plan: first_before(plan, "wash"), ["wash", "rinse", "sand", "cut", "dry"]),
    "R02": (lambda plan: first_before(plan, "test_spot"), ["test_spot", "inspect", "sand", "finish"]),
    "R09": (looked_at_dry, ["sand", "sand", "dry", "inspect", "cut", "wipe"]),
    "R10": (wiped_last, ["wipe", "finish", "cut", "dry"]),
    "R11": (lambda plan: first_before(plan, "tape"), ["tape", "untape", "sand", "refine"]),
    "R28": (nothing_reacts, ["alkaline", "acid", "iron", "bleach", "rinse", "flush_prove", "dry"]),
    "R40": (water_first, ["flush", "call", "lens_out", "rub"]),
}


@pytest.mark.parametrize("code", ACTS)
def test_a_rule_on_steps_agrees_with_a_walk_along_four_hundred_random_plans(code):
    walk, acts = ACTS[code]
    chance = random.Random(code)
    told = set()
    for _ in range(400):
        plan = [chance.choice(acts) for _ in range(chance.randrange(9))]
        met = walk(plan)
        told.add(met)
        found = judged(code, {"answer": {"steps": plan, "flush_min": 15.0}})
        applies = APPLIES.get(code, bool)(plan) or code not in APPLIES
        assert found == ("not_applicable" if not applies else "met" if met else "not_met"), plan
    assert told == {True, False}


def test_the_ban_on_referred_zones_agrees_with_a_look_at_every_step():
    chance = random.Random(13)
    for _ in range(400):
        plan = [
            f"{chance.choice(['wash', 'test_spot', 'sand', 'finish', 'record'])}@{chance.choice([*ZONES, 'all'])}"
            for _ in range(chance.randrange(4))
        ]
        touched = [step for step in plan if re.fullmatch(r"(test_spot|sand|finish)@(bow|all)", step)]
        assert judged("R13", {"answer": {"steps": plan}}) == ("not_met" if touched else "met"), plan
