"""Serve the site on this machine's loopback address."""

import os
import socket
import sys
from typing import Any

from django.conf import settings
from django.core.management.base import BaseCommand, CommandError, CommandParser

HOST = "127.0.0.1"
WORKERS = "2"
THREADS = "8"
"""Of one worker. Six of them may wait for a picture (courses/darkroom.py); the others answer meanwhile."""


def refuse_held(port: int) -> None:
    """Refuse a port that something else holds: the server would share it without a word."""
    with socket.socket(socket.AF_INET, socket.SOCK_STREAM) as probe:
        if sys.platform != "win32":
            probe.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            probe.bind((HOST, port))
            probe.listen(1)
        except OSError as why:
            raise CommandError(
                f"Port {port} can't be used: {why.strerror}. Stop what holds it, or name another with --port.",
                returncode=2,
            ) from why


def server_line(port: int) -> list[str]:
    """Return the command that serves the site on `port`."""
    options = {
        "--interface": "wsgi",
        "--host": HOST,
        "--port": str(port),
        "--workers": WORKERS,
        "--blocking-threads": THREADS,
        "--log-level": "error",  # its warning counts threads against cores: ours wait, they don't work
    }
    flags = [part for pair in options.items() for part in pair]
    return [sys.executable, "-m", "granian", *flags, "--no-ws", "courses.server.wsgi:application"]


class Command(BaseCommand):
    """`serve`: the site at http://localhost:PORT until Ctrl+C."""

    help = "Serve the site at http://localhost:PORT until Ctrl+C."
    requires_system_checks = ()

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("--port", type=int, default=8000, help="a free port, 8000 unless told")

    def handle(self, *args: Any, **options: Any) -> None:
        port = options["port"]
        if not 1 <= port <= 65535:
            raise CommandError(f"Port {port} doesn't exist. Name one from 1 to 65535.", returncode=2)
        if not (settings.STATIC_ROOT / "staticfiles.json").is_file() and not settings.DEBUG:
            raise CommandError("Nothing is set up here. Run 'python manage.py setup' first.", returncode=2)
        refuse_held(port)
        self.stdout.write(f"Raking Light is at http://localhost:{port} (Ctrl+C ends it)")
        self.stdout.flush()
        os.chdir(settings.BASE_DIR)
        os.execv(sys.executable, server_line(port))  # noqa: S606  our own words, no shell
