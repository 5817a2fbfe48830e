"""The one stylesheet: small, no colour outside its tokens, both dark blocks alike, no selector that nothing wears."""

import re
from pathlib import Path
from typing import get_args

from courses.figures.drawing import Anchor, Ink, Look
from courses.templatetags.words import OUTCOME_MARKS, OUTCOMES, STANDINGS, VERDICTS

ROOT = Path(__file__).resolve().parents[3]
SHEET = ROOT / "courses/static/courses/site.css"
CSS = re.sub(r"/\*.*?\*/", "", SHEET.read_text(encoding="utf-8"), flags=re.DOTALL)
CEILING = 34_000

FROM_THE_PACK = {"form-control", "form-select", "form-label", "form-text", "form-check", "form-check-input"}
FROM_THE_PACK |= {"form-check-label", "form-check-inline", "input-group", "input-group-text", "invalid-feedback"}
FROM_THE_PACK |= {"is-invalid", "asteriskField", "mb-3", "m-0", "row", "alert", "alert-danger", "alert-heading"}
FROM_LESSONS = {"table", "n", "mid", "eq", "steps", "scroll"}
FROM_HTMX = {"htmx-indicator", "htmx-request"}
FROM_NOTCHES = {"on", "now", "old"}
FROM_FIGURES = {name for look in (*get_args(Look), *get_args(Ink), *get_args(Anchor)) for name in look.split()}
COLOUR = re.compile(r"#[0-9a-fA-F]{3,8}\b|\b(?:rgb|rgba|hsl|hsla|oklch|color-mix)\(")
CLASS_ATTRIBUTE = re.compile(r'class="((?:\{%.*?%\}|\{\{.*?\}\}|[^"])*)"')


def rules(css: str) -> list[tuple[str, str]]:
    """Selector and declarations of every innermost block."""
    return [(found[1].strip(), found[2]) for found in re.finditer(r"([^{}]+)\{([^{}]*)\}", css)]


def classes_worn() -> set[str]:
    """Every class that a template, a tag or a script of ours can write."""
    sources = [*ROOT.glob("*/templates/**/*.html"), *ROOT.glob("*/templatetags/*.py"), *ROOT.glob("*/forms/*.py")]
    text = "\n".join(path.read_text(encoding="utf-8") for path in sources)
    written = " ".join(re.sub(r"\{[{%].*?[%}]\}", " ", found) for found in CLASS_ATTRIBUTE.findall(text))
    looks = [*STANDINGS.values(), *VERDICTS.values()]
    worn = set(written.split()) | {look.style for look in looks} | set(OUTCOME_MARKS.values())
    return worn | {f"v-{look.style}" for look in OUTCOMES.values()}


def token_blocks() -> list[tuple[str, str]]:
    return [(selector, body) for selector, body in rules(CSS) if selector.startswith(":root") and "--" in body]


def dark_blocks() -> list[str]:
    return [body.strip() for selector, body in token_blocks() if "color-scheme:dark" in body and "--paper" in body]


def test_the_stylesheet_stays_under_its_ceiling():
    assert SHEET.stat().st_size <= CEILING


def test_the_two_dark_blocks_say_the_same():
    by_device, by_choice = dark_blocks()
    assert by_device == by_choice


def test_no_colour_stands_outside_the_token_blocks():
    outside = [(selector, body) for selector, body in rules(CSS) if (selector, body) not in token_blocks()]
    assert [selector for selector, body in outside if COLOUR.search(body)] == []


def test_every_token_used_is_defined_and_every_token_defined_is_used():
    used, defined = set(re.findall(r"var\((--[\w-]+)", CSS)), set(re.findall(r"(--[\w-]+):", CSS))
    icons = (SHEET.parent / "icons.svg").read_text(encoding="utf-8")
    assert used - defined == set()
    assert {name for name in defined - used if name not in icons} == set()


def test_no_selector_names_a_class_that_nothing_wears():
    living = classes_worn() | FROM_THE_PACK | FROM_LESSONS | FROM_HTMX | FROM_NOTCHES | FROM_FIGURES
    named = {name for selector, _ in rules(CSS) for name in re.findall(r"\.(-?[A-Za-z_][\w-]*)", selector)}
    assert sorted(named - living) == []


def test_every_class_that_a_template_writes_is_known_to_the_stylesheet():
    silent = {"ask", "v-", "{}"}  # a name for the script, and the places of words that are filled in
    named = set(re.findall(r"\.(-?[A-Za-z_][\w-]*)", CSS))
    assert sorted((classes_worn() | FROM_FIGURES - {"start"}) - named - silent - {""}) == []
