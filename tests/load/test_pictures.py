"""Many pictures asked for at once: everybody gets theirs, nobody meets an error, pages are answered meanwhile."""

import pytest

from tests.installation import Installation
from tests.load.pictures import opened, run

PHONES, WIDTH = 16, 240

pytestmark = pytest.mark.load


def test_a_class_looks_at_once(tmp_path):
    shop = Installation(tmp_path / "var")
    shop.serve()
    try:
        eyes = opened(shop, PHONES, WIDTH)
        _before, meanwhile, _took = run(eyes)
    finally:
        shop.end()
    assert [error for one in eyes for error in one.errors] == []
    assert all(len(one.took) == 2 for one in eyes[:-1])
    assert meanwhile
    assert max(meanwhile) < 5
