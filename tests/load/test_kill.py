"""A server killed outright, again and again, while a phone sends answers: what was acknowledged is there, once."""

import json
import random
import re
import signal
import threading
import time
import urllib.error
import urllib.parse
import urllib.request
from collections import Counter
from http.cookiejar import CookieJar
from uuid import uuid4

import pytest

from tests.installation import LOST, Installation

ANSWERS, KILLS = 200, 20
WHO = "tamsin@slackwater.example"

pytestmark = pytest.mark.load


class Shop(Installation):
    """An installation that counts how often it was killed."""

    kills = 0

    def kill(self) -> None:
        """Kill every process of the server outright."""
        self.end(signal.SIGKILL)
        self.kills += 1


class Phone:
    """One signed-in person's browser, as far as answers need it."""

    def __init__(self, shop: Shop) -> None:
        self.root = shop.url
        self.cookies = CookieJar()
        self.open = urllib.request.build_opener(urllib.request.HTTPCookieProcessor(self.cookies)).open
        page = self.get("/account/login/")
        self.post("/account/login/", page, login=WHO, password=shop.passwords[WHO])
        page = self.post("/scenarios/COA-01/open/", self.get("/scenarios/COA-01/"), mode="practice")
        self.save_url = re.search(r'action="(/attempts/[^"]+/answer/)"', page)[1]
        self.token = token_in(page)

    def get(self, path: str) -> str:
        with self.open(self.root + path, timeout=10) as answer:
            return answer.read().decode()

    def post(self, path: str, page: str, **fields: str) -> str:
        body = urllib.parse.urlencode({"csrfmiddlewaretoken": token_in(page), **fields}).encode()
        request = urllib.request.Request(self.root + path, body, {"Referer": self.root + path})
        with self.open(request, timeout=10) as answer:
            return answer.read().decode()

    def save(self, key: str, value: str, seen: int) -> int:
        """Send one answer until it is acknowledged; return its sequence."""
        fields = {"task": "dew_point", "client_key": key, "seen": seen, "value": value}
        body = urllib.parse.urlencode({"csrfmiddlewaretoken": self.token, **fields}).encode()
        headers = {"Accept": "application/json", "Referer": self.root + "/"}
        while True:
            try:
                with self.open(urllib.request.Request(self.root + self.save_url, body, headers), timeout=10) as answer:
                    return json.load(answer)["sequence"]
            except urllib.error.HTTPError as refusal:
                if refusal.code < 500:
                    raise
            except LOST:
                pass
            time.sleep(0.02)


def token_in(page: str) -> str:
    return re.search(r'name="csrfmiddlewaretoken" value="([^"]+)"', page)[1]


def kill_at_random(shop: Shop, done: threading.Event) -> None:
    chance = random.Random(20260414)
    while not done.is_set() or shop.kills < KILLS:
        time.sleep(chance.uniform(0.05, 0.7))
        shop.kill()
        shop.serve()


def rows_kept(shop: Shop) -> list[tuple[str, int]]:
    ask = (
        "import json; from assessments.models import Answer; "
        "print(json.dumps([[str(a.client_key), a.sequence] for a in Answer.objects"
        f".filter(attempt__person__email='{WHO}').order_by('sequence')]))"
    )
    return [tuple(row) for row in json.loads(shop.manage("shell", "--no-imports", "-c", ask).splitlines()[-1])]


def test_no_acknowledged_answer_is_lost_or_doubled(tmp_path):
    shop = Shop(tmp_path / "var")
    shop.serve()
    try:
        phone = Phone(shop)
        done = threading.Event()
        killer = threading.Thread(target=kill_at_random, args=(shop, done))
        killer.start()
        acknowledged, seen = [], 0
        for number in range(ANSWERS):
            key = str(uuid4())
            seen = phone.save(key, f"{5 + number / 100:.2f}", seen)
            acknowledged.append((key, seen))
            while shop.kills * ANSWERS < number * KILLS:  # spread the kills over the answers
                time.sleep(0.01)
        done.set()
        killer.join()
        kept = rows_kept(shop)
    finally:
        shop.kill()
    assert shop.kills > KILLS
    assert kept == acknowledged
    assert max(Counter(key for key, _ in kept).values()) == 1
