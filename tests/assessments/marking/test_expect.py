"""An exemplar as it came out: outcomes and rules not met, gathered over many draws."""

from assessments.marking.expect import as_it_came
from assessments.shipped import marker


def test_an_exemplar_that_holds_comes_out_as_it_says():
    found = as_it_came(marker("COA-01"), "right decision, fuel heater ticked", 12)
    said = next(one for one in marker("COA-01").scenario.exemplars if one.name == found.name)
    assert found == said


def test_where_the_rules_not_met_differ_from_draw_to_draw_those_that_always_are_stand():
    found = as_it_came(marker("COA-01"), "everything ticked", 40)
    assert (found.outcomes, found.exactly) == (("critical_fail",), False)
    assert {"COA-01.4", "COA-01.5", "COA-01.6", "COA-01.10"} <= set(found.not_met)


def test_what_applies_to_no_draw_has_not_come_out():
    assert as_it_came(marker("COA-01"), "one humidity meter in the doubt", 1) is None
    assert as_it_came(marker("COA-01"), "walks away", 5) is None
    assert as_it_came(marker("COA-01"), "key", 5) is None
