"""Everything that must hold before a change lands, with one exit code."""

import os
import subprocess
import sys
import time
from collections.abc import Mapping
from typing import Any

from django.conf import settings
from django.core.management.base import BaseCommand, CommandError

PYTHON = sys.executable
PRODUCTION = {
    "RAKING_HTTPS": "yes",
    "RAKING_PROXY": "yes",
    "RAKING_HOSTS": "school.example",
    "RAKING_URL": "https://school.example",
    "RAKING_SECRET_KEY": "a-key-of-fifty-characters-that-no-installation-uses-0123456789",
}
"""The environment of docs/operating.md, 'On a server'."""

CHECKS: Mapping[str, list[str]] = {
    "format": [PYTHON, "-m", "ruff", "format", "--check", "."],
    "lint": [PYTHON, "-m", "ruff", "check", "."],
    "templates": [PYTHON, "-m", "djlint", "--lint", "--quiet", "courses", "assessments"],
    "types": [PYTHON, "-m", "mypy"],
    "import contracts": [PYTHON, "-c", "from importlinter.cli import lint_imports_command; lint_imports_command()"],
    "system checks": [PYTHON, "manage.py", "check", "--fail-level", "WARNING"],
    "migrations up to date": [PYTHON, "manage.py", "makemigrations", "--check", "--dry-run"],
    "safe to deploy": [PYTHON, "manage.py", "check", "--deploy", "--fail-level", "WARNING"],
    "house": [PYTHON, "-m", "pytest", "-q", "tests/house", "-p", "no:cacheprovider"],
}


class Command(BaseCommand):
    """`quality`: format, lint, types, contracts, checks, migrations, deployment, house; one exit code."""

    help = "Run every check of the house; exit 1 if one falls short."
    requires_system_checks = ()

    def handle(self, *args: Any, **options: Any) -> None:
        wanting = [name for name, command in CHECKS.items() if not self.holds(name, command)]
        if wanting:
            raise CommandError(f"Wanting: {', '.join(wanting)}.", returncode=1)
        self.stdout.write(f"All {len(CHECKS)} hold.")

    def holds(self, name: str, command: list[str]) -> bool:
        """Run one check, print how it came out and, where it fell short, what it said."""
        began = time.monotonic()
        extra = PRODUCTION if name == "safe to deploy" else {}
        here = {key: value for key, value in os.environ.items() if key != "DJANGO_SETTINGS_MODULE"}
        run = subprocess.run(  # noqa: S603  our own words, no shell
            command,
            cwd=settings.BASE_DIR,
            env={**here, "PYTHONPATH": str(settings.BASE_DIR), **extra},
            capture_output=True,
            text=True,
            check=False,
        )
        self.stdout.write(f"{'holds' if run.returncode == 0 else 'WANTING':8}{name} ({time.monotonic() - began:.1f} s)")
        if run.returncode:
            self.stdout.write(run.stdout + run.stderr)
        self.stdout.flush()
        return run.returncode == 0
