"""The framework from its texts: what is shipped, read whole; what is wrong, refused with file, line and key."""

import re
from pathlib import Path

import pytest

from assessments.competence.reader import read_framework
from courses.content.errors import FileRefused

FOLDER = Path(__file__).parents[3] / "fixtures/competence"
TEXTS = {path.relative_to(FOLDER).as_posix(): path.read_text(encoding="utf-8") for path in FOLDER.rglob("*.toml")}
WHOLE = read_framework(TEXTS)

UNITS = """
[[unit]]
code = "COA"
title = "Coat"
about = "Thin."
elements = [{ code = "COA1", title = "Release" }, { code = "COA2", title = "Read" }]
"""
CRITERIA = """unit = "COA"

[[element]]
code = "COA1"
criteria = [{ letter = "a", text = "Dry." }]

[[element]]
code = "COA2"
criteria = [{ letter = "a", text = "By contact.", critical = true }]
"""
ASKED = """version = 1
elements = ["COA1", "COA2"]
window_months = 18
recertify_months = 24

[[ask]]
code = "F"
words = "Five papers"
kind = "scenario"
count = 5
"""
SMALL = {
    "units.toml": UNITS,
    "in_force.toml": "version = 1\n",
    "criteria/COA.toml": CRITERIA,
    "requirements/COA.toml": ASKED,
}


def small(**changed):
    """Return the small framework's texts, each `name` (a dot for the slash) changed from one text to another."""
    texts = dict(SMALL)
    for name, (old, new) in changed.items():
        key = {"units": "units.toml", "force": "in_force.toml"}.get(name, f"{name}/COA.toml")
        assert old in texts[key]
        texts[key] = texts[key].replace(old, new)
    return texts


def test_every_element_that_is_shipped_has_criteria_and_a_requirement_in_force():
    elements = [one for unit in WHOLE.units.values() for one in unit.elements]
    assert len(WHOLE.units) == 7
    assert len(elements) == 31
    for one in elements:
        assert [two.letter for two in one.criteria] == list("abcdefgh")[: len(one.criteria)]
        assert len(one.criteria) >= 3
        assert WHOLE.requirement(one.code).asks
        assert WHOLE.requirement(one.code).version == (0 if one.code == "COA2" else 1)
        assert WHOLE.requirement(one.code, 1).version == 1


# The curriculum's page of competence, counted by hand: criteria marked "!" by element; months to recertify, window.
CRITICAL = {
    "INS1": "e", "INS2": "a", "INS3": "c", "INS4": "c", "WAD1": "", "WAD2": "ce", "WAD3": "", "WAD4": "acd",
    "PLN1": "c", "PLN2": "", "PLN3": "a", "PLN4": "", "CUT1": "a", "CUT2": "e", "CUT3": "c", "CUT4": "", "CUT5": "bd",
    "SAF1": "c", "SAF2": "abce", "SAF3": "abef", "SAF4": "cef", "SAF5": "abcef", "COA1": "", "COA2": "c", "COA3": "e",
    "COA4": "b", "COA5": "", "HOM1": "", "HOM2": "c", "HOM3": "cd", "HOM4": "",
}  # fmt: skip
MONTHS = {
    "INS": (36, 24), "WAD": (24, 18), "PLN": (24, 18), "CUT": (24, 12), "SAF": (12, 12), "COA": (24, 18),
    "HOM": (36, 24),
}  # fmt: skip
CRITERIA_COUNTED = {"INS": 18, "WAD": 18, "PLN": 17, "CUT": 20, "SAF": 28, "COA": 19, "HOM": 15}


def test_the_critical_criteria_are_those_of_the_curriculum():
    found = {
        one.code: "".join(two.letter for two in one.criteria if two.critical)
        for unit in WHOLE.units.values()
        for one in unit.elements
    }
    assert found == CRITICAL


def test_the_criteria_are_as_many_as_in_the_curriculum():
    found = {code: sum(len(one.criteria) for one in unit.elements) for code, unit in WHOLE.units.items()}
    assert found == CRITERIA_COUNTED


def test_windows_and_intervals_are_those_of_the_curriculum():
    for (element, version), one in WHOLE.requirements.items():
        months, window = (24, 18) if version == 0 else MONTHS[element[:3]]
        assert (one.recertify_months, {two.window_months for two in one.asks}) == (months, {window}), element


def test_version_0_of_coa2_is_one_paper_at_coa_01():
    (only,) = WHOLE.requirement("COA2").asks
    assert (only.kind, only.mode, only.scenarios, only.count, only.window_months) == (
        "scenario", "paper", ("COA-01",), 1, 18,
    )  # fmt: skip


# Which practical is evidence for which elements: the curriculum's page of the bench, column "evidence".
@pytest.mark.parametrize(
    ("practical", "elements"),
    [
        ("B1", ("INS1", "INS2", "INS3", "INS4")),
        ("B2", ("WAD1", "WAD2", "WAD3", "WAD4")),
        ("B3", ("PLN1", "PLN2", "PLN3", "PLN4")),
        ("B4", ("CUT1", "CUT2")),
        ("B5", ("CUT3", "CUT4")),
        ("B6", ("CUT5",)),
        ("B7", ("SAF2", "SAF5")),
        ("B8", ("COA1", "COA2", "COA3", "COA4", "COA5")),
    ],
)
def test_each_practical_serves_the_elements_it_is_evidence_for(practical, elements):
    serving = {one.elements for two in WHOLE.requirements.values() for one in two.asks if one.scenarios == (practical,)}
    assert serving == {elements}


def test_a_job_on_a_hull_is_asked_for_by_four_units():
    asked = {
        element[:3] for (element, _), one in WHOLE.requirements.items() if any(two.kind == "job" for two in one.asks)
    }
    assert asked == {"WAD", "CUT", "COA", "HOM"}


def test_no_text_that_is_shown_holds_a_key_of_a_source():
    shown = [two.text for unit in WHOLE.units.values() for one in unit.elements for two in one.criteria]
    shown += [two.words for one in WHOLE.requirements.values() for two in one.asks]
    assert [text for text in shown if re.search(r"§|\[|\]|!", text)] == []


def test_an_ask_that_names_no_elements_serves_all_of_its_file():
    small_whole = read_framework(SMALL)
    (only,) = small_whole.requirement("COA1").asks
    assert only.elements == ("COA1", "COA2")
    assert small_whole.requirement("COA2").asks == (only,)
    assert (only.mode, only.days, only.substrates, only.window_months) == ("", 1, (), 18)


def test_substrates_may_be_a_number_or_names():
    by_number = read_framework(small(requirements=("count = 5", "count = 5\nsubstrates = 2")))
    by_name = read_framework(small(requirements=("count = 5", 'count = 5\nsubstrates = ["gel_coat"]')))
    assert by_number.requirement("COA1").asks[0].substrates == 2
    assert by_name.requirement("COA1").asks[0].substrates == ("gel_coat",)


@pytest.mark.parametrize(
    ("changed", "said"),
    [
        ({"criteria": ('unit = "COA"', 'unit = "CAO"')},
         "COA.toml, line 1, unit: 'CAO' isn't known here; did you mean COA?"),
        ({"criteria": ('letter = "a", text = "Dry."', 'letter = "b", text = "Dry."')}, "'b' isn't known here"),
        ({"criteria": ("critical", "kritical")}, "did you mean critical?"),
        ({"criteria": ('code = "COA2"', 'code = "COA1"')}, "'COA1' stands above already"),
        ({"criteria": ('code = "COA2"', 'code = "COA3"')}, "'COA3' isn't known here"),
        ({"criteria": ('unit = "COA"', 'unit = "COA"\nprerequisites = ["SAF1"]')}, "'SAF1' isn't known here"),
        ({"requirements": ('"scenario"', '"scenarios"')}, "did you mean scenario?"),
        ({"requirements": ("count = 5", "count = 0")}, "0 is outside 1 to 99"),
        ({"requirements": ("count = 5", "count = 1\ndays = 2")}, "2 is outside 1 to 1"),
        ({"requirements": ("count = 5", "count = 5\nsubstrates = 4")}, "4 is outside 1 to 3"),
        ({"requirements": ("count = 5", 'substrates = ["gel_coat", "clear_coat"]')}, "1 can't show 2 substrates"),
        ({"requirements": ("count = 5", 'count = 5\nwitness = ["Z"]')}, "'Z' isn't known here"),
        ({"requirements": ("count = 5", 'count = 5\nmode = "formal"')}, "'formal' isn't known here"),
        ({"requirements": ("count = 5", 'count = 5\nelements = ["COA1"]')}, "nothing is asked for COA2"),
        ({"requirements": ("window_months", "windows_months")}, "did you mean window_months?"),
        ({"requirements": ("version = 1", "version = 2")}, "in_force.toml, line 1, version: COA1 has no requirement 1"),
        ({"force": ("version = 1", "version = 1\n[instead]\nCOA2 = 0")}, "in_force.toml, line 3, instead.COA2"),
        ({"force": ("version = 1", "version = 1\n[instead]\nCOA9 = 0")}, "'COA9' isn't known here"),
        ({"force": ("version = 1", "version = ")}, "this is not TOML"),
    ],
)  # fmt: skip
def test_what_is_wrong_is_refused_with_its_place(changed, said):
    with pytest.raises(FileRefused, match=re.escape(said)):
        read_framework(small(**changed))


def test_an_element_without_criteria_is_refused():
    texts = {**SMALL, "criteria/COA.toml": CRITERIA[: CRITERIA.rindex("[[element]]")]}
    with pytest.raises(FileRefused, match="nothing is looked for in COA2; add it"):
        read_framework(texts)


@pytest.mark.parametrize("name", ["units.toml", "in_force.toml", "criteria/COA.toml"])
def test_a_missing_file_is_refused(name):
    texts = {key: text for key, text in SMALL.items() if key != name}
    with pytest.raises(FileRefused, match=f"^fixtures/{name}, line 1, .*this file is missing"):
        read_framework(texts, "fixtures/")


def test_one_version_of_an_element_stands_once():
    with pytest.raises(FileRefused, match="version 1 of COA1 stands in an earlier file too"):
        read_framework({**SMALL, "requirements/more.toml": ASKED})


def test_two_criteria_files_of_one_unit_are_refused():
    with pytest.raises(FileRefused, match="'COA' stands above already"):
        read_framework({**SMALL, "criteria/more.toml": CRITERIA})


def test_an_ask_has_a_code_of_its_own():
    twice = ASKED + ASKED[ASKED.index("[[ask]]") :]
    with pytest.raises(FileRefused, match="'F' stands above already"):
        read_framework({**SMALL, "requirements/COA.toml": twice})
