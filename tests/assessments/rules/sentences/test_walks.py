import pytest

from assessments.rules.sentences.joining import spoken
from assessments.rules.sentences.reading import reading
from assessments.rules.sentences.walks import counted


@pytest.fixture
def clause(checked):
    """A test as a clause."""

    def ask(rule, holds=True):
        found = checked(rule)
        assert found.ok, found.errors
        return spoken(reading().clause(found.root, holds)).replace("\u00a0", " ")

    return ask


@pytest.mark.parametrize(
    ("rule", "wanted", "turned"),
    [
        ("any(s.op == 'sand' for s in answer.steps)", "there is a sand step", "there is no sand step"),
        (
            "any('inspect' == s.op for s in answer.steps if s.wet)",
            "there is an inspect step whose wet is yes",
            "there is no inspect step whose wet is yes",
        ),
        (
            "any(s.op == 'sand' and s.op == 'dry' for s in answer.steps)",
            "there is a sand step that is dry",
            "there is no sand step that is dry",
        ),
        (
            "any(not (s.wet or s.um > 3) for s in answer.steps)",
            "there is a step whose wet is no and whose um is not over 3 µm",
            "there is no step whose wet is no and whose um is not over 3 µm",
        ),
        (
            "any(s.wet or s.um > 3 for s in answer.steps)",
            "there is a step for which either its wet is yes or its um is over 3 µm",
            "there is no step for which either its wet is yes or its um is over 3 µm",
        ),
        (
            "every(s.wet for s in answer.steps)",
            "for every step, its wet is yes",
            "there is a step whose wet is no",
        ),
        (
            "every(s.op in ['sand', 'dry'] for s in answer.steps if s.wet)",
            "every step whose wet is yes is sand or dry",
            "there is a step whose wet is yes and that is neither sand nor dry",
        ),
        (
            "every(s.op == 'sand' for s in answer.steps if s.wet or s.um > 3)",
            "for every step for which either its wet is yes or its um is over 3 µm, it is sand",
            "there is a step that is not sand and for which either its wet is yes or its um is over 3 µm",
        ),
        (
            "every(s.wet and s.um > 3 for s in answer.steps)",
            "for every step, its wet is yes, and its um is over 3 µm",
            "there is a step for which either its wet is no or its um is not over 3 µm",
        ),
        (
            "every(any(t.um > s.um and t.n + s.n > 9 for t in answer.steps) for s in answer.steps)",
            "for every step, there is a step whose um is over its um and for which that step's number + its number is"
            " over 9",
            "there is a step for which there is no step whose um is over its um and for which that step's number"
            " + its number is over 9",
        ),
        (
            "every(any(k == j or k == 'tell_owner' for k in key.kit) for j in key.kit)",
            "for every item of the key's kit, there is an item of the key's kit for which either the item looked for is"
            " that item or the item looked for is tell owner",
            "there is an item of the key's kit for which there is no item of the key's kit for which either the item"
            " looked for is that item or the item looked for is tell owner",
        ),
        (
            "any(answer.packs > s.n for s in answer.steps)",
            "there is a step that comes before the trainee's packs",
            "there is no step that comes before the trainee's packs",
        ),
    ],
)
def test_what_has_to_be_there_is_told_with_what_tells_it_from_the_rest(clause, rule, wanted, turned):
    assert (clause(rule), clause(rule, holds=False)) == (wanted, turned)


@pytest.mark.parametrize(
    ("rule", "wanted", "turned"),
    [
        (
            "count(s.op == 'sand' for s in answer.steps) <= 2",
            "there are at most 2 sand steps",
            "there are more than 2 sand steps",
        ),
        (
            "count(s.wet for s in answer.steps) >= 2",
            "there are at least 2 steps whose wet is yes",
            "there are fewer than",
        ),
        (
            "2 == count(s.wet for s in answer.steps)",
            "there are exactly 2 steps whose wet is yes",
            "there are other than 2",
        ),
        (
            "count(s.n > 1 for s in answer.steps) > 1",
            "there is more than 1 step that comes after step 1",
            "there is at most",
        ),
        ("count(s.n > 1 for s in answer.steps) > 2", "there are more than 2 steps that come after step 1", "there are"),
        (
            "count(s.wet for s in answer.steps) == 0",
            "there is no step whose wet is yes",
            "there is a step whose wet is yes",
        ),
        (
            "1 > count(s.wet for s in answer.steps)",
            "there is no step whose wet is yes",
            "there is a step whose wet is yes",
        ),
        (
            "count(s.wet for s in answer.steps) > 0",
            "there is a step whose wet is yes",
            "there is no step whose wet is yes",
        ),
        (
            "count(s.wet or s.n > 3 for s in answer.steps) > 2",
            "there are more than 2 steps for which either that step's wet is yes or that step comes after step 3",
            "there are at most 2 steps for which either that step's wet is yes",
        ),
        (
            "overlap(answer.next_steps, key.kit) == 0",
            "no next step is among the key's kit",
            "at least one next step is",
        ),
        (
            "overlap(answer.next_steps, key.kit) >= 1",
            "at least one next step is among the key's kit",
            "no next step is",
        ),
        (
            "overlap(answer.next_steps, key.kit) == 1",
            "exactly 1 next step is among the key's kit",
            "other than 1 next step",
        ),
        (
            "overlap(answer.next_steps, key.kit) >= 2",
            "at least 2 next steps are among the key's kit",
            "fewer than 2 next",
        ),
        (
            "overlap(answer.next_steps, key.kit) > key.packs",
            "the number of next steps that are among the key's kit is over the key's packs",
            "the number of next steps that are among the key's kit is not over",
        ),
        (
            "count(s.wet for s in answer.steps) > key.packs",
            "the number of steps whose wet is yes is over the key's packs",
            "the",
        ),
        (
            "1 <= count(s.wet for s in answer.steps) <= 2",
            "the number of steps whose wet is yes is between 1 and 2",
            "the",
        ),
        ("sum(s.n for s in answer.steps) > 3", "the sum of number over the steps is over 3", "the sum of number over"),
        ("len(answer.steps) > 2", "the number of steps is over 2", "the number of steps is not over 2"),
    ],
)
def test_a_number_of_items_is_told_by_how_many_there_have_to_be(clause, rule, wanted, turned):
    assert clause(rule) == wanted
    assert clause(rule, holds=False).startswith(turned)


@pytest.mark.parametrize(
    ("expression", "wanted"),
    [
        ("sum(s.um * s.n for s in answer.steps if s.wet)", "the sum of um × number over the steps whose wet is yes"),
        (
            "sum(s.um if s.wet else 2 for s in answer.steps)",
            "the sum of (um if wet is yes, otherwise 2 µm) over the steps",
        ),
        ("least(s.um for s in answer.steps if s.op == 'sand')", "the least um over the sand steps"),
        ("most(s.um for s in answer.steps)", "the most um over the steps"),
        (
            "least(s.um for s in answer.steps if s.wet or s.n > 3)",
            "the least um over the steps for which either that step's wet is yes or that step comes after step 3",
        ),
        ("sum(k for k in [1, 2])", "the sum of the items of 1 and 2"),
        ("most(k * 2 for k in [1, 2])", "the most each × 2 over the items of 1 and 2"),
        ("least(k for k in [1, 2] if k > 1)", "the least of the items of 1 and 2 that are over 1"),
    ],
)
def test_a_sum_is_told_with_what_it_runs_over(checked, expression, wanted):
    found = checked(expression, wants="any")
    assert found.ok, found.errors
    assert reading().amount(found.root).replace("\u00a0", " ") == wanted


@pytest.mark.parametrize("rule", ["answer.packs > 3", "overlap(key.kit, key.kit) > key.packs", "1 < answer.packs < 3"])
def test_only_numbers_of_items_are_counted(checked, rule):
    assert counted(reading(), checked(rule).root, True) is None
