"""Typed readers of environment variables. A bad value stops the start with its name and the values allowed."""

import os
import secrets
from collections.abc import Mapping, Sequence
from ipaddress import ip_address
from pathlib import Path
from urllib.parse import parse_qs, unquote, urlsplit

from django.core.exceptions import ImproperlyConfigured

YES, NO = ("1", "yes", "true", "on"), ("0", "no", "false", "off")
KEYLESS = (
    "check",
    "classify",
    "compilemessages",
    "contact_sheet",
    "day",
    "demo",
    "draw",
    "help",
    "log_head",
    "makemessages",
    "makemigrations",
    "mark",
    "measure_pictures",
    "new_key",
    "picture",
    "prove",
    "quality",
    "setup",
    "simulate",
    "sum",
    "try_rule",
    "verify_log",
)
"""Commands that run before `setup` has made a key: the doors, which sign nothing, and the chores that come first."""


def yes(name: str, default: bool) -> bool:
    """Return the truth of `name`; refuses anything that is neither a yes nor a no."""
    text = os.environ.get(name, "").strip().lower()
    if not text:
        return default
    if text in YES:
        return True
    if text in NO:
        return False
    raise ImproperlyConfigured(f"{name}={text!r} is neither yes nor no. Use one of {', '.join(YES + NO)}.")


def word(name: str, default: str = "") -> str:
    """Return the text of `name`, trimmed."""
    return os.environ.get(name, "").strip() or default


def words(name: str, default: Sequence[str] = ()) -> list[str]:
    """Return the comma-separated words of `name`."""
    text = os.environ.get(name, "")
    return [one.strip() for one in text.split(",") if one.strip()] or list(default)


def number(name: str, default: int, low: int, high: int) -> int:
    """Return the whole number in `name`, within [low, high]."""
    text = os.environ.get(name, "").strip()
    if not text:
        return default
    if not text.isascii() or not text.isdigit() or not low <= int(text) <= high:
        raise ImproperlyConfigured(f"{name}={text!r} is not a whole number from {low} to {high}.")
    return int(text)


def folder(name: str, default: Path) -> Path:
    """Return the folder named by `name`, absolute; refuses a file that stands in its place."""
    path = Path(os.environ.get(name, "") or default).expanduser().resolve()
    if path.exists() and not path.is_dir():
        raise ImproperlyConfigured(f"{name}={str(path)!r} is a file. Name a folder; it is made if it is missing.")
    return path


def has_name(url: str) -> bool:
    """Say whether browsers bind a passkey to the host of `url`: a name under HTTPS, or localhost; never a number."""
    parts = urlsplit(url)
    host = parts.hostname or ""
    if host == "localhost":
        return True
    try:
        ip_address(host)
    except ValueError:
        return parts.scheme == "https" and bool(host)
    return False


def secret_key(var: Path, *, debug: bool, argv: Sequence[str]) -> str:
    """Return the signing key: RAKING_SECRET_KEY, else var/secret.key, else a throw-away one where that does no harm."""
    given = os.environ.get("RAKING_SECRET_KEY", "")
    if given and len(given) < 32:
        raise ImproperlyConfigured(f"RAKING_SECRET_KEY has {len(given)} characters. Use 32 or more.")
    kept = var / "secret.key"
    if given or kept.is_file():
        return given or kept.read_text(encoding="ascii").strip()
    if debug or (len(argv) > 1 and argv[1] in KEYLESS) or len(argv) == 1:
        return secrets.token_urlsafe(48)
    raise ImproperlyConfigured(
        f"There is no secret key: RAKING_SECRET_KEY is not set and {kept.name} is not in the folder RAKING_VAR. "
        "Run 'python manage.py setup' once, or set RAKING_SECRET_KEY to 32 or more random characters."
    )


def url_parts(name: str, schemes: Mapping[str, int], example: str) -> dict[str, str]:
    """Return the parts of the address in `name`: scheme, user, password, host, port, path and its options."""
    text = os.environ.get(name, "").strip()
    parts = urlsplit(text)
    try:
        port = parts.port or schemes.get(parts.scheme, 0)
    except ValueError:
        port = 0
    if parts.scheme not in schemes or not port:
        raise ImproperlyConfigured(
            f"{name} starts with {parts.scheme or 'nothing'!r}. Use {' or '.join(schemes)}, for example {example}."
        )
    options = {key: values[-1] for key, values in parse_qs(parts.query).items()}
    return {
        "scheme": parts.scheme,
        "user": unquote(parts.username or ""),
        "password": unquote(parts.password or ""),
        "host": options.pop("host", "") or parts.hostname or "",
        "port": str(port),
        "path": unquote(parts.path.lstrip("/")),
        **options,
    }
