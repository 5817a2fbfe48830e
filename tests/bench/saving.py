"""Saving an answer, and handing in with marking, evidence and log entry, beside a bare view that inserts one row.

`python -m tests.bench.saving` prints the median of paired ratios, one run, interleaved, on the stack of the site: its
middleware, its sessions, its database with every commit flushed. `DATABASE_URL` chooses the database, an empty one.
"""

import os
import statistics
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any
from uuid import uuid4

PAIRS, WARM = 60, 5


def timed(act: Callable[[], Any]) -> float:
    """Return the seconds an act takes; anything but a success ends the run."""
    began = time.perf_counter()
    answer = act()
    took = time.perf_counter() - began
    if answer.status_code not in (200, 302):
        raise SystemExit(f"answered {answer.status_code}: {answer.content[:300]!r}")
    return took


class Phone:
    """A signed-in trainee with an attempt of their own at every round."""

    def __init__(self) -> None:
        from django.test import Client

        from assessments.models import Attempt, Scenario
        from courses.models import Person

        self.client = Client(HTTP_ACCEPT="application/json", HTTP_HOST="localhost")
        self.person = Person.objects.get(email="tamsin@slackwater.example")
        self.client.force_login(self.person, backend="django.contrib.auth.backends.ModelBackend")
        self.scenario, self.attempts = Scenario.objects.get(code="COA-01"), Attempt.objects

    def sit(self) -> tuple[float, float, float]:
        """Return the seconds of a bare insert, of one answer saved, and of a hand-in, in one round."""
        from django.utils import timezone

        from assessments import journey

        attempt = journey.open_attempt(self.person, self.scenario, "practice", now=timezone.now())
        save, end, plain = (
            f"/attempts/{attempt.pk}/answer/",
            f"/attempts/{attempt.pk}/hand-in/",
            f"/bare/{attempt.pk}/",
        )
        first = {"task": "dew_point", "client_key": str(uuid4()), "seen": "0", "value": "9.3"}
        bare_took = timed(lambda: self.client.post(plain))
        save_took = timed(lambda: self.client.post(save, first))
        return bare_took, save_took, timed(lambda: self.client.post(end))


def ratios() -> tuple[float, float]:
    """Return the median of paired ratios to the bare insert: saving, handing in."""
    phone = Phone()
    rounds = [phone.sit() for _round in range(WARM + PAIRS)][WARM:]
    return (
        statistics.median(save / plain for plain, save, _end in rounds),
        statistics.median(end / plain for plain, _save, end in rounds),
    )


def main() -> None:
    """Set an installation up in a folder of its own, and measure."""
    os.environ.update(
        RAKING_VAR=tempfile.mkdtemp(prefix="raking-bench-"), DJANGO_SETTINGS_MODULE="courses.server.settings"
    )
    import django
    from django.conf import settings

    settings.ROOT_URLCONF = "tests.bench.bare"
    django.setup()
    from django.core.management import call_command
    from django.db import connection

    with Path(os.devnull).open("w") as quiet:
        call_command("setup", stdout=quiet)
    save, end = ratios()
    python = ".".join(str(one) for one in sys.version_info[:3])
    print(f"{connection.vendor}, Django {django.get_version()}, Python {python}, {PAIRS} pairs")
    print(f"one answer saved, to a bare insert: {save:.2f}")
    print(f"handed in, marked, filed, entered, to a bare insert: {end:.2f}")


if __name__ == "__main__":
    main()
