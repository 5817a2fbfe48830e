"""A class that opens pictures at once, each another one: `python -m tests.load.pictures [PHONES] [WIDTH]`.

Every phone asks for the picture of its own attempt, again when it is told to, until it has it, and once more for the
next lamp place; meanwhile somebody reads a page, over and over. Printed are how long the last phone waited, how often
one was sent away, and how long the page took before and meanwhile.
"""

import json
import statistics
import sys
import tempfile
import threading
import time
import urllib.error
import urllib.request
from dataclasses import dataclass, field
from pathlib import Path

from tests.installation import LOST, Installation

PAGE = "/lessons/"
QUIET_S = 4.0
PREPARE = """
import json
from django.contrib.auth import BACKEND_SESSION_KEY, HASH_SESSION_KEY, SESSION_KEY
from django.contrib.sessions.backends.db import SessionStore
from django.utils import timezone
from courses import gallery
from courses.actions import enrol, welcome
from courses.models import Cohort
cohort, now, made = Cohort.objects.first(), timezone.now(), []
for number in range({phones}):
    person = welcome(f"eye{{number}}@slackwater.example", None, name=f"Eye {{number}}")
    enrol(person, "trainee", cohort, now=now)
    store = SessionStore()
    store[SESSION_KEY], store[BACKEND_SESSION_KEY] = str(person.pk), "django.contrib.auth.backends.ModelBackend"
    store[HASH_SESSION_KEY] = person.get_session_auth_hash()
    store.create()
    size, defects = [{width}, {height}], [dict(kind="swirl")]
    scene = dict(substrate="gel_coat", colour="navy", size=size, seed=number, defects=defects)
    row = gallery.hang(scene, "point", [(0.4, 0.42), (0.6, 0.42)], "paper", person)
    made.append([store.session_key, [gallery.address(row, place) for place in (1, 2)]])
print(json.dumps(made))
"""


@dataclass
class Eye:
    """One phone that wants its pictures."""

    root: str
    session: str
    addresses: list[str]
    took: list[float] = field(default_factory=list)
    sent_away: int = 0
    errors: list[str] = field(default_factory=list)

    def get(self, path: str) -> bytes:
        """Return what stands at an address."""
        request = urllib.request.Request(self.root + path, headers={"Cookie": f"sessionid={self.session}"})
        with urllib.request.urlopen(request, timeout=60) as answer:
            return answer.read()

    def look(self) -> None:
        """Ask for each picture until it is there."""
        for address in self.addresses:
            began = time.perf_counter()
            while not self.fetched(address):
                pass
            self.took.append(time.perf_counter() - began)

    def fetched(self, address: str) -> bool:
        """Ask once; where the room is busy, wait as told."""
        try:
            return self.get(address)[8:12] == b"WEBP"
        except urllib.error.HTTPError as refusal:
            if refusal.code != 503:
                self.errors.append(str(refusal))
                return True
            self.sent_away += 1
            time.sleep(int(refusal.headers["Retry-After"]))
            return False
        except LOST as lost:
            self.errors.append(str(lost))
            return True


def opened(shop: Installation, phones: int, width: int) -> list[Eye]:
    """Return so many phones, each with an attempt's picture of its own, and one more that reads pages."""
    line = PREPARE.format(phones=phones + 1, width=width, height=width * 2 // 3)
    made = json.loads(shop.manage("shell", "--no-imports", "-c", line).splitlines()[-1])
    return [Eye(shop.url, session, addresses) for session, addresses in made]


def read_until(eye: Eye, over: threading.Event) -> list[float]:
    """Read a page over and over; return how long each time took."""
    took = []
    while not over.is_set():
        began = time.perf_counter()
        eye.get(PAGE)
        took.append(time.perf_counter() - began)
        time.sleep(0.05)
    return took


def run(eyes: list[Eye]) -> tuple[list[float], list[float], float]:
    """Let all look at once; return how long a page took before and meanwhile, and how long all of it took."""
    *lookers, reader = eyes
    quiet, over = threading.Event(), threading.Event()
    threading.Timer(QUIET_S, quiet.set).start()
    before, meanwhile = read_until(reader, quiet), []
    reading = threading.Thread(target=lambda: meanwhile.extend(read_until(reader, over)))
    threads = [threading.Thread(target=one.look) for one in lookers]
    began = time.perf_counter()
    for thread in [reading, *threads]:
        thread.start()
    for thread in threads:
        thread.join()
    took = time.perf_counter() - began
    over.set()
    reading.join()
    return before, meanwhile, took


def p95(took: list[float]) -> float:
    """Return the 95th percentile in milliseconds."""
    return statistics.quantiles(took, n=20)[-1] * 1000


def resident(shop: Installation) -> list[int]:
    """Return the megabytes of each process of the server."""
    found = []
    for status in Path("/proc").glob("[0-9]*/status"):
        try:
            told = dict(line.split(":", 1) for line in status.read_text().splitlines() if ":" in line)
            group = int((status.parent / "stat").read_text().rsplit(")", 1)[1].split()[2])
        except OSError:
            continue
        if group == shop.server.pid and "VmHWM" in told:
            found.append(int(told["VmHWM"].split()[0]) // 1024)
    return sorted(found)


def main(phones: int = 30, width: int = 960) -> None:
    """Set up, serve, let the class look, print what came of it."""
    shop = Installation(Path(tempfile.mkdtemp(prefix="raking-pictures-")) / "var")
    shop.serve()
    try:
        eyes = opened(shop, phones, width)
        before, meanwhile, took = run(eyes)
        memory = resident(shop)
    finally:
        shop.end()
    first, away = sorted(one.took[0] for one in eyes[:-1]), sum(one.sent_away for one in eyes)
    errors = [error for one in eyes for error in one.errors]
    print(f"{phones} phones, {width} px: both pictures everywhere after {took:.1f} s; {away} sent away; {errors[:3]}")
    print(
        f"first picture after {first[0]:.1f} s on one, {statistics.median(first):.1f} s on half, {first[-1]:.1f} on all"
    )
    print(f"a page, 95th percentile: {p95(before):.0f} ms before, {p95(meanwhile):.0f} ms meanwhile")
    print(f"worst page meanwhile {max(meanwhile) * 1000:.0f} ms; peak of each process, MB: {memory}")


if __name__ == "__main__":
    main(*(int(one) for one in sys.argv[1:3]))
