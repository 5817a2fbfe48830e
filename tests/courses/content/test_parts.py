import pytest

from courses.content.parts import Check, Option
from courses.content.prose import Prose


@pytest.fixture
def check() -> Check:
    options = (Option("a", Prose(("Go",)), False, Prose(("no",))), Option("b", Prose(("Wait",)), True, Prose(("yes",))))
    return Check("c1", Prose(("Now?",)), options)


def test_a_check_knows_its_right_option(check):
    assert check.right.id == "b"


def test_an_option_is_found_by_its_id_and_an_unknown_one_is_nothing(check):
    assert check.option("a") == check.options[0]
    assert check.option("z") is None
