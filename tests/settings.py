"""Settings of the tests: the site's own, with quick passwords, plain static files and a database of its own."""

import os
import tempfile
from pathlib import Path

ROOM = Path(tempfile.mkdtemp(prefix="raking-light-"))
os.environ.setdefault("RAKING_SECRET_KEY", "only-for-tests-0123456789-0123456789-0123456789")
os.environ["RAKING_VAR"] = str(ROOM)
os.environ.setdefault("DJANGO_ALLOW_ASYNC_UNSAFE", "true")  # the browser driver runs a loop in the same thread

from courses.server.settings import *  # noqa: E402, F403
from courses.server.settings import DATABASES, INSTALLED_APPS, MIDDLEWARE, STORAGES  # noqa: E402

PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]
STORAGES = {**STORAGES, "staticfiles": {"BACKEND": "django.contrib.staticfiles.storage.StaticFilesStorage"}}
ALLOWED_HOSTS = ["*"]
INSTALLED_APPS = [*INSTALLED_APPS, "zeal"]
MIDDLEWARE = ["zeal.middleware.zeal_middleware", *MIDDLEWARE]
(ROOM / "static").mkdir()
ZEAL_RAISE = True
# The libraries read a passkey twice to remove it, and a session twice to end it.
ZEAL_ALLOWLIST = [{"model": "mfa.Authenticator"}, {"model": "sessions.Session"}]

database = DATABASES["default"]
if database["ENGINE"].endswith("sqlite3"):
    # A file, so that threads meet each other's locks as they do in the shop; nothing here outlives a power cut.
    database["TEST"] = {"NAME": ROOM / "tests.sqlite3"}
    database["OPTIONS"]["init_command"] = "PRAGMA journal_mode=WAL;PRAGMA synchronous=OFF;PRAGMA temp_store=MEMORY"
    database["CONN_MAX_AGE"] = 0
else:
    database["OPTIONS"].pop("pool")
