import pytest

from assessments.rules.compiler.orders import Split, split

SAND = [
    "every(s.wet for s in answer.steps if s.op == 'sand')",
    "any(s.op == 'sand' and s.wet for s in answer.steps)",
    "count(s.op == 'sand' for s in answer.steps)",
]


@pytest.fixture
def narrowed(checked):
    def ask(rule):
        result = checked(rule, "any")
        assert result.ok, result.errors
        return split(result.root)

    return ask


@pytest.mark.parametrize("rule", SAND)
def test_a_quantifier_may_look_at_one_word_of_a_choice_only(narrowed, rule):
    found = narrowed(rule)
    assert isinstance(found, Split)
    assert (found.items, found.field, found.word) == (("answer", "steps"), "op", "sand")


@pytest.mark.parametrize(
    "rule",
    [
        "every(s.op == 'sand' for s in answer.steps)",
        "any(s.op == 'sand' or s.wet for s in answer.steps)",
        "any(s.wet for s in answer.steps if s.op != 'sand')",
        "any(s.wet for s in answer.steps if s.op in ['sand'])",
        "any(k == 'tell_owner' for k in key.kit)",
        "any(broken(s.um) > 1 and s.op == 'sand' for s in answer.steps)",
        "any(n > 1 for n in [1, 2])",
        "sum(s.um for s in answer.steps)",
    ],
)
def test_else_it_has_to_look_at_every_item(narrowed, rule):
    assert narrowed(rule) is None


def test_rows_are_grouped_where_three_quantifiers_ask_for_a_word(lines):
    assert len([line for line in lines(*SAND) if "grouped(" in line]) == 1
    assert not [line for line in lines(*SAND[:2]) if "grouped(" in line]


@pytest.mark.parametrize("steps", [None, [], "given"])
def test_groups_change_nothing(code, schema, case, steps):
    from assessments.rules import bind
    from tests.assessments.rules.oracle import marking

    if steps != "given":
        case["answer"]["steps"] = steps
    more = [
        *SAND,
        "any(s.op == 'sand' for s in answer.steps)",
        "sum(s.um for s in answer.steps if s.op == 'sand' and s.wet)",
        "any(s.op == 'sand' and s.grit > 1000 for s in answer.steps)",
        "least(s.n for s in answer.steps if s.op == 'sand')",
    ]
    book, bound = code(*more), bind(schema, case)
    wanted = [marking.run(marking.runnable(part), bound) for part in book.parts]
    assert [(each.value, each.whole) for each in book.runs(bound)] == [(each.value, each.events) for each in wanted]
    assert book.values(bound) == tuple(each.value for each in wanted)


def test_a_list_that_one_test_knows_to_be_there_may_be_missing_for_the_rest(code, schema, case):
    from assessments.rules import bind

    known = [f"answered(answer.steps) and {rule} == {rule}" for rule in SAND[2:] * 3]
    known += [f"answered(answer.steps) and before(answer.steps, 'wash', '{op}')" for op in ("sand", "dry")]
    case["answer"]["steps"] = None
    book = code(*SAND, *known)
    assert book.values(bind(schema, case)) == (None, None, None, False, False, False, False, False)
    assert [run.failed for run in book.runs(bind(schema, case))] == [None] * 8


def test_rows_that_may_be_missing_are_not_grouped():
    from assessments.rules import Schema, check, choice, many, record
    from assessments.rules.compiler import Compiled

    schema = Schema({"rows": many(record({"op": choice(["a", "b"])}, opt=True))})
    rules = [f"any(answered(r) and r.op == 'a' for r in rows) == (1 > {number})" for number in range(3)]
    compiled = Compiled([check(rule, schema) for rule in rules])
    assert compiled.values({"rows": [None, {"op": "a"}]}) == (True, False, False)
