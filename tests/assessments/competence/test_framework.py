"""Units, elements and requirements: what is found by code, what is refused, what a digest covers."""

import hashlib
from dataclasses import fields, replace
from datetime import UTC, datetime

import pytest

from assessments.competence import Criterion, Element, Framework, Unit, UnknownCode
from tests.assessments.competence.pieces import ask, requirement

RELEASE = Element("COA1", "Release", (Criterion("a", "Dry.", False),))
READ = Element("COA2", "Read the day", (Criterion("a", "By contact.", True),))
COATING = Unit("COA", "Coat", "Thin.", ("SAF1",), (RELEASE, READ))
WHOLE = Framework(
    {"COA": COATING},
    {
        ("COA1", 1): requirement(element="COA1", version=1),
        ("COA2", 0): requirement(),
        ("COA2", 1): requirement(version=1),
    },
    {"COA1": 1, "COA2": 0},
)


def test_the_requirement_in_force_is_found_and_an_older_or_newer_one_by_its_version():
    assert WHOLE.requirement("COA2").version == 0
    assert WHOLE.requirement("COA2", 1).version == 1
    assert WHOLE.requirement("COA1").version == 1


def test_a_version_nobody_wrote_is_refused_with_those_there_are():
    with pytest.raises(UnknownCode, match=r"COA2 has no requirement 7; there are 0, 1\."):
        WHOLE.requirement("COA2", 7)


@pytest.mark.parametrize("find", [WHOLE.element, WHOLE.unit_of, WHOLE.requirement])
def test_an_unknown_code_is_refused_with_the_nearest(find):
    with pytest.raises(UnknownCode, match=r"No element is called 'COA22'; did you mean COA2"):
        find("COA22")


def test_elements_and_their_units_are_found():
    assert WHOLE.element("COA2") is READ
    assert WHOLE.unit_of("COA2") is WHOLE.unit_of("COA") is COATING
    assert WHOLE.codes == ("COA", "COA1", "COA2")


@pytest.mark.parametrize(
    ("code", "element", "covered"),
    [
        ("COA", "COA2", True),
        ("COA2", "COA2", True),
        ("COA", "COA", True),
        ("COA1", "COA2", False),
        ("COA2", "COA", False),
        ("SAF", "COA2", False),
        ("SAF1", "SAF1", False),
    ],
)
def test_a_unit_covers_its_elements_and_an_element_itself(code, element, covered):
    assert WHOLE.covers(code, element) is covered


def test_the_digest_is_that_of_the_canonical_form_written_by_hand():
    # RFC 8785 by hand: keys sorted, no blanks; SHA-256 by the standard library
    text = (
        '{"asks":[{"code":"COA2-01","count":1,"days":1,"elements":["COA2"],"kind":"scenario","mode":"paper",'
        '"scenarios":["COA-01"],"substrates":[],"tags":[],"window_months":18,"witness":[],'
        '"words":"A paper at COA-01"}],'
        '"due_days":60,"element":"COA2","recertify_months":24,"version":0}'
    )
    assert requirement().digest == hashlib.sha256(text.encode()).hexdigest()


def test_the_digest_covers_every_field():
    other = {"element": "COA1", "version": 1, "asks": (ask(count=2),), "recertify_months": 12, "due_days": 30}
    assert set(other) == {one.name for one in fields(requirement())}
    digests = {replace(requirement(), **{name: value}).digest for name, value in other.items()}
    assert len(digests | {requirement().digest}) == len(other) + 1


def test_a_signature_ends_by_the_calendar():
    assert requirement().until(datetime(2026, 4, 14, tzinfo=UTC)) == datetime(2028, 4, 14, tzinfo=UTC)
