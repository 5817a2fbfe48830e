import re
from html.parser import HTMLParser

import pytest
from hypothesis import given
from hypothesis import strategies as st

from courses.content.errors import FileRefused
from courses.content.markup import TABLE_TAGS, TAGS, Numbering, Place, render_block, render_line
from courses.content.prose import Quantity, render_text

PLACE = Place("L24.md", 10)


def html(text: str, **known: object) -> str:
    prose = render_block(text, PLACE, Numbering(("iso-8502-4", "practice")), **known)
    return render_text(prose, lambda value, unit, decimals: f"{value:.{decimals}f} {unit}")


# The fourteen inputs that the cleaner was tried with when it was chosen: script, script links in three schemes and
# with a split entity, breaking out of an attribute, handlers, mutation, frames, styles, fence information.
ATTACKS = [
    "<script>alert(1)</script>",
    "[a](javascript:alert(1))",
    "[a](vbscript:msgbox(1))",
    "[a](data:text/html;base64,PHNjcmlwdD5hbGVydCgxKTwvc2NyaXB0Pg==)",
    "[a](java&#115;cript:alert(1))",
    '[a](https://x.example/" onerror="alert(1))',
    '<img src="x" onerror="alert(1)">',
    '<svg onload="alert(1)"><circle r="9"/></svg>',
    "<math><mtext><table><mglyph><style><img src=x onerror=alert(1)></style></mglyph></table></mtext></math>",
    '<style>@import "https://x.example/a.css";</style>',
    '<iframe src="https://x.example/"></iframe>',
    '<p style="background:url(javascript:alert(1))">a</p>',
    '<details open ontoggle="alert(1)">a</details>',
    '```x" onmouseover="alert(1)\na\n```',
]


class Live(HTMLParser):
    """Collects every tag and attribute a browser would see."""

    def __init__(self) -> None:
        super().__init__()
        self.tags: set[str] = set()
        self.attributes: set[tuple[str, str]] = set()

    def handle_starttag(self, tag, attrs):
        self.tags.add(tag)
        self.attributes.update((name, value or "") for name, value in attrs)


def seen(text: str) -> Live:
    live = Live()
    live.feed(text)
    return live


HARMLESS_TAGS = (TAGS | TABLE_TAGS) - {"data"}
assert not {"script", "style", "iframe", "img", "svg", "math", "form", "input", "object"} & HARMLESS_TAGS
HARMLESS_NAMES = {"href", "title", "aria-label", "start", "class"}


@pytest.mark.parametrize("attack", ATTACKS)
def test_nothing_live_passes(attack):
    try:
        live = seen(html(attack))
    except FileRefused:
        return
    assert live.tags <= HARMLESS_TAGS
    assert {name for name, _ in live.attributes} <= HARMLESS_NAMES
    assert not any(re.match(r"\s*(javascript|vbscript|data):", value, re.IGNORECASE) for _, value in live.attributes)


@given(st.text(alphabet=st.sampled_from(list("<>\"'=/ abonerrscipt:()[]{}$^!`#&;\n")), max_size=80))
def test_whatever_is_written_comes_out_inert_or_is_refused(text):
    try:
        live = seen(html(text))
    except FileRefused:
        return
    assert live.tags <= HARMLESS_TAGS
    assert {name for name, _ in live.attributes} <= HARMLESS_NAMES


def test_written_markup_is_shown_as_text():
    assert html("<b>bold</b>") == "<p>&lt;b&gt;bold&lt;/b&gt;</p>"


def test_a_placeholder_can_t_be_forged():
    assert html('<data value="0">0</data> {3.0 K}') == '<p>&lt;data value="0"&gt;0&lt;/data&gt; 3.0 K</p>'


def test_quantities_stay_numbers_until_a_reader_is_known():
    prose = render_line("from {2.2 K} to {−5 degc}", PLACE, Numbering(()))
    assert prose.pieces == ("from ", Quantity(2.2, "K", 1), " to ", Quantity(-5.0, "degc", 0))


def test_a_quantity_may_stand_in_a_table_in_bold_and_in_an_equation():
    assert html("**{3.0 K}**") == "<p><strong>3.0 K</strong></p>"
    assert html("${13.0 degc} − {11.3 degc} = {1.7 K}$") == (
        '<p><span class="eq">13.0 degc − 11.3 degc = 1.7 K</span></p>'
    )
    assert "<td>3.0 K</td>" in html("| a |\n|---|\n| {3.0 K} |")


def test_sources_are_numbered_in_the_order_of_first_use():
    numbering = Numbering(("a", "b"))
    first = render_line("one[^b] two[^a] three[^b]", PLACE, numbering)
    assert re.findall(r"#s(\d)", first.pieces[0]) == ["1", "2", "1"]
    assert numbering.keys == ["b", "a"]


def test_two_marks_in_a_row_do_not_read_as_one_number():
    assert re.sub(r"<[^>]+>", "", html("x[^practice][^iso-8502-4]")) == "x1&nbsp;2"


def test_a_source_mark_is_a_link_that_says_what_it_is():
    assert html("x[^practice]") == '<p>x<sup><a href="#s1" aria-label="Source 1">1</a></sup></p>'


def test_numbers_are_glued_to_their_units_and_words_to_their_numbers():
    assert html("85 % and 6 g/kg in 4 h, step 3, April 14") == (
        "<p>85&nbsp;% and 6&nbsp;g/kg in 4&nbsp;h, step&nbsp;3, April&nbsp;14</p>"
    )
    assert html("4 hulls of 12 men") == "<p>4 hulls of 12 men</p>"


def test_table_alignment_is_a_class_and_no_style():
    out = html("| a | b | c |\n|:--|--:|:-:|\n| 1 | 2 | 3 |")
    assert out.startswith('<table class="table">')
    assert '<td>1</td>\n<td class="n">2</td>\n<td class="mid">3</td>' in out
    assert "style" not in out


def test_numbered_lists_of_a_worked_example_are_steps():
    assert html("1. a", steps=True) == '<ol class="steps">\n<li>a</li>\n</ol>'
    assert html("1. a") == "<ol>\n<li>a</li>\n</ol>"


def test_links_go_to_https_mail_and_this_site():
    assert html("[a](https://example.org/x)") == '<p><a href="https://example.org/x">a</a></p>'
    assert html("[a](/calculators/)") == '<p><a href="/calculators/">a</a></p>'


def test_quantities_and_equations_may_stand_in_the_words_of_a_link():
    assert html("[{3.0 K} over, $a + b$, {2 h}](/x/)") == (
        '<p><a href="/x/">3.0 K over, <span class="eq">a + b</span>, 2 h</a></p>'
    )


@pytest.mark.parametrize(
    ("text", "line", "words"),
    [
        ("fine\n\n![a](https://x.example/a.png)", 12, "nothing from another host"),
        ("# Title", 10, "begin headings with ##"),
        ("one\ntwo[^isso-8502-4]", 11, "no source 'isso-8502-4'; did you mean iso-8502-4?"),
        ("one\n\n- a\n- b {3.0 Kelvin}", 13, "names no base unit"),
        ("one {three}", 10, "is not a quantity"),
        ("at 3.0 °C", 10, "would not follow the reader's units"),
        ("at 54 °F", 10, "would not follow the reader's units"),
        ("by 3 K", 10, "would not follow the reader's units"),
        ("[a](//x.example/)", 10, "is not a link to https"),
        ("[a](ftp://x.example/)", 10, "is not a link to https"),
        ("[a](data:image/png;base64,AAAA)", 10, "is not a link to https"),
    ],
)
def test_what_may_not_stand_in_a_lesson_is_refused_at_its_line(text, line, words):
    with pytest.raises(FileRefused, match=re.escape(words)) as error:
        html(text)
    assert (error.value.file, error.value.line, error.value.key) == ("L24.md", line, "text")


@pytest.mark.parametrize("text", ["5 $ a hull", "$$", "an { open brace", "[^ not a mark]"])
def test_signs_that_begin_nothing_are_kept(text):
    assert html(text) == f"<p>{text}</p>"
