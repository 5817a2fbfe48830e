"""Each measure sees the fault it is there for: planted on a page that has none."""

import pytest

from tests.browser.looking import amber, axe_faults, inline, low, wide

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]


@pytest.fixture
def page(open_page):
    page = open_page(360, 740)
    page.goto("/account/login/")
    return page


def plant(page, html: str, where: str = "main .wrap") -> None:
    """Put a piece of page where a fault would stand."""
    page.evaluate(
        "([where, html]) => document.querySelector(where).insertAdjacentHTML('beforeend', html)", [where, html]
    )


def style(page, selector: str, **styles: str) -> None:
    """Change the look of one part, as a rule of the stylesheet could."""
    page.evaluate(
        "([selector, styles]) => Object.assign(document.querySelector(selector).style, styles)", [selector, styles]
    )


def test_a_page_as_it_stands_has_no_fault_and_one_amber_fill(page):
    assert (wide(page), low(page), inline(page), axe_faults(page)) == ([], [], [], [])
    assert len(amber(page)) == 1


def test_what_is_too_wide_is_named(page):
    plant(page, "<p id='broad'>x</p>")
    style(page, "#broad", width="420px")
    assert [one for one in wide(page) if "broad" in one]


@pytest.mark.parametrize(
    "html",
    [
        "<p><a href='/'>Alone in its line</a></p>",
        "<button>Low</button>",
        "<input aria-label='Low'>",
        "<label>Low <input type='checkbox'></label>",
    ],
)
def test_a_control_too_low_for_a_finger_is_named(page, html):
    plant(page, html)
    assert len(low(page)) == 1


def test_a_link_in_running_text_may_be_as_low_as_the_text(page):
    plant(page, "<p>Read <a href='/'>the lesson</a> first.</p>")
    assert low(page) == []


def test_every_amber_fill_counts(page):
    plant(page, "<p><a class='btn btn-primary' href='/'>A second act</a></p>")
    plant(page, "<div class='nt'><i class='now'></i></div>")
    assert len(amber(page)) == 3


@pytest.mark.parametrize(
    "html", ["<p style='color:red'>x</p>", "<style></style>", "<a href='javascript:x'>x</a>", "<p onclick='x'>"]
)
def test_what_stands_inline_is_named(screens, page, html):
    screens.allow("Content Security Policy")
    plant(page, html)
    assert len(inline(page)) == 1


@pytest.mark.parametrize(
    ("html", "rule"),
    [
        ("<img src='/static/courses/favicon.svg'>", "image-alt"),
        ("<h5>Too deep</h5>", "heading-order"),
        ("<input type='text'>", "label"),
        ("<ul><p>x</p></ul>", "list"),
    ],
)
def test_axe_names_rule_and_place(page, html, rule):
    plant(page, html)
    assert [one for one in axe_faults(page) if one.startswith(f"{rule} at ")]


@pytest.mark.parametrize("lit", [False, True])
def test_axe_names_pale_letters_in_every_lighting(page, lit):
    plant(page, "<p id='pale'>Pale</p>")
    style(page, "#pale", color="#ccc")
    assert [one for one in axe_faults(page, lit=lit) if one.startswith("color-contrast at #pale: ")]


def test_a_page_remembers_what_went_wrong_in_it(screens, page):
    page.evaluate("console.error('planted'); setTimeout(() => { throw new Error('thrown'); })")
    page.wait_for_timeout(300)
    page.goto(screens.site.replace("localhost", "127.0.0.1") + "/account/login/")
    page.goto("/nowhere/")
    said = "\n".join(screens.faults())
    for words in ("console error: planted", "script: thrown", "another host: http://127.0.0.1", "status of 404"):
        assert words in said
    screens.allow("planted", "thrown", "another host", "status of 404")
