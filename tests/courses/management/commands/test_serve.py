"""A held port is a sentence; the server's command is ours."""

import socket

import pytest
from django.core.management import CommandError, call_command

from courses.management.commands.serve import refuse_held, server_line


@pytest.fixture
def held():
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        one.listen(1)
        yield one.getsockname()[1]


def test_a_held_port_is_refused_with_what_to_do(held):
    with pytest.raises(CommandError, match=f"Port {held} can't be used: .* name another with --port.") as refusal:
        refuse_held(held)
    assert refusal.value.returncode == 2


def test_a_port_shared_by_another_server_of_this_kind_is_held_too():
    with socket.socket() as one:
        one.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEPORT, 1)
        one.bind(("127.0.0.1", 0))
        one.listen(1)
        with pytest.raises(CommandError):
            refuse_held(one.getsockname()[1])


def test_a_free_port_is_taken():
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        port = one.getsockname()[1]
    assert refuse_held(port) is None
    assert server_line(port)[-1] == "courses.server.wsgi:application"
    assert ["--host", "127.0.0.1", "--port", str(port)] == server_line(port)[5:9]


@pytest.mark.parametrize("port", [0, 65536])
def test_a_port_that_doesnt_exist_is_refused(port):
    with pytest.raises(CommandError, match="doesn't exist. Name one from 1 to 65535."):
        call_command("serve", port=port)


def test_before_setup_there_is_nothing_to_serve():
    with pytest.raises(CommandError, match="Nothing is set up here.") as refusal:
        call_command("serve", port=8000)
    assert refusal.value.returncode == 2
