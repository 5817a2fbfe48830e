import ast

import pytest


def test_a_book_is_one_function_that_gives_one_value_for_each_part(code):
    tree = ast.parse(code("answer.sure", "facts.cold", "facts.film_um").source)
    (function,) = tree.body
    assert function.name == "book"
    assert len(function.body[-1].value.elts) == 3


def test_the_names_of_a_rule_stand_in_its_code_only_as_texts(code):
    rule = "any(step.wet and step.um > facts.film_um for step in answer.steps if step.op == 'sand')"
    for text in (code(rule, rule).source, code(rule).traced_source):
        names = {node.id for node in ast.walk(ast.parse(text)) if isinstance(node, ast.Name)}
        assert not names & {"step", "answer", "facts", "film_um"}


def test_only_the_traced_variant_records(code):
    assert "E(" not in code("facts.film_um > 3").source
    assert "E((3, b3, r2, 3))" in code("facts.film_um > 3").traced_source


def nested(shape, inner, depth):
    """A part written round another, so often."""
    for _ in range(depth):
        inner = shape.format(inner)
    return inner


DEEP = {
    "not": nested("(not {})", "answer.sure", 20),
    "abs": nested("abs({})", "answer.margin", 20) + " > 1",
    "over": nested("(1 / {})", "answer.margin", 19) + " > 1",
    "plus": nested("(answer.packs + {})", "answer.packs", 19) + " > 1",
    "if": nested("({} if key.short else 1)", "answer.packs", 19) + " > 1",
    "or": nested("(answer.sure or not ({}))", "answer.margin > 1", 10),
    "chain": "1" + " <= answer.packs" * 35,
    "and": " and ".join(["answer.sure"] * 36),
}


@pytest.mark.parametrize("rule", DEEP.values(), ids=DEEP)
def test_the_deepest_rules_are_within_what_python_reads(ran, rule):
    assert ran(rule).value is not None
    assert ran(rule, sure=None, margin=None, packs=None).value is None
