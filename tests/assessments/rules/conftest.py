"""One case of a small job, its schema, and the short ways in which the tests of the engine ask."""

import copy
import math

import pytest

from assessments.rules import Function, Schema, bind, check, evaluate, num

OPS = ["wash", "tape", "sand", "dry", "inspect", "wipe", "cut", "coat", "record", "tell"]
DECISIONS = ["coat_now", "wait", "warm_the_panel", "measure_again"]
ACTS = ["probe_coldest", "log_meter", "tell_owner", "fuel_heater"]


def _num(unit=None, **more):
    return {"t": "num", **({"unit": unit} if unit else {}), **more}


def _rec(opt=False, **fields):
    return {"t": "rec", "fields": fields, **({"opt": True} if opt else {})}


def _list(item, most=20, opt=False):
    return {"t": "list", "item": item, "max": most, **({"opt": True} if opt else {})}


def _enum(vals, **more):
    return {"t": "enum", "vals": vals, **more}


STEP = _rec(
    n={"t": "int"},
    op=_enum(OPS),
    um=_num("um"),
    wet={"t": "bool"},
    grit={"t": "int", "opt": True},
    air_degc=_num("degc", opt=True),
)
SHAPE = _rec(
    facts=_rec(
        air_degc=_num("degc"),
        air_rh=_num("rh"),
        panel_degc=_num("degc"),
        film_um=_num("um"),
        reserve_um=_num("um"),
        rate=_num("ml/m2"),
        area_m2=_num("m2"),
        econ=_num(),
        probe_degc=_num("degc", opt=True),
        cold={"t": "bool"},
    ),
    answer=_rec(
        dew_point=_num("degc", opt=True),
        margin=_num("K", opt=True),
        decision=_enum(DECISIONS, opt=True),
        next_steps=_list(_enum(ACTS), opt=True),
        note={"t": "str", "opt": True},
        sure={"t": "bool", "opt": True},
        packs={"t": "int", "opt": True},
        steps=_list(STEP, 40, opt=True),
        schedule=_rec(opt=True, place=_enum(["yard", "bay"], opt=True), at_h=_num("h", opt=True)),
    ),
    model=_rec(film_um=_num("um", opt=True), verdict=_enum(["pass", "redo", "harm"], opt=True)),
    key=_rec(
        dew_point=_num("degc"),
        decision=_enum(DECISIONS),
        kit=_list(_enum(ACTS)),
        packs={"t": "int"},
        short={"t": "bool"},
    ),
)


def _step(n, op, um=0.0, wet=False, **more):
    return {"n": n, "op": op, "um": um, "wet": wet, **more}


CASE = {
    "facts": {
        "air_degc": 20.0,
        "air_rh": 65.0,
        "panel_degc": 16.0,
        "film_um": 60.0,
        "reserve_um": 40.0,
        "rate": 2.5,
        "area_m2": 14.2,
        "econ": 3.0,
        "probe_degc": None,
        "cold": False,
    },
    "answer": {
        "dew_point": 13.2,
        "margin": 2.8,
        "decision": "wait",
        "next_steps": ["probe_coldest", "tell_owner"],
        "note": "It  stays, a BIT.",
        "sure": True,
        "packs": 2,
        "steps": [
            _step(1, "wash"),
            _step(2, "sand", 4.0, True),
            _step(3, "dry"),
            _step(4, "sand", 2.5, True, grit=1500),
        ],
        "schedule": {"place": "bay", "at_h": 9.5},
    },
    "model": {"film_um": 53.5, "verdict": "pass"},
    "key": {
        "dew_point": 13.6,
        "decision": "wait",
        "kit": ["probe_coldest", "tell_owner"],
        "packs": 2,
        "short": True,
    },
}


def dew_point(degc, rh):
    """Magnus form, constants of Alduchov & Eskridge 1996; unknown where there is no water in the air."""
    if rh <= 0:
        return None
    gamma = math.log(rh / 100) + 17.625 * degc / (243.04 + degc)
    return 243.04 * gamma / (17.625 - gamma)


def _broken(value):
    raise ZeroDivisionError("the table ends at 40")


FUNCTIONS = (
    Function("dew_point", (num("degc"), num("rh")), num("degc", opt=True), 10, dew_point),
    Function("broken", (num(),), num(), 1, _broken),
)


@pytest.fixture
def shape():
    """The schema as JSON; yours to change."""
    return copy.deepcopy(SHAPE)


@pytest.fixture
def case():
    """The case as plain values; yours to change."""
    return copy.deepcopy(CASE)


@pytest.fixture
def schema():
    return Schema.of(SHAPE)


@pytest.fixture
def functions():
    return FUNCTIONS


@pytest.fixture
def checked(schema, functions):
    """Check a rule against the schema."""

    def ask(rule, wants="bool"):
        return check(rule, schema, functions, wants)

    return ask


@pytest.fixture
def found(checked):
    """The faults of a rule, each as the text it stands at, its message and its suggestion."""

    def ask(rule, wants="bool"):
        return [(rule[each.start : each.end], each.message, each.suggestion) for each in checked(rule, wants).errors]

    return ask


@pytest.fixture
def warned(checked):
    """The warnings of a sound rule, each as the text it stands at and its message."""

    def ask(rule):
        result = checked(rule)
        assert result.ok, result.errors
        return [(rule[each.start : each.end], each.message) for each in result.warnings]

    return ask


@pytest.fixture
def value(checked, schema, case):
    """What a rule or expression gives on the case, answers changed as said; None takes an answer away."""

    def ask(rule, wants="any", **answers):
        result = checked(rule, wants)
        assert result.ok, result.errors
        case["answer"].update(answers)
        return evaluate(result, bind(schema, case))[0]

    return ask
