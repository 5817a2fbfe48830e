import pytest

from assessments.rules import (
    PHRASES,
    SHARES,
    Choice,
    Schema,
    choice,
    choices,
    fitting_phrases,
    integer,
    many,
    num,
    phrase,
    record,
    text,
    truth,
    typed_units,
)

STEP = record(
    {"n": integer(), "op": choice(["wash", "sand"]), "wet": truth(), "um": num("um"), "air_degc": num("degc")}
)
SCHEMA = Schema(
    {
        "facts": record(
            {"air_degc": num("degc"), "film_um": num("um"), "missing": choice(["film", "edge"]), "n": integer()}
        ),
        "answer": record(
            {
                "dew_point": num("degc", opt=True),
                "decision": choice(["wait", "warm_the_panel"], opt=True),
                "sure": truth(opt=True),
                "note": text(opt=True),
                "asked": many(choice(["film", "edge"]), opt=True),
                "steps": many(STEP, opt=True),
                "notes": many(record({"said": text()}), opt=True),
                "rows": many(record({"n": choice(["bow"]), "sound": truth(opt=True)}), opt=True),
            }
        ),
        "key": record(
            {
                "dew_point": num("degc"),
                "decision": choice(["wait", "warm_the_panel"]),
                "short": truth(),
                "note": text(),
                "asked": many(choice(["film", "edge"])),
                "limit_um": num("um"),
            }
        ),
    }
)


def offered(code, slot, **chosen):
    return choices(SCHEMA, phrase(code), chosen)[slot]


def texts(code, slot, **chosen):
    return [each.text for each in offered(code, slot, **chosen)]


def test_a_field_is_offered_with_its_words_and_its_path():
    assert offered("within", "value")[0] == Choice(
        "answer.dew_point", "the trainee's dew point", ("answer", "dew_point")
    )


def test_a_field_is_offered_under_the_callers_label():
    labels = {("answer", "dew_point"): "your dew point", ("answer", "steps", "[]", "um"): "depth"}
    assert choices(SCHEMA, phrase("within"), {}, labels.get)["value"][0].words == "your dew point"
    chosen = {"list": "answer.steps", "kind": "s.wet"}
    assert choices(SCHEMA, phrase("every_step_at_least"), chosen, labels.get)["what"][1] == Choice(
        "s.um", "depth", ("answer", "steps", "[]", "um")
    )


def test_the_words_of_a_choice_are_offered_under_the_callers_labels():
    labels = {
        ("answer", "decision", "wait"): "“Wait an hour”",
        ("answer", "asked", "[]", "film"): "“Film”",
        ("answer", "steps", "[]", "op", "wash"): "“Wash it”",
    }
    offered_to = [
        ("one_of", "options", {"value": "answer.decision"}),
        ("contains", "option", {"list": "answer.asked"}),
        ("before", "first", {"list": "answer.steps"}),
        ("some_step", "kind", {"list": "answer.steps"}),
    ]
    said = [choices(SCHEMA, phrase(code), chosen, labels.get)[slot] for code, slot, chosen in offered_to]
    assert [each[0].words for each in said] == ["“Wait an hour”", "“Film”", "“Wash it”", "“Wash it”"]
    assert [each[1].words for each in said] == ["warm the panel", "edge", "sand", "sand"]


def test_a_gap_that_hangs_on_another_waits_for_it():
    assert choices(SCHEMA, phrase("within"), {})["target"] == ()
    assert choices(SCHEMA, phrase("within"), {"value": "answer.nothing"})["target"] == ()
    assert choices(SCHEMA, phrase("every_step_is"), {"list": "answer.steps"})["has"] == ()
    assert choices(SCHEMA, phrase("step_after_last"), {"list": "answer.steps"})["last"] == ()


def test_a_gap_that_is_only_typed_offers_nothing():
    assert choices(SCHEMA, phrase("within"), {"value": "answer.dew_point"})["tolerance"] == ()


@pytest.mark.parametrize(
    ("code", "slot", "chosen", "wanted"),
    [
        ("within", "target", {"value": "answer.dew_point"}, ["facts.air_degc", "key.dew_point"]),
        ("over", "target", {"value": "facts.film_um"}, ["key.limit_um"]),
        ("over", "target", {"value": "facts.n"}, []),
        ("is", "target", {"value": "answer.decision"}, ["'wait'", "'warm_the_panel'", "key.decision"]),
        ("is", "target", {"value": "answer.sure"}, ["True", "False", "key.short"]),
        ("is", "target", {"value": "norm(answer.note)"}, ["norm(key.note)"]),
        ("is", "target", {"value": "answer.note"}, []),
        ("one_of", "value", {}, ["answer.decision", "facts.missing", "key.decision"]),
        ("one_of", "options", {"value": "answer.decision"}, ["'wait'", "'warm_the_panel'"]),
        ("among", "value", {}, ["facts.missing"]),
        ("among", "list", {"value": "facts.missing"}, ["answer.asked", "key.asked"]),
        ("contains", "list", {}, ["answer.asked", "key.asked"]),
        ("contains", "option", {"list": "answer.asked"}, ["'film'", "'edge'"]),
        ("every_of", "wanted", {}, ["key.asked"]),
        ("every_of", "given", {"wanted": "key.asked"}, ["answer.asked"]),
        ("before", "list", {}, ["answer.steps"]),
        ("before", "first", {"list": "answer.steps"}, ["'wash'", "'sand'"]),
        ("before", "then", {"list": "answer.steps", "first": "'wash'"}, ["'sand'"]),
        ("not_before", "other", {"list": "answer.steps", "act": "'sand'"}, ["'wash'"]),
        ("some_step", "list", {}, ["answer.steps", "answer.rows"]),
        ("some_step", "kind", {"list": "answer.steps"}, ["s.op == 'wash'", "s.op == 'sand'", "s.wet", "not s.wet"]),
        (
            "some_step",
            "kind",
            {"list": "answer.rows"},
            ["s.n == 'bow'", "answered(s.sound) and s.sound", "answered(s.sound) and not s.sound"],
        ),
        ("every_step_is", "has", {"list": "answer.rows", "kind": "s.n == 'bow'"}, ["s.sound", "not s.sound"]),
        ("every_step_at_least", "what", {"list": "answer.steps"}, ["s.n", "s.um", "s.air_degc"]),
        (
            "every_step_at_least",
            "target",
            {"list": "answer.steps", "what": "s.um"},
            ["facts.film_um", "key.limit_um"],
        ),
        (
            "step_after_last",
            "last",
            {"list": "answer.steps", "act": "s.op == 'sand'"},
            ["t.op == 'wash'", "t.wet", "not t.wet"],
        ),
        ("mentions", "value", {}, ["answer.note", "key.note"]),
        (
            "answered",
            "value",
            {},
            [f"answer.{name}" for name in ("dew_point", "decision", "sure", "note", "asked", "steps", "notes", "rows")],
        ),
    ],
)
def test_only_what_fits_is_offered(code, slot, chosen, wanted):
    assert texts(code, slot, **chosen) == wanted


def test_conditions_are_told_in_words():
    said = [each.words for each in offered("some_step", "kind", list="answer.steps")]
    assert said == ["wash", "sand", "wet", "not wet"]
    rows = [each.words for each in offered("some_step", "kind", list="answer.rows")]
    assert rows == ["name bow", "sound", "not sound"]


@pytest.mark.parametrize(
    ("code", "chosen", "wanted"),
    [
        ("within", {"value": "answer.dew_point"}, {"tolerance": "K", "target": "degc"}),
        ("within_percent", {"value": "facts.film_um"}, {"percent": "%", "target": "um"}),
        ("between", {"value": "facts.n"}, {}),
        ("over", {}, {}),
        ("is", {"value": "answer.decision"}, {}),
        ("every_step_at_most", {"list": "answer.steps", "what": "s.um"}, {"target": "um"}),
        ("at_least_of", {}, {}),
        ("mentions", {"value": "answer.note"}, {}),
        ("share_of", {}, {"percent": "%"}),
    ],
)
def test_a_typed_number_is_taken_in_the_unit_of_what_it_is_compared_with(code, chosen, wanted):
    assert typed_units(SCHEMA, phrase(code), chosen) == wanted


def test_only_phrases_that_can_be_begun_are_offered():
    no_lists = Schema({"answer": record({"te": num("h")})})
    assert [each.code for each in fitting_phrases(no_lists)] == [
        *("is", "is_not", "at_least", "at_most", "over", "under", "between", "within", "within_percent", "answered"),
    ]
    assert fitting_phrases(SCHEMA) == PHRASES
    assert (fitting_phrases(no_lists, "num"), fitting_phrases(SCHEMA, "num")) == ((), SHARES)
