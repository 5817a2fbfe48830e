"""How well kinds show: read, asked between its steps, and measured again against what is shipped."""

import pytest

from courses.pictures import LIGHTS, RENDERER
from courses.pictures.contrast import COLOURS, STEPS, Contrast, Entry, Meter, read_contrast, written
from courses.shipped import contrast
from courses.trade.errors import ImpossibleChoice, OutOfRange, TableRefused
from tests.courses.pictures.trade import catalogue

SAMPLE = (
    ("swirl", "black", "point", 0.6),
    ("crack_star", "white", "diffuse", 0.6),
    ("blisters", "navy", "raking", 1.0),
    ("oxidation", "red", "diffuse", 0.3),
    ("orange_peel", "grey", "raking", 0.6),
)
TOLERANCE = 0.02
"""Share by which a number may be off when it is measured again: two versions of numpy differ in a few pixels."""
SMALL = """
[measured]
renderer = 1
size = [480, 320]
panel = 41
steps = [0.3, 0.6, 1.0]
[lightness]
white = 95.0
grey = 56.0
navy = 12.0
black = 4.0
cream = 90.0
[swirl.white]
point = { cnr = [0.5, 1.0, 1.5], rms_dl = [0.1, 0.2, 0.3] }
diffuse = { cnr = [0.0, 0.0, 0.0], rms_dl = [0.0, 0.0, 0.0] }
raking = { cnr = [1.0, 2.0, 3.0], rms_dl = [0.1, 0.2, 0.3] }
[swirl.black]
point = { cnr = [4.0, 8.0, 16.0], rms_dl = [1.0, 2.0, 4.0] }
diffuse = { cnr = [0.0, 0.0, 0.0], rms_dl = [0.0, 0.0, 0.0] }
raking = { cnr = [20.0, 30.0, 60.0], rms_dl = [3.0, 5.0, 9.0] }
"""


def small() -> Contrast:
    """Return a table of one kind."""
    return read_contrast(SMALL, "small.toml")


@pytest.mark.parametrize(
    ("severity", "entry"),
    [(0.6, Entry(8.0, 2.0)), (0.45, Entry(6.0, 1.5)), (0.15, Entry(2.0, 0.5)), (0.0, Entry(0, 0)), (1.0, Entry(16, 4))],
)
def test_between_two_steps_it_runs_straight(severity, entry):
    found = small().of("swirl", "black", "point", severity)
    assert (found.cnr, found.rms_dl) == (pytest.approx(entry.cnr), pytest.approx(entry.rms_dl))


@pytest.mark.parametrize(
    ("colour", "nearest"),
    [("white", "white"), ("cream", "white"), ("navy", "black"), ("#ffffff", "white"), ("#101010", "black")],
)
def test_a_colour_that_was_not_measured_stands_with_the_nearest_in_lightness(colour, nearest):
    assert small().measured_colour(colour) == nearest
    assert small().of("swirl", colour, "point", 0.6) == small().of("swirl", nearest, "point", 0.6)


@pytest.mark.parametrize(
    ("cnr", "rms_dl", "said"),
    [
        (5.0, 1.5, (True, False, False)),
        (4.9, 9.0, (False, False, False)),
        (9.0, 1.4, (False, False, False)),
        (41.0, 5.0, (True, True, False)),
        (1.9, 0.2, (False, False, True)),
    ],
)
def test_what_may_be_asked_what_is_easy_and_what_is_unseen(cnr, rms_dl, said):
    entry = Entry(cnr, rms_dl)
    assert (entry.askable, entry.easy, entry.unseen) == said


@pytest.mark.parametrize(
    ("asked", "error", "sentence"),
    [
        (("swril", "black", "point", 0.5), ImpossibleChoice, "did you mean swirl?"),
        (("swirl", "blak", "point", 0.5), ImpossibleChoice, "did you mean black?"),
        (("swirl", "#12345", "point", 0.5), ImpossibleChoice, "There is no colour '#12345'"),
        (("swirl", "#zzzzzz", "point", 0.5), ImpossibleChoice, "There is no colour '#zzzzzz'"),
        (("swirl", "black", "pont", 0.5), ImpossibleChoice, "did you mean point?"),
        (("swirl", "black", "point", 1.1), OutOfRange, "Severity runs from 0 to 1."),
        (("swirl", "black", "point", float("nan")), OutOfRange, "Severity runs from 0 to 1."),
    ],
)
def test_what_was_not_measured_is_refused_in_a_sentence(asked, error, sentence):
    with pytest.raises(error) as refusal:
        small().of(*asked)
    assert sentence in str(refusal.value)


@pytest.mark.parametrize(
    ("old", "new", "sentence"),
    [
        ("cnr = [0.5, 1.0, 1.5]", "cnr = [0.5, 1.0]", "cnr holds 2 numbers; write 3."),
        ("[swirl.black]", "[swirl.blck]", "blck has no lightness; did you mean black?"),
        ("white = 95.0", 'white = "pale"', "white is 'pale'; write a number"),
        ("renderer = 1", "rendrer = 1", "There is no field 'rendrer'"),
        ("raking = { cnr = [1.0", "rakig = { cnr = [1.0", "There is no field 'rakig'"),
        ("[measured]", "[measured", "This is not TOML"),
    ],
)
def test_a_broken_table_is_refused_with_its_place(old, new, sentence):
    with pytest.raises(TableRefused) as refusal:
        read_contrast(SMALL.replace(old, new, 1), "small.toml")
    assert "small.toml" in str(refusal.value)
    assert sentence in str(refusal.value)


def test_what_is_written_reads_back():
    table = small()
    again = read_contrast(written(table), "again.toml")
    assert (again.renderer, again.steps, dict(again.lightness)) == (1, table.steps, dict(table.lightness))
    assert dict(again.entries) == dict(table.entries)


def test_the_shipped_table_holds_every_kind_by_this_renderer():
    table = contrast()
    assert (table.renderer, table.steps, table.colours) == (RENDERER, STEPS, COLOURS)
    assert set(table.kinds) == set(catalogue().kinds)
    assert len(table.entries) == len(table.kinds) * len(COLOURS) * len(LIGHTS)


def test_a_sample_measured_again_comes_out_as_shipped():
    meter, table = Meter(catalogue()), contrast()
    for kind, colour, light, severity in SAMPLE:
        again, kept = meter.entry(kind, colour, light, severity), table.of(kind, colour, light, severity)
        assert again.cnr == pytest.approx(kept.cnr, rel=TOLERANCE, abs=0.02), (kind, colour, light)
        assert again.rms_dl == pytest.approx(kept.rms_dl, rel=TOLERANCE, abs=0.02), (kind, colour, light)


@pytest.mark.parametrize(
    ("kind", "light"), [("swirl", "point"), ("hologram", "point"), ("haze", "point"), ("orange_peel", "diffuse")]
)
def test_fine_marks_show_on_black_and_not_on_white(kind, light):
    """Swirls hardly show on light paint, orange peel shows more on dark colours (Konieczny and Meyer 2012)."""
    black, white = (contrast().of(kind, colour, light, 0.6) for colour in ("black", "white"))
    assert black.askable
    assert not white.askable
    assert black.cnr > 2 * white.cnr


@pytest.mark.parametrize("kind", ["crack_star", "crack_ring", "crack_parallel"])
def test_cracks_are_asked_for_on_white_in_soft_light(kind):
    white, black = (contrast().of(kind, colour, "diffuse", 0.6) for colour in ("white", "black"))
    assert white.askable
    assert white.cnr > 2 * black.cnr
