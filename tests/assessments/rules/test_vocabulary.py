"""What the words mean. The binary fractions are those of IEEE 754 binary64, as CPython computes them."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assessments.rules import vocabulary as words


@pytest.mark.parametrize(
    ("a", "b", "tolerance", "wanted"),
    [
        (1.1, 1.0, 0.1, True),
        (0.9, 1.0, 0.1, True),
        (0.3, 0.1 + 0.2, 0.0, True),
        (9.4, 8.9, 0.5, True),
        (9.41, 8.9, 0.5, False),
        (1e12, 1e12 + 900, 0.0, True),
        (1e12, 1e12 + 1100, 0.0, False),
        (3, 3, 0, True),
    ],
)
def test_near_includes_its_limit(a, b, tolerance, wanted):
    assert words.near(a, b, tolerance) is wanted


@settings(deadline=None)
@given(st.integers(-10_000, 10_000), st.integers(0, 1_000))
def test_near_holds_at_every_limit_written_in_tenths(tenths, width):
    assert words.near((tenths + width) / 10, tenths / 10, width / 10)
    assert not words.near((tenths + width + 1) / 10, tenths / 10, width / 10)


@settings(deadline=None)
@given(st.floats(-1e12, 1e12), st.floats(-1e12, 1e12), st.floats(0, 1e12))
def test_near_is_symmetric(a, b, tolerance):
    assert words.near(a, b, tolerance) is words.near(b, a, tolerance)


@pytest.mark.parametrize(
    ("a", "b", "wanted"), [(95.0, 100.0, True), (94.9, 100.0, False), (-95.0, -100.0, True), (0.0, 0.0, True)]
)
def test_near_rel_is_per_cent_of_the_second(a, b, wanted):
    assert words.near_rel(a, b, 5) is wanted


def acts(*ops):
    return [{"op": op} for op in ops]


def test_an_act_that_is_not_known_leaves_the_order_unknown():
    assert words.before(acts("wash", None), "wash", "sand") is None
    assert words.starts_before(acts(None), "wash", "sand") is None
    assert words.after_each(acts(None), "wash", "sand") is None


def test_an_order_needs_both_acts():
    assert words.before(acts("wash"), "wash", "sand") is False
    assert words.starts_before(acts("sand"), "wash", "sand") is False
    assert words.before([], "wash", "sand") is False


def test_the_last_act_is_followed_by_nothing():
    assert words.after_each(acts("sand", "wipe", "sand"), "sand", "wipe") is False
    assert words.after_each([], "sand", "wipe") is True


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("  It\tSTAYS\n so ", "it stays so"),
        ("Ｆｕｌｌ", "full"),
        ("STRASSE", "strasse"),
        ("Straße", "strasse"),
        ("", ""),
    ],
)
def test_norm_gives_one_form(text, wanted):
    assert words.norm(text) == wanted


@settings(deadline=None)
@given(st.text())
def test_norm_of_norm_is_norm(text):
    assert words.norm(words.norm(text)) == words.norm(text)


@pytest.mark.parametrize(
    ("text", "looked_for", "wanted"),
    [
        ("One scratch STAYS.", ["stays"], True),
        ("one scratch stayed", ["stay"], False),
        ("it is left-over", ["left"], True),
        ("not to be touched", ["be touched"], True),
        ("not to be, touched", ["be touched"], True),
        ("nothing", [""], False),
        ("nothing", ["!"], False),
    ],
)
def test_mentions_looks_for_whole_words(text, looked_for, wanted):
    assert words.mentions(text, looked_for) is wanted


def test_overlap_counts_the_items_of_the_first():
    assert words.overlap(["a", "b", "c"], ["c", "a"]) == 2
    assert words.overlap([], ["a"]) == 0
