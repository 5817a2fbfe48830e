"""How a shared rule is tried: a case of shared_cases.toml bound as the curriculum has it, judged by what is shipped."""

import re
import tomllib
from functools import cache
from pathlib import Path

from assessments.rules import Rule, RuleBook, judge, prepare, read_names, read_shared

FIXTURES = Path(__file__).parents[3] / "fixtures"
BOOKS = FIXTURES / "rulebooks"
NAMES = read_names((BOOKS / "names.toml").read_text())
SHARED = read_shared((BOOKS / "shared.toml").read_text())
PAGE = tomllib.loads(Path(__file__).with_name("shared_cases.toml").read_text())
EVERY = PAGE.pop("every")
ZONES = ["side", "bow", "chine"]
FAMILIES = {
    "chem": ("alkaline", "acid", "iron", "bleach"),
    "abrade": ("sand", "cut", "refine", "finish"),
    "coat": ("coat",),
    "stop": ("wait", "record", "tell", "refer"),
    "look": ("inspect", "test_spot", "cure_test"),
}
FAMILY = {op: family for family, ops in FAMILIES.items() for op in ops}
STEP = re.compile(r"(?P<op>\w+)(@(?P<zone>\w+))?( (?P<degc>\d+))?")


def bound_steps(written):
    """Steps as binding hands them to rules: numbered, placed, each knowing the next abrasive and the next chemistry."""
    steps = [_step(n, STEP.fullmatch(text)) for n, text in enumerate(written, start=1)]
    for step in steps:
        later = [other for other in steps if other["n"] > step["n"]]
        step["next_abrade"] = min((other["n"] for other in later if other["family"] == "abrade"), default=999)
        step["next_chem"] = min((other["n"] for other in later if other["family"] == "chem"), default=0)
    return steps


def _step(n, found):
    op, zone = found["op"], found["zone"] or "all"
    covers = ZONES if zone == "all" else [zone]
    family, degc = FAMILY.get(op, "clean"), float(found["degc"] or 20)
    return {"n": n, "op": op, "zone": zone, "family": family, "covers": covers, "panel_degc": degc}


def bound(case):
    """The whole case, what it leaves out of facts and key filled in, and what is derived from its steps."""
    answer = dict(case.get("answer", {}))
    if "steps" in answer:
        answer["steps"] = bound_steps(answer["steps"])
        abrasive = [step["n"] for step in answer["steps"] if step["family"] == "abrade"]
        answer |= {"last_abrade": max(abrasive, default=0), "first_abrade": min(abrasive, default=999)}
    if "controls" in answer:
        answer["controls"] = [{"op": op} for op in answer["controls"]]
    given = {root: EVERY[root] | case.get(root, {}) for root in ("facts", "key")}
    return {**given, "model": case.get("model", {}), "answer": answer}


def book_of(*rules):
    return prepare(RuleBook("SHARED", 1, rules), NAMES)


def weighed(code, severity="points"):
    rule = SHARED.rules[code]
    return Rule(code, rule.sentence, severity, 1, rule.because, rule.source, test=rule.test, when=rule.when)


@cache
def alone(code):
    return book_of(weighed(code))


def judged(code, case):
    return judge(alone(code), bound(case)).findings[0].verdict
