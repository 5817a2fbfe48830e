import pytest

from assessments.rules import Function, choice, many, num, record
from assessments.rules.functions import by_name


def lent(name="half", returns=None, cost=1):
    return Function(name, (num("um"), choice(["a"])), returns or num("um"), cost, lambda um, word: um / 2)


def test_a_signature_is_one_line():
    assert lent().signature == "half(num um, enum) gives num um"
    assert lent(returns=num()).signature == "half(num um, enum) gives num"


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"name": "a b"}, "A rule can't write the function name 'a b'; use plain letters, digits and _."),
        ({"name": "é"}, "A rule can't write the function name 'é'"),
        ({"returns": record({})}, "half() gives a record; a function gives a single value."),
        ({"returns": many(num())}, "half() gives a list; a function gives a single value."),
        ({"cost": 0}, "half() costs 0; a cost is at least 1."),
    ],
)
def test_a_function_no_rule_could_call_is_refused(changes, said):
    with pytest.raises(ValueError) as refused:
        lent(**changes)
    assert said in str(refused.value)


def test_a_name_stands_once():
    assert by_name([lent()], ["near"])["half"].cost == 1
    with pytest.raises(ValueError, match="The function name 'half' is taken"):
        by_name([lent(), lent()], [])
    with pytest.raises(ValueError, match="The function name 'near' is taken"):
        by_name([lent("near")], ["near"])
