import pytest

from assessments.rules import CaseRefused, Schema, bind, rounded

KINDS = {
    "te": {"t": "num"},
    "n": {"t": "int"},
    "ok": {"t": "bool"},
    "note": {"t": "str", "max": 5},
    "act": {"t": "enum", "vals": ["wash", "sand"]},
    "acts": {"t": "list", "item": {"t": "enum", "vals": ["wash", "sand"]}, "max": 2},
    "rows": {"t": "list", "item": {"t": "rec", "fields": {"n": {"t": "int"}}}},
}
SCHEMA = Schema.of({"t": "rec", "fields": {name: {**kind, "opt": True} for name, kind in KINDS.items()}})
NOTHING = dict.fromkeys(KINDS)


def test_what_is_absent_is_none():
    assert bind(SCHEMA, {}) == NOTHING


def test_a_case_is_copied_clean():
    case = {"te": 3, "n": 2.0, "ok": True, "note": "soft", "act": "wash", "acts": ("sand",), "rows": [{"n": 1}]}
    bound = bind(SCHEMA, case)
    assert bound == {"te": 3.0, "n": 2, "ok": True, "note": "soft", "act": "wash", "acts": ["sand"], "rows": [{"n": 1}]}
    assert type(bound["te"]) is float
    assert type(bound["n"]) is int


def test_a_pick_list_loses_its_doubles_before_it_is_counted():
    assert bind(SCHEMA, {"acts": ["wash", "wash", "sand"]})["acts"] == ["wash", "sand"]


@pytest.mark.parametrize(
    ("case", "said"),
    [
        ([], "A case is an object of name and value, not []."),
        ({"tee": 3}, "tee: there is no such field; did you mean 'te'?"),
        ({"te": True}, "te: True is not a number."),
        ({"te": "3"}, "te: '3' is not a number."),
        ({"te": float("nan")}, "te: nan is not a finite number of at most 1e+12."),
        ({"te": float("inf")}, "te: inf is not a finite number"),
        ({"te": 1e13}, "te: 10000000000000.0 is not a finite number"),
        ({"n": True}, "n: True is not a whole number."),
        ({"n": 2.5}, "n: 2.5 is not a whole number."),
        ({"n": 10**10}, "n: 10000000000 is more than 1000000000."),
        ({"ok": 1}, "ok: 1 is not yes/no."),
        ({"note": 1}, "note: 1 is not a text."),
        ({"note": "too long"}, "note: the text has 8 characters, at most 5 are kept."),
        ({"act": 1}, "act: 1 is not a choice."),
        ({"act": "wahs"}, "act: 'wahs' is none of the choices wash, sand; did you mean 'wash'?"),
        ({"acts": "wash"}, "acts: 'wash' is not a list."),
        ({"acts": [1]}, "acts[0]: 1 is not a choice."),
        ({"rows": [{}]}, "rows[0].n: nothing is there; it has to be a whole number."),
        ({"rows": [{"n": 1, "m": 2}]}, "rows[0].m: there is no such field."),
        ({"rows": [3]}, "rows[0]: 3 is not a record."),
        ({"rows": [{"n": 1}] * 21}, "rows: the list has 21 items, at most 20 are read."),
        ({"act": "x" * 60}, "…"),
    ],
)
def test_a_case_that_does_not_fit_is_refused_with_its_path(case, said):
    with pytest.raises(CaseRefused) as refused:
        bind(SCHEMA, case)
    assert said in str(refused.value)


@pytest.mark.parametrize(
    ("value", "step", "wanted"),
    [
        (41.26, 0.1, 41.3),
        (41.24, 0.5, 41.0),
        (41.26, 1, 41),
        (123.0, 10, 120),
        (0.1 + 0.2, 0.1, 0.3),
        (7.13, 0.25, 7.25),
    ],
)
def test_a_value_is_rounded_to_its_step(value, step, wanted):
    assert rounded(value, step) == wanted
