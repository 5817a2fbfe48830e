import pytest

from assessments.rules.nodes import Item
from assessments.rules.sentences.predicates import be, statement, steps_of
from assessments.rules.sentences.reading import reading


@pytest.fixture
def said(checked):
    """A test as its subject and what is said of one and of many."""

    def ask(rule, holds=True, about=None):
        found = checked(rule)
        assert found.ok, found.errors
        made = statement(reading(), found.root, holds, about)
        return made and (found.said(made.subject), made.predicate.one.replace("\u00a0", " "), made.predicate.many)

    return ask


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        ("answer.packs >= 3", ("answer.packs", "is at least 3", "are at least 3")),
        ("3 > answer.packs", ("answer.packs", "is under 3", "are under 3")),
        ("3 == answer.packs", ("answer.packs", "is 3", "are 3")),
        ("answer.packs != key.packs", ("answer.packs", "is not the key's packs", "are not the key's packs")),
        ("facts.cold", ("facts.cold", "is yes", "are yes")),
        ("key.short == False", ("key.short", "is no", "are no")),
        ("'tell_owner' not in key.kit", ("'tell_owner'", "is not among the key's kit", "are not among the key's kit")),
        ("3 <= answer.packs <= 8", ("answer.packs", "is between 3 and 8", "are between 3 and 8")),
        ("8 >= answer.packs >= 3", ("answer.packs", "is between 3 and 8", "are between 3 and 8")),
        ("3 < answer.packs <= 8", ("answer.packs", "is over 3 and at most 8", "are over 3 and at most 8")),
        ("1 < 3 < key.packs", ("3", "is over 1 and under the key's packs", "are")),
        ("answer.packs > 3 < key.packs", ("3", "is under the trainee's packs and under the key's packs", "are")),
        ("near(answer.margin, 3, 0.5)", ("answer.margin", "is within 0.5 K of 3 K", "are within")),
        ("near(9, answer.dew_point, 0.5)", ("answer.dew_point", "is within 0.5 K of 9 °C", "are")),
        ("near(facts.econ, 3, 1)", ("facts.econ", "is within 1 of 3", "are")),
        ("near(facts.film_um, 9, facts.reserve_um)", ("facts.film_um", "is within the reserve of 9 µm", "are")),
        ("near_rel(answer.margin, 3, 5)", ("answer.margin", "is within 5 % of 3 K", "are")),
        ("near_rel(3, facts.econ, facts.econ)", ("3", "is within the econ per cent of the econ", "are")),
        ("mentions(answer.note, ['left'])", ("answer.note", "mentions “left”", "mention “left”")),
        ("mentions(answer.note, ['a', 'b'])", ("answer.note", "mentions one of the words “a” or “b”", "mention")),
        ("answered(answer.margin)", ("answer.margin", "is answered", "are answered")),
        ("answered(facts.probe_degc)", ("facts.probe_degc", "is known", "are known")),
        ("norm(answer.note) == 'a'", ("norm(answer.note)", "is “a” (capitals and spaces aside)", "are")),
        (
            "norm(answer.note) in ['a', 'b']",
            ("norm(answer.note)", "is one of “a” or “b” (capitals and spaces aside)", "are"),
        ),
    ],
)
def test_a_test_is_told_of_its_subject(said, rule, wanted):
    subject, one, many = said(rule)
    assert (subject, one) == wanted[:2]
    assert many.startswith(wanted[2])


@pytest.mark.parametrize(
    ("rule", "wanted"),
    [
        ("answer.packs >= 3", "is not at least 3"),
        ("answer.packs != 3", "is 3"),
        ("'tell_owner' not in key.kit", "is among the key's kit"),
        ("3 < answer.packs <= 8", "is not both over 3 and at most 8"),
        ("3 <= answer.packs <= 8", "is not between 3 and 8"),
        ("near(facts.econ, 3, 1)", "is not within 1 of 3"),
        ("mentions(answer.note, ['left'])", "does not mention “left”"),
        ("mentions(answer.note, ['a', 'b'])", "mentions none of the words “a” or “b”"),
        ("answered(answer.margin)", "is not answered"),
        ("facts.cold", "is no"),
    ],
)
def test_a_test_that_has_not_to_hold_is_turned_round(said, rule, wanted):
    assert said(rule, holds=False)[1] == wanted


@pytest.mark.parametrize(
    "rule",
    ["1 < answer.packs in [2, 3]", "1 < answer.packs < key.packs < 9", "facts.cold and key.short", "not facts.cold"],
)
def test_what_has_no_one_subject_is_left_to_others(said, rule):
    assert said(rule) is None


def test_a_lent_yes_no_and_an_order_have_no_subject_but_themselves(schema):
    from assessments.rules import Function, check, num, truth

    lent = (Function("is_wet", (num("degc"),), truth(), 1, lambda degc: True),)
    found = check("is_wet(facts.air_degc)", schema, lent)
    assert statement(reading(), found.root, False).predicate.one == "is no"
    assert statement(reading(), check("before(answer.steps, 'wash', 'sand')", schema).root, True) is None


@pytest.fixture
def of_step(checked):
    """What a test of a step says of it, as subject and predicate."""

    def ask(test, holds=True, about="s"):
        found = checked(f"any({test} for s in answer.steps)")
        assert found.ok, found.errors
        made = statement(reading(), found.root.test, holds, about)
        return found.said(made.subject), made.predicate.one, made.predicate.many

    return ask


@pytest.mark.parametrize(
    ("test", "wanted"),
    [
        ("s.op == 'sand'", ("s", "is sand", "are sand")),
        ("'sand' != s.op", ("s", "is not sand", "are not sand")),
        ("s.op in ['sand', 'dry']", ("s", "is sand or dry", "are sand or dry")),
        ("s.op not in ['sand', 'dry']", ("s", "is neither sand nor dry", "are neither sand nor dry")),
        (
            "s.op == ('sand' if facts.cold else 'dry')",
            ("s.op", "is (sand if the cold is yes, otherwise dry)", "are (sand if the cold is yes, otherwise dry)"),
        ),
        ("s.n < 3", ("s", "comes before step 3", "come before step 3")),
        ("3 < s.n", ("s", "comes after step 3", "come after step 3")),
        ("s.n <= key.packs", ("s", "comes no later than the key's packs", "come no later than the key's packs")),
        ("key.packs <= s.n", ("s", "comes no earlier than the key's packs", "come no earlier than the key's packs")),
        ("s.n == 3", ("s.n", "is 3", "are 3")),
        ("s.n < 2 * key.packs", ("s.n", "is under 2 × the key's packs", "are under 2 × the key's packs")),
        ("s.wet", ("s.wet", "is yes", "are yes")),
    ],
)
def test_the_act_and_the_place_of_a_step_are_told_of_the_step(of_step, test, wanted):
    assert of_step(test) == wanted


def test_a_place_that_is_turned_round_does_not_come_there(of_step):
    assert of_step("s.n < 3", holds=False) == ("s", "does not come before step 3", "do not come before step 3")


def test_only_a_record_with_an_act_is_a_step(checked):
    found = checked("any(s.wet for s in answer.steps) and any(k == 'tell_owner' for k in key.kit)")
    variables = [node for node in found.nodes if isinstance(node, Item)]
    assert [steps_of(node) is not None for node in variables] == [True, False]


def test_one_thing_and_many_agree_with_their_verb():
    assert (be("wet"), be("wet", False)) == (be("wet", True, "wet"), be("wet", False, "wet"))
