"""`demo` is `setup`, a link for each cohort, then `serve`; tried whole by tests/load, its refusals here."""

import socket

import pytest
from django.core.management import CommandError, call_command

from courses.models import School

pytestmark = pytest.mark.django_db


def test_a_held_port_is_found_before_anything_is_made():
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        one.listen(1)
        with pytest.raises(CommandError, match="name another with --port"):
            call_command("demo", port=one.getsockname()[1])
    assert School.objects.count() == 0
