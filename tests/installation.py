"""A whole installation in a folder and a database of its own, served by the commands of the README."""

import json
import os
import signal
import socket
import subprocess
import sys
import time
import urllib.request
from http.client import HTTPException
from pathlib import Path
from urllib.parse import urlsplit, urlunsplit
from uuid import uuid4

ROOT = Path(__file__).resolve().parents[1]
LOST = (OSError, HTTPException)
"""What a browser meets while the server is down or dies under it."""


class Installation:
    """Set up with the demo school; serve, kill and ask it as often as a test likes."""

    def __init__(self, var: Path) -> None:
        self.env = {**os.environ, "RAKING_VAR": str(var), "DJANGO_SETTINGS_MODULE": "courses.server.settings"}
        self.env.pop("RAKING_SECRET_KEY", None)
        if self.env.get("DATABASE_URL"):
            self.env["DATABASE_URL"] = _new_database(self.env["DATABASE_URL"])
        with socket.socket() as probe:
            probe.bind(("127.0.0.1", 0))
            self.port = probe.getsockname()[1]
        self.url = f"http://localhost:{self.port}"
        self.manage("setup")
        self.passwords = json.loads((var / "demo-passwords.json").read_text())

    def manage(self, *words: str) -> str:
        """Run a command of the installation; return what it printed."""
        line = [sys.executable, "manage.py", *words]
        run = subprocess.run(line, cwd=ROOT, env=self.env, capture_output=True, text=True, check=False)
        assert run.returncode == 0, run.stderr
        return run.stdout

    def serve(self) -> None:
        """Start the server, in a process group of its own; return when it answers."""
        line = [sys.executable, "manage.py", "serve", "--port", str(self.port)]
        quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL}
        self.server = subprocess.Popen(line, cwd=ROOT, env=self.env, start_new_session=True, **quiet)
        for _wait in range(1200):
            try:
                urllib.request.urlopen(f"{self.url}/account/login/", timeout=5).close()
                return
            except LOST:
                time.sleep(0.05)
        raise AssertionError("The server did not come up within a minute.")

    def end(self, how: signal.Signals = signal.SIGTERM) -> None:
        """End the whole process group: workers outlive the first process."""
        os.killpg(self.server.pid, how)
        self.server.wait(timeout=30)


def _new_database(url: str) -> str:
    """Make an empty database on the server of `url`; two installations never share one."""
    import psycopg

    parts, name = urlsplit(url), f"raking_{uuid4().hex}"
    with psycopg.connect(url, autocommit=True) as connection:
        connection.execute(f'CREATE DATABASE "{name}"')
    return urlunsplit(parts._replace(path=f"/{name}"))
