"""INS-09 version 1: what six patches are made of, and one boat worked by hand."""

from collections import Counter
from dataclasses import replace
from random import Random

import pytest

from assessments import shipped
from assessments.scenarios.chance import Chance
from assessments.scenarios.draw import Drawn, key_of
from assessments.scenarios.fields import Record
from assessments.scenarios.ins_09_v1 import draw, key, model, under_of
from assessments.scenarios.sketch import Thrown
from tests.assessments.scenarios.drawing import assert_shares, draws

PAINT = {"two_pack", "flake"}
PLASTIC = {"acrylic", "polycarbonate", "clear_vinyl"}
OTHER = {"wrap", "anodised", "teak"}
BOAT = ("gel_coat", "clear_vinyl", "flake", "teak", "gel_coat", "wrap")


@pytest.fixture(scope="module")
def sweep() -> list[Drawn]:
    return draws("INS-09@1", 240)


def test_six_patches_hold_gel_coat_paint_clear_plastic_and_one_thing_more(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        under = under_of(drawn.facts)
        assert list(under) == [1, 2, 3, 4, 5, 6]
        seen = Counter(under.values())
        assert seen["gel_coat"] in (1, 2)
        assert all(set(under.values()) & group for group in (PAINT, PLASTIC, OTHER))
        assert all(count == 1 for what, count in seen.items() if what != "gel_coat")


def test_gel_coat_comes_once_or_twice_and_anywhere(sweep: list[Drawn]) -> None:
    assert_shares(sweep, lambda one: one.kind, {"one_gel": 0.5, "two_gel": 0.5})
    assert {n for drawn in sweep for n, what in under_of(drawn.facts).items() if what == "gel_coat"} == set(range(1, 7))


def test_each_patch_lies_in_a_place_of_its_own_and_has_its_clues(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        assert len({drawn.facts[f"place_{n}"] for n in range(1, 7)}) == 6
        assert all(drawn.facts[f"{clue}_{n}"] for clue in ("edge", "rag") for n in range(1, 7))
        assert drawn.facts["paper"]


def test_the_key_never_rubs_clear_plastic_and_names_all_six(sweep: list[Drawn]) -> None:
    for drawn in sweep:
        worked = key_of(drawn.scenario, drawn.facts)
        asked, no_rag = worked["asked"], worked["no_rag"]
        assert isinstance(asked, tuple)
        assert isinstance(no_rag, tuple)
        assert not set(asked) & set(no_rag)
        assert model(drawn.facts, worked, worked) == {"named": 6}


def boat() -> Record:
    return Record({"under": tuple(Record({"n": n, "what": what}) for n, what in enumerate(BOAT, 1))})


def test_one_boat_by_hand() -> None:
    worked = key(boat())
    lists = ("gel", "leave", "plastics", "no_paper", "no_acid", "no_rag", "record_zones")
    assert [worked[name] for name in lists] == [[1, 5], [2, 3, 4, 6], [2], [3], [4, 6], ["rag_2"], ["all"]]
    patches = worked["patches"]
    assert isinstance(patches, list)
    assert [row["verdict"] for row in patches] == ["polish", "leave", "leave", "leave", "polish", "leave"]
    assert [row["cleaner"] for row in patches] == ["soap", "soap", "soap", "water", "soap", "soap"]
    assert worked["asked"] == ["paper", *(f"edge_{n}" for n in range(1, 7)), "rag_1", "rag_3", "rag_5"]


@pytest.mark.parametrize(
    ("rows", "named"),
    [
        ([{"n": 1, "what": "gel_coat"}, {"n": 2, "what": "clear_vinyl"}, {"n": 3, "what": "two_pack"}], 2),
        ([{"n": 4, "verdict": "leave"}], 0),
        ([], 0),
    ],
)
def test_a_patch_is_named_where_its_row_says_what_it_is(rows: list[dict[str, object]], named: int) -> None:
    assert model(boat(), {}, {"patches": rows}) == {"named": named}


def test_two_patches_in_one_place_are_thrown_away() -> None:
    two = next(kind for kind in shipped.scenario("INS-09@1").kinds if kind.name == "two_gel")
    narrow = replace(two, values={**two.values, "place_gel_coat": ("The transom",)})
    assert draw(Chance(Random(1).random), narrow) == Thrown("two patches lie in one place")
