"""Random expressions, CPython's own eval the judge: where nothing is missing the language means what Python means."""

from types import SimpleNamespace

from hypothesis import given, settings
from hypothesis import strategies as st

from assessments.rules import Schema, bind, check, choice, evaluate, integer, many, num, record, truth

OPS = ["wash", "sand", "wipe"]
SCHEMA = Schema(
    {
        "a": record({"x": num(), "n": integer(), "yes": truth(), "op": choice(OPS)}),
        "steps": many(record({"n": integer(), "um": num(), "wet": truth(), "op": choice(OPS)}), 6),
        "picks": many(choice(OPS), 3),
    }
)
PYTHON = {
    "__builtins__": {},
    "every": all,
    "any": any,
    "count": lambda tests: sum(1 for each in tests if each),
    "sum": sum,
    "least": min,
    "most": max,
    "abs": abs,
    "len": len,
}

numbers = st.recursive(
    st.sampled_from(["a.x", "a.n", "1", "2.5", "0", "len(picks)", "len(steps)"]),
    lambda inner: st.one_of(
        st.builds(lambda left, right, sign: f"({left} {sign} {right})", inner, inner, st.sampled_from("+-*")),
        st.builds(lambda of: f"(-{of})", inner),
        st.builds(lambda of: f"abs({of})", inner),
        st.builds(lambda of: f"({of} / 4)", inner),
        st.builds(lambda of, test: f"({of} if a.yes else {test})", inner, inner),
        st.builds(lambda word, of: f"{word}(s.n for s in steps if s.n > {of})", st.just("sum"), inner),
        st.builds(lambda of: f"count(s.um > {of} for s in steps)", inner),
    ),
    max_leaves=5,
)
SIGNS = st.sampled_from(["<", "<=", ">", ">=", "==", "!="])
leaves = st.one_of(
    st.sampled_from(["a.yes", "a.op == 'sand'", "a.op in picks", "'wash' not in picks", "a.op in ['wash', 'wipe']"]),
    st.builds(lambda left, right, sign: f"{left} {sign} {right}", numbers, numbers, SIGNS),
    st.builds(lambda low, mid, high: f"{low} <= {mid} < {high}", numbers, numbers, numbers),
)
tests = st.recursive(
    leaves,
    lambda inner: st.one_of(
        st.builds(lambda left, right, word: f"({left} {word} {right})", inner, inner, st.sampled_from(["and", "or"])),
        st.builds(lambda of: f"(not {of})", inner),
        st.builds(lambda word: f"{word}(s.wet for s in steps if s.op in picks)", st.sampled_from(["every", "any"])),
        st.just("every(any(t.n > s.n for t in steps) for s in steps if s.wet)"),
    ),
    max_leaves=4,
)
small = st.integers(-50, 50)
halves = st.integers(-200, 200).map(lambda whole: whole / 4)
step = st.fixed_dictionaries({"n": small, "um": halves, "wet": st.booleans(), "op": st.sampled_from(OPS)})
cases = st.fixed_dictionaries(
    {
        "a": st.fixed_dictionaries({"x": halves, "n": small, "yes": st.booleans(), "op": st.sampled_from(OPS)}),
        "steps": st.lists(step, max_size=6),
        "picks": st.lists(st.sampled_from(OPS), max_size=3, unique=True),
    }
)


def in_python(rule, case):
    names = {
        "a": SimpleNamespace(**case["a"]),
        "steps": [SimpleNamespace(**each) for each in case["steps"]],
        "picks": case["picks"],
    }
    return eval(rule, {**PYTHON, **names})


@settings(max_examples=300, deadline=None)
@given(st.one_of(tests, numbers), cases)
def test_an_expression_gives_what_python_gives(rule, case):
    checked = check(rule, SCHEMA, wants="any")
    if not checked.ok:
        # Random text may outgrow the bounds of the language; it must never be misread for anything else.
        assert any(word in checked.errors[0].message for word in ("parts", "nested", "characters", "taken"))
        return
    assert evaluate(checked, bind(SCHEMA, case))[0] == in_python(rule, case)


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(["least", "most"]), st.lists(step, min_size=1, max_size=6))
def test_least_and_most_are_min_and_max(word, walked):
    case = {"a": {"x": 1.0, "n": 1, "yes": True, "op": "sand"}, "steps": walked, "picks": []}
    rule = f"{word}(s.um for s in steps)"
    assert evaluate(check(rule, SCHEMA, wants="num"), bind(SCHEMA, case))[0] == in_python(rule, case)


@settings(max_examples=300, deadline=None)
@given(st.text(alphabet="as.tepnickxyor '\"()[]<>=!+-*/,0123456789", max_size=60))
def test_any_text_is_read_or_refused_and_never_raises(rule):
    checked = check(rule, SCHEMA)
    assert checked.ok is not bool(checked.errors)
