"""A class answering at once: everybody is heard, nobody meets an error. The minute of sixty phones is run by hand."""

import pytest

from tests.load.phones import Shop, run

PHONES, SECONDS = 20, 8

pytestmark = pytest.mark.load


def test_a_class_answers_at_once(tmp_path):
    shop = Shop(tmp_path / "var")
    shop.serve()
    try:
        people = run(shop, PHONES, SECONDS)
    finally:
        shop.end()
    assert [error for one in people for error in one.errors] == []
    assert all(one.seen == len(one.took["save"]) > 0 for one in people)
