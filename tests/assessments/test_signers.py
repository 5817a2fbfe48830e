"""Who may decide on whom."""

import pytest

from assessments.errors import SignatureRefused
from assessments.signers import may_decide, signer_of, withdrawer_of
from courses.models import Membership
from tests.factories import CohortFactory, MembershipFactory

pytestmark = pytest.mark.django_db


def holding(person, **fields):
    Membership.objects.filter(person=person).update(**fields)


@pytest.mark.parametrize("codes", [["COA2"], ["COA"], ["INS", "COA"]])
def test_an_element_is_signed_by_who_may_sign_it_or_its_unit(signer, trainee, codes):
    holding(signer, may_sign=codes)
    assert signer_of(signer, trainee, "COA2").person == signer


@pytest.mark.parametrize(
    "fields", [{"may_sign": []}, {"may_sign": ["COA1"]}, {"may_sign": ["INS"]}, {"role": "manager"}]
)
def test_nobody_else_signs(signer, trainee, fields):
    holding(signer, **fields)
    with pytest.raises(SignatureRefused, match="You may not sign COA2 for Tara Trainee"):
        signer_of(signer, trainee, "COA2")


def test_a_signer_of_another_cohort_may_not(signer, trainee):
    holding(signer, cohort=CohortFactory())
    with pytest.raises(SignatureRefused, match="may not sign"):
        signer_of(signer, trainee, "COA2")


def test_a_signer_of_the_whole_school_may(signer, trainee):
    holding(signer, cohort=None)
    assert signer_of(signer, trainee, "COA2").cohort is None


def test_nobody_signs_for_themself(signer, remote):
    MembershipFactory(person=signer, cohort=remote)
    with pytest.raises(SignatureRefused, match="Nobody signs for themself"):
        signer_of(signer, signer, "COA2")


@pytest.mark.parametrize("teaching", [["COA"], ["COA2"], ["COA1"]])
def test_independence_keeps_the_teacher_of_the_unit_from_signing(school, signer, trainee, teaching):
    holding(signer, teaches=teaching)
    assert signer_of(signer, trainee, "COA2")
    school.independence = True
    school.save()
    with pytest.raises(SignatureRefused, match="lets nobody sign what they taught"):
        signer_of(signer, trainee, "COA2")


def test_teaching_it_elsewhere_is_no_bar(school, signer, trainee):
    school.independence = True
    school.save()
    MembershipFactory(person=signer, role="instructor", cohort=CohortFactory(), teaches=["COA"])
    assert signer_of(signer, trainee, "COA2")


def test_the_board_asks_the_same_without_a_query(signer, trainee, remote, django_assert_num_queries):
    held = list(signer.memberships.all())
    with django_assert_num_queries(0):
        assert may_decide(held, [remote.pk], "COA2", independence=True)
        assert not may_decide(held, [remote.pk], "COA1", independence=False)
        assert not may_decide(held, [remote.pk + 1], "COA2", independence=False)


def test_a_signature_is_withdrawn_by_its_signer_or_an_examiner(signed, signer, trainee, other, remote):
    assert withdrawer_of(signer, signed) == "instructor"
    examiner = MembershipFactory(role="examiner", cohort=remote).person
    assert withdrawer_of(examiner, signed) == "examiner"
    elsewhere = MembershipFactory(role="examiner", cohort=CohortFactory()).person
    for person in (elsewhere, other, trainee):
        with pytest.raises(SignatureRefused, match="Only who signed it, or an examiner"):
            withdrawer_of(person, signed)
