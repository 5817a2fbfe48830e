"""What every answer says to the browser, and what it says under HTTPS: read from the settings of a server."""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from django.test import Client
from django.urls import reverse

from courses.management.commands.quality import PRODUCTION
from tests.factories import PASSWORD, PersonFactory

pytestmark = pytest.mark.django_db
ROOT = Path(__file__).resolve().parents[2]
READ = (
    "import json; from django.conf import settings as s;"
    "wanted = ('SECURE_', 'SESSION_COOKIE_', 'CSRF_COOKIE_');"
    "print(json.dumps({n: getattr(s, n) for n in dir(s) if n.startswith(wanted)}))"
)


@pytest.fixture(scope="session")
def of_a_server(tmp_path_factory):
    """The settings of cookies and transport, as a server with HTTPS reads them."""
    env = {**os.environ, **PRODUCTION, "RAKING_VAR": str(tmp_path_factory.mktemp("var"))}
    env["DJANGO_SETTINGS_MODULE"] = "courses.server.settings"
    run = subprocess.run([sys.executable, "-c", READ], cwd=ROOT, env=env, capture_output=True, text=True, check=True)
    return json.loads(run.stdout)


@pytest.fixture
def https(of_a_server, settings, school):
    """A browser that speaks HTTPS to a site with those settings."""
    for name, value in of_a_server.items():
        setattr(settings, name, tuple(value) if isinstance(value, list) else value)
    return Client(headers={"X-Forwarded-Proto": "https"})


def policy(answer):
    """Return the content policy of an answer, directive to sources."""
    return {one.split()[0]: one.split()[1:] for one in answer["Content-Security-Policy"].split(";")}


def test_every_answer_forbids_what_no_page_of_ours_needs(client, school):
    for path in (reverse("account_login"), "/nowhere/", reverse("invitation-accept", args=["never-made"])):
        answer = client.get(path)
        assert policy(answer) == {
            "default-src": ["'self'"],
            "img-src": ["'self'", "data:"],
            "object-src": ["'none'"],
            "base-uri": ["'none'"],
            "frame-ancestors": ["'none'"],
            "form-action": ["'self'"],
        }
        assert answer["X-Content-Type-Options"] == "nosniff"
        assert answer["Referrer-Policy"] == "same-origin"
        assert answer["X-Frame-Options"] == "DENY"
        assert answer["Cross-Origin-Opener-Policy"] == "same-origin"


def test_a_server_holds_the_browser_to_https_for_a_year(https):
    answer = https.get(reverse("account_login"))
    assert answer["Strict-Transport-Security"] == "max-age=31536000; includeSubDomains; preload"


def test_a_server_sends_plain_http_away(https):
    answer = Client().get(reverse("account_login"))
    assert (answer.status_code, answer.url) == (301, "https://testserver" + reverse("account_login"))


def test_cookies_of_a_server_are_shut(https):
    person = PersonFactory()
    https.get(reverse("account_login"))
    answer = https.post(reverse("account_login"), {"login": person.email, "password": PASSWORD})
    session = answer.cookies["__Host-session"]
    assert (session["secure"], session["httponly"], session["samesite"], session["path"]) == (True, True, "Lax", "/")
    assert session["domain"] == ""
    csrf = https.cookies["__Host-csrf"]
    assert (csrf["secure"], csrf["httponly"], csrf["samesite"], csrf["path"]) == (True, True, "Lax", "/")
    assert "sessionid" not in https.cookies
