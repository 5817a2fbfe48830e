"""What is said at every start."""

import pytest
from django.core.checks import WARNING, run_checks

from courses import checks

pytestmark = pytest.mark.django_db


def test_the_journal_is_named_with_its_reason(settings):
    if "sqlite" not in settings.DATABASES["default"]["ENGINE"]:
        assert checks.journal_mode(None) == []
        return
    (said,) = checks.journal_mode(None)
    assert said.id == "courses.I001"
    assert "3.51.3" in said.msg


def test_shipped_packs_read_clean():
    assert checks.shipped_packs(None) == []


def test_a_broken_pack_is_an_error_with_its_place(other_fixtures):
    other_fixtures("courses/lessons.toml", 'code = "L02"', 'code = "L01"')
    (said,) = checks.shipped_packs(None)
    assert said.id == "courses.E001"
    assert "lessons.toml, line " in said.msg


def test_nothing_is_wanting_here():
    assert [said for said in run_checks() if said.level >= WARNING] == []
