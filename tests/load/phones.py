"""Many phones answering at once on a real server: `python -m tests.load.phones [PHONES] [SECONDS]`.

Half of the time the phones save answers, half of it they ask the bare view that inserts one row, in turns of a few
seconds under the same load; printed are the requests, the errors, and the ratio of the two 95th percentiles.
`DATABASE_URL` chooses the database.
"""

import json
import statistics
import sys
import tempfile
import threading
import time
import urllib.error
import urllib.parse
import urllib.request
from dataclasses import dataclass, field
from pathlib import Path
from uuid import uuid4

from tests.installation import LOST, Installation

TURN, THINK = 3.0, 0.2
PREPARE = """
import json
from django.contrib.auth import BACKEND_SESSION_KEY, HASH_SESSION_KEY, SESSION_KEY
from django.contrib.sessions.backends.db import SessionStore
from django.utils import timezone
from assessments.journey import open_attempt
from assessments.models import Scenario
from courses.actions import enrol, welcome
from courses.models import Cohort
scenario, cohort, now, made = Scenario.objects.get(code="COA-01"), Cohort.objects.first(), timezone.now(), []
for number in range({phones}):
    person = welcome(f"phone{{number}}@slackwater.example", None, name=f"Phone {{number}}")
    enrol(person, "trainee", cohort, now=now)
    store = SessionStore()
    store[SESSION_KEY], store[BACKEND_SESSION_KEY] = str(person.pk), "django.contrib.auth.backends.ModelBackend"
    store[HASH_SESSION_KEY] = person.get_session_auth_hash()
    store.create()
    made.append([store.session_key, str(open_attempt(person, scenario, "practice", now=now).pk)])
print(json.dumps(made))
"""


class Shop(Installation):
    """An installation that also serves the bare view."""

    def __init__(self, var: Path) -> None:
        super().__init__(var)
        self.env["DJANGO_SETTINGS_MODULE"] = "tests.load.settings"


@dataclass
class Phone:
    """One signed-in browser that sends as long as it is told to."""

    root: str
    session: str
    attempt: str
    seen: int = 0
    took: dict[str, list[float]] = field(default_factory=lambda: {"save": [], "bare": []})
    errors: list[str] = field(default_factory=list)

    def send(self, kind: str) -> None:
        """Send one answer, or one request to the bare view; keep how long it took."""
        key, token = str(uuid4()), "t" * 32
        fields = {"task": "dew_point", "client_key": key, "seen": self.seen, "value": f"{5 + self.seen % 100 / 10:.1f}"}
        path = f"/attempts/{self.attempt}/answer/" if kind == "save" else f"/bare/{self.attempt}/"
        body = urllib.parse.urlencode({"csrfmiddlewaretoken": token, **fields}).encode()
        cookie = f"sessionid={self.session}; csrftoken={token}"
        headers = {"Accept": "application/json", "Cookie": cookie, "Referer": self.root + "/"}
        began = time.perf_counter()
        try:
            with urllib.request.urlopen(urllib.request.Request(self.root + path, body, headers), timeout=30) as answer:
                text = answer.read()
        except (urllib.error.HTTPError, *LOST) as refusal:
            self.errors.append(str(refusal))
            return
        self.took[kind].append(time.perf_counter() - began)
        if kind == "save":
            self.seen = json.loads(text)["sequence"]

    def work(self, until: float) -> None:
        """Send, think, send again; everybody saves in one turn and asks the bare view in the next."""
        began = time.monotonic()
        while time.monotonic() < until:
            turn = int((time.monotonic() - began) / TURN)
            self.send("save" if turn % 2 == 0 else "bare")
            time.sleep(THINK)


def run(shop: Installation, phones: int, seconds: float) -> list[Phone]:
    """Let so many phones work at once for so long."""
    made = json.loads(shop.manage("shell", "--no-imports", "-c", PREPARE.format(phones=phones)).splitlines()[-1])
    people = [Phone(shop.url, session, attempt) for session, attempt in made]
    until = time.monotonic() + seconds
    threads = [threading.Thread(target=one.work, args=(until,)) for one in people]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    return people


def p95(people: list[Phone], kind: str) -> tuple[int, float]:
    """Return how many requests of a kind there were, and the 95th percentile of their seconds."""
    took = [one for person in people for one in person.took[kind]]
    return len(took), statistics.quantiles(took, n=20)[-1]


def main(phones: int = 60, seconds: float = 60) -> None:
    """Set up, serve, let the phones work, print what came of it."""
    shop = Shop(Path(tempfile.mkdtemp(prefix="raking-load-")))
    shop.serve()
    try:
        people = run(shop, phones, seconds)
    finally:
        shop.end()
    (saves, save), (bares, bare) = p95(people, "save"), p95(people, "bare")
    errors = [error for one in people for error in one.errors]
    print(f"{phones} phones, {seconds:g} s: {saves} answers, {bares} bare inserts, {len(errors)} errors {errors[:3]}")
    print(f"p95 of an answer to p95 of a bare insert: {save / bare:.2f}")


if __name__ == "__main__":
    main(*(int(one) for one in sys.argv[1:3]))
