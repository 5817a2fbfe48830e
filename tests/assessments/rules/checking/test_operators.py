import pytest


@pytest.mark.parametrize(
    ("expression", "kind", "unit"),
    [
        ("key.packs + 1", "int", None),
        ("key.packs / 2", "num", None),
        ("key.packs * 2.0", "num", None),
        ("facts.film_um / facts.film_um", "num", ()),
        ("facts.panel_degc - facts.air_degc", "num", (("K", 1),)),
        ("facts.panel_degc - 3", "num", (("degc", 1),)),
        ("facts.rate * facts.area_m2", "num", (("ml", 1),)),
        ("-facts.film_um", "num", (("um", 1),)),
        ("abs(facts.film_um - 3)", "num", (("um", 1),)),
        ("sum(s.um for s in answer.steps)", "num", (("um", 1),)),
        ("count(s.wet for s in answer.steps)", "int", ()),
        ("dew_point(facts.air_degc, facts.air_rh)", "num", (("degc", 1),)),
        ("2 if facts.cold else 2.5", "num", None),
    ],
)
def test_an_expression_has_the_kind_and_unit_it_works_out_to(checked, expression, kind, unit):
    sort = checked(expression, wants="any").root.sort
    assert (sort.name, sort.unit.powers if sort.unit else None) == (kind, unit)


@pytest.mark.parametrize(
    ("expression", "may_be_missing"),
    [
        ("key.packs + 1", False),
        ("answer.packs + 1", True),
        ("key.packs / 2", False),
        ("key.packs / 0", True),
        ("key.packs / key.packs", True),
        ("key.packs / (2 if facts.cold else 0)", True),
        ("key.packs / (2 if facts.cold else 3)", False),
        ("2 / -2", False),
        ("dew_point(facts.air_degc, facts.air_rh)", True),
        ("broken(1)", False),
        ("count(k == 'tell_owner' for k in key.kit)", False),
        ("len(answer.steps)", True),
        ("answered(answer.margin)", False),
        ("least(s.um for s in answer.steps)", True),
        ("any(s.grit > 3 for s in answer.steps)", True),
    ],
)
def test_what_may_be_missing_is_known_before_any_case(checked, expression, may_be_missing):
    assert bool(checked(expression, wants="any").root.sort.missing) is may_be_missing


def test_choices_written_in_a_condition_are_checked_one_by_one(found):
    assert [part for part, _, _ in found("answer.decision == ('wait' if facts.cold else 'wiat')")] == ["'wiat'"]


def test_a_choice_of_another_list_that_shares_a_word_may_be_compared(checked):
    assert checked("any(s.op == t.op for s in answer.steps for t in answer.steps)").errors
    assert checked("any(any(s.op == t.op for t in answer.steps) for s in answer.steps)").ok
