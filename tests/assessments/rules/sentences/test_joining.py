"""Joined clauses can be read one way only: no two logics of the same clauses sound alike."""

from itertools import product

import pytest

from assessments.rules.sentences.joining import BODY, INSIDE, TOP, Said, group, spoken

A, B, C, D = (Said(f"{letter} holds") for letter in "ABCD")
OPEN = Said("for every step, it is wet", open=True)


@pytest.mark.parametrize(
    ("said", "wanted"),
    [
        (A, "A holds"),
        (group("and", [A, B]), "A holds, and B holds"),
        (group("and", [A, B, C]), "A holds, B holds, and C holds"),
        (group("or", [A, B]), "either A holds or B holds"),
        (group("or", [A, B, C]), "either A holds, B holds or C holds"),
        (group("and", [A, group("and", [B, C])]), "A holds, B holds, and C holds"),
        (group("and", [A, group("or", [B, C]), D]), "A holds; either B holds or C holds; and D holds"),
        (group("or", [group("and", [A, B]), C]), "either both A holds and B holds; or C holds"),
        (
            group("or", [A, group("and", [B, C, D])]),
            "either A holds; or all of this: B holds, C holds and D holds",
        ),
        (
            group("and", [A, group("or", [B, group("and", [C, D])])]),
            "A holds; and either B holds or (both C holds and D holds)",
        ),
        (group("and", [OPEN, A]), "for every step, it is wet; and A holds"),
        (
            group("and", [A, group("or", [OPEN, B])]),
            "A holds; and either (for every step, it is wet) or B holds",
        ),
    ],
)
def test_clauses_are_joined(said, wanted):
    assert spoken(said) == wanted


def test_what_is_said_of_an_item_keeps_semicolons_for_the_sentence():
    both, nested = group("and", [A, B]), group("and", [A, group("or", [B, C])])
    assert [spoken(both, place) for place in (TOP, BODY, INSIDE)] == [
        "A holds, and B holds",
        "A holds, and B holds",
        "both A holds and B holds",
    ]
    assert spoken(nested, BODY) == "both A holds and (either B holds or C holds)"


def formulas(leaves, depth):
    """Return every formula over these leaves in their order, as (said, function of their truth)."""
    if len(leaves) == 1:
        yield Said(f"{leaves[0]} holds"), lambda case, name=leaves[0]: case[name]
        return
    for cut in range(1, len(leaves)):
        for (left, f), (right, g) in product(formulas(leaves[:cut], depth + 1), formulas(leaves[cut:], depth + 1)):
            yield group("and", [left, right]), lambda case, f=f, g=g: f(case) and g(case)
            yield group("or", [left, right]), lambda case, f=f, g=g: f(case) or g(case)


@pytest.mark.parametrize("place", [TOP, BODY, INSIDE])
def test_no_two_logics_sound_alike(place):
    heard = {}
    cases = [dict(zip("ABCDE", case, strict=True)) for case in product([False, True], repeat=5)]
    for said, holds in formulas("ABCDE", 0):
        table = tuple(holds(case) for case in cases)
        assert heard.setdefault(spoken(said, place), table) == table
    assert len(heard) == 90
