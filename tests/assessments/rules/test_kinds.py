import pytest

from assessments.rules import Schema, SchemaRefused, choice, integer, many, num, record, text, truth


def of(**fields):
    return Schema.of({"t": "rec", "fields": fields})


def test_a_schema_is_read_whole():
    schema = of(
        te={"t": "num", "unit": "h", "opt": True, "step": 0.1},
        n={"t": "int"},
        ok={"t": "bool"},
        note={"t": "str", "max": 80},
        kit={"t": "list", "item": {"t": "enum", "vals": ["gloves"]}, "max": 5},
        rows={"t": "list", "item": {"t": "rec", "fields": {"n": {"t": "int"}}}},
    )
    assert schema.names == {
        "te": num("h", opt=True, step=0.1),
        "n": integer(),
        "ok": truth(),
        "note": text(80),
        "kit": many(choice(["gloves"]), 5),
        "rows": many(record({"n": integer()}), 20),
    }


REFUSED = [
    ([], 'schema: a kind is an object such as {"t": "num", "unit": "um"}, not [].'),
    ({"t": "num"}, "schema: the outermost kind is 'num', it has to be 'rec'."),
    ({"t": "recc", "fields": {}}, "did you mean 'rec'?"),
    ({"t": 3}, "schema: 't' is 3, it has to be one of num, int, bool, str, enum, list, rec."),
    ({"t": "rec"}, "schema: a record needs 'fields', an object of name and kind, not None."),
    ({"t": "rec", "fields": {}, "optt": True}, "'optt' says nothing about kind 'rec'; did you mean 'opt'?"),
    ({"t": "rec", "fields": {}, "unit": "um"}, "schema: 'unit' says nothing about kind 'rec'."),
    ({"t": "rec", "fields": {"a b": {"t": "num"}}}, "schema: 'a b' is no name"),
    ({"t": "rec", "fields": {"_a": {"t": "num"}}}, "'_a' is no name"),
    ({"t": "rec", "fields": {"if": {"t": "num"}}}, "'if' is no name"),
    ({"t": "rec", "fields": {"é": {"t": "num"}}}, "'é' is no name"),
    (
        {"t": "rec", "fields": {"a": {"t": "num", "unit": 3}}},
        "schema.a: 'unit' is 3, it has to be a text such as 'um'.",
    ),
    ({"t": "rec", "fields": {"a": {"t": "num", "unit": "u" * 101}}}, "it has to be a text such as 'um'."),
    ({"t": "rec", "fields": {"a" * 101: {"t": "num"}}}, "a name is plain letters, digits and _, at most 100 of them."),
    ({"t": "rec", "fields": {"a": {"t": "num", "step": 0}}}, "schema.a: 'step' is 0, it has to be a number above 0"),
    ({"t": "rec", "fields": {"a": {"t": "num", "step": True}}}, "schema.a: 'step' is True"),
    ({"t": "rec", "fields": {"a": {"t": "enum"}}}, "schema.a: a choice needs 'vals', a list of at least one word"),
    ({"t": "rec", "fields": {"a": {"t": "enum", "vals": []}}}, "at least one word, not []."),
    ({"t": "rec", "fields": {"a": {"t": "enum", "vals": [1]}}}, "at least one word, not [1]."),
    ({"t": "rec", "fields": {"a": {"t": "enum", "vals": ["x", "x"]}}}, "'vals' names a word twice: x, x."),
    ({"t": "rec", "fields": {"a": {"t": "list"}}}, "schema.a.item: a kind is an object"),
    (
        {"t": "rec", "fields": {"a": {"t": "str", "max": 0}}},
        "'max' is 0, it has to be a whole number from 1 to 100000.",
    ),
    ({"t": "rec", "fields": {"a": {"t": "str", "max": True}}}, "'max' is True"),
    ({"t": "rec", "fields": {"a": {"t": "num", "opt": 1}}}, "schema.a: 'opt' is 1, it has to be true or false."),
]


@pytest.mark.parametrize(("mapping", "said"), REFUSED)
def test_a_schema_that_cannot_be_read_is_refused_with_its_path(mapping, said):
    with pytest.raises(SchemaRefused) as refused:
        Schema.of(mapping)
    assert said in str(refused.value)


def test_a_unit_may_be_any_text_and_an_empty_one_is_none():
    assert of(gloss={"t": "num", "unit": "gloss units"}, bare={"t": "num", "unit": ""}).names == {
        "gloss": num("gloss units"),
        "bare": num(),
    }


def test_a_schema_nested_without_end_is_refused():
    kind = {"t": "num"}
    for _ in range(20):
        kind = {"t": "list", "item": kind}
    with pytest.raises(SchemaRefused, match="nested more than 12 deep"):
        of(deep=kind)


def test_a_kind_is_found_by_its_path():
    schema = Schema({"answer": record({"rows": many(record({"te": num("h")}))})})
    assert schema.kind(("answer", "rows", "[]", "te")) == num("h")
    assert schema.kind(("answer", "nothing", "te")) is None


def test_only_the_value_at_a_path_is_loosened():
    schema = Schema({"model": record({"film_um": num("um")}), "key": record({})})
    loose = schema.with_missing(("model", "film_um"))
    assert loose.names["model"].fields["film_um"].opt
    assert not loose.names["model"].opt
    assert schema.with_missing(("model", "nothing")).names == schema.names
