"""A head that was kept elsewhere is read again only as it was printed."""

import json

import pytest
from django.conf import settings

from assessments import log
from assessments.management.kept_head import kept_head, printed
from assessments.models import TreeHead
from courses.keys import public_keys
from courses.management.door import DoorError


@pytest.fixture
def head(school, now):
    log.enter(log.SCHOOL, "noted", {}, now=now)
    return printed(TreeHead.objects.get())


@pytest.fixture
def read(tmp_path):
    """Return a function that reads a head from a file."""

    def read_file(said):
        (tmp_path / "head.json").write_text(json.dumps(said))
        return kept_head(str(tmp_path / "head.json"), public_keys(settings.VAR))

    return read_file


def test_a_head_is_read_as_it_was_printed(head, read):
    found = read(head)
    assert (found.size, found.root, found.signed_at, found.key_id) == tuple(list(head.values())[:4])


@pytest.mark.parametrize(
    ("other", "words"),
    [
        ({"size": 2}, "its signature is not that of the key"),
        ({"root": "0" * 64}, "its signature is not that of the key"),
        ({"signature": "zz"}, "its signature is not that of the key"),
        ({"size": "1"}, "size is '1', not as log_head prints it."),
        ({"size": True}, "size is True, not as log_head prints it."),
        ({"key_id": "nobody"}, "the key nobody never signed here; it is not among the public keys."),
        ({"more": 1}, "a head has key_id, root, signature, signed_at, size, as log_head prints it."),
    ],
)
def test_a_head_with_a_fault_is_refused(head, read, other, words):
    with pytest.raises(DoorError, match=words):
        read({**head, **other})


@pytest.mark.parametrize("said", [[], "head", None])
def test_what_is_no_head_is_refused(school, read, said):
    with pytest.raises(DoorError, match="a head has key_id, root"):
        read(said)
