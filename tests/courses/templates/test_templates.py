"""Templates: short, nothing inline that the page's policy forbids, only symbols and includes that exist."""

import re
from pathlib import Path

import pytest
from django.template.loader import get_template

ROOT = Path(__file__).resolve().parents[3]
TEMPLATES = sorted(path for path in ROOT.glob("*/templates/**/*.html") if "tests" not in path.parts)
TEXTS = {path.relative_to(ROOT).as_posix(): path.read_text(encoding="utf-8") for path in TEMPLATES}
ICONS = (ROOT / "courses/static/courses/icons.svg").read_text(encoding="utf-8")
PYTHON = "\n".join(path.read_text(encoding="utf-8") for path in ROOT.glob("*/templatetags/*.py"))
LONGEST = 120
WAITING = {"none", "part", "ready", "signed", "due", "lapsed", "key"}
"""Symbols of standings, and of the passkey: drawn for the sheet of parts."""


def where(pattern: str) -> list[str]:
    return [name for name, text in TEXTS.items() if re.search(pattern, text)]


def test_templates_are_short():
    lengths = sorted(text.count("\n") for text in TEXTS.values())
    assert lengths[int(0.95 * (len(lengths) - 1))] <= LONGEST


def test_nothing_stands_inline_that_the_policy_of_the_page_forbids():
    assert where(r"\sstyle=") == []
    assert where(r"<style\b") == []
    assert where(r"<script\b(?![^>]*\bsrc=)") == []
    assert where(r"\son[a-z]+=") == []


def test_nothing_comes_from_another_host():
    assert where(r"(?:src|href|action)=\"(?:https?:)?//") == []


def test_no_text_says_please_or_shouts():
    assert where(r"(?i)\bplease\b") == []
    assert where(r"[A-Za-z]!(?=[\s\"<])") == []


def test_every_symbol_asked_for_exists():
    asked = {name for text in TEXTS.values() for name in re.findall(r'{% icon "([\w-]+)"', text)}
    asked |= set(re.findall(r'Look\("([\w-]+)"', PYTHON))
    drawn = set(re.findall(r'<symbol id="([\w-]+)"', ICONS))
    assert asked - drawn == set()
    assert drawn - asked - WAITING == set()


@pytest.mark.parametrize("name", sorted(path.split("/templates/")[1] for path in TEXTS))
def test_every_template_compiles(name):
    assert get_template(name)


def test_a_post_form_of_ours_carries_its_token():
    forms = [(name, form) for name, text in TEXTS.items() for form in re.findall(r"<form\b.*?</form>", text, re.DOTALL)]
    bare = [name for name, form in forms if re.search(r'method="post"', form) and "csrf_token" not in form]
    assert bare == []
