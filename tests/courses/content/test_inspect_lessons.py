"""The lessons on seeing: whole, in the words of the house, every point said, every figure worked again."""

import re
import tomllib
from math import atan, degrees, pi, radians, sin

import pytest

from courses.content.parts import Caution, Check, Drawing, Finder, Mistakes, Pictures, Worked
from tests.courses.content.reading import FIXTURES, LISTED, SOURCES, TEXTS, US, plain, told, whole_shelf, words

TAUGHT = ("L01", "L02", "L03", "L04", "L31")


@pytest.mark.parametrize(
    ("code", "questions", "shows"),
    [
        ("L01", 4, {Finder: 1, Pictures: 7, Drawing: 1}),
        ("L02", 4, {Finder: 1, Pictures: 2, Drawing: 1}),
        ("L03", 4, {Finder: 0, Pictures: 2, Drawing: 1}),
        ("L04", 4, {Finder: 1, Pictures: 3, Drawing: 0}),
        ("L31", 5, {Finder: 1, Pictures: 0, Drawing: 2}),
    ],
)
def test_each_has_all_its_parts(code, questions, shows):
    lesson = whole_shelf().lessons[code]
    assert len(lesson.checks) == questions
    for part in (Worked, Mistakes, Caution):
        assert sum(isinstance(one, part) for one in lesson.parts) == 1
    assert {kind: sum(isinstance(one, kind) for one in lesson.parts) for kind in shows} == shows
    assert 3 <= len(lesson.outcomes) <= 4
    assert set(lesson.sources) <= set(SOURCES)


@pytest.mark.parametrize("code", TAUGHT)
def test_the_words_are_those_of_the_house(code):
    text = plain(code)
    assert not re.search(r"!|\b(please|oops|well done|great|simply|very)\b", text, re.IGNORECASE)
    assert "'" not in text
    assert not re.search(r"\d\.\d\d+ (m|mm|µm|mil|in|ft)\b", text.replace("0.05 to 0.5 µm", "")), "one decimal at most"


@pytest.mark.parametrize("code", TAUGHT)
def test_sentences_are_short(code):
    blocks = re.findall(r"<(?:p|li)>(.*?)</(?:p|li)>", words(code), re.DOTALL)
    sentences = [sentence for block in blocks for sentence in re.split(r"(?<=[.:?])\s", re.sub(r"<[^>]+>", "", block))]
    assert max(len(sentence.split()) for sentence in sentences) <= 40
    assert sum(len(sentence.split()) for sentence in sentences) / len(sentences) <= 12


@pytest.mark.parametrize("code", TAUGHT)
def test_a_reader_of_inches_meets_no_length_to_lay_a_tape_to_in_millimetres(code):
    assert not re.search(r"\d (mm|cm|m)\b", plain(code, US))


def test_the_right_answer_does_not_always_stand_in_one_place():
    right = {code: {check.right.id for check in whole_shelf().lessons[code].checks} for code in TAUGHT}
    assert all(len(ids) >= 2 for ids in right.values()), right


def test_every_wrong_option_has_a_reason_of_its_own():
    for code in TAUGHT:
        for check in (part for part in whole_shelf().lessons[code].parts if isinstance(part, Check)):
            assert len({option.why for option in check.options}) == len(check.options)


def test_every_picture_of_the_list_is_shown_in_a_lesson_and_says_what_there_is_to_see():
    shown = [
        code
        for text in TEXTS.values()
        for found in re.findall(r"\{\{ picture (.*?) \}\}", text)
        for code in found.split()
    ]
    assert sorted(shown) == sorted(set(shown))
    assert set(LISTED) - set(shown) == set()
    for picture in LISTED.values():
        assert 8 <= len(picture.alt.split()) <= 60
        assert picture.alt.endswith(".")
        assert picture.caption.endswith(".")
        assert len({one.alt for one in LISTED.values()}) == len(LISTED)


def test_the_lamp_of_l03_stands_in_seven_places_over_swirls_hologram_haze_and_scratch():
    strips = [LISTED[code] for code in ("swirl_navy", "hologram_navy", "haze_navy", "scratch_navy")]
    assert {len(strip.lamps) for strip in strips} == {7}
    assert {strip.scene["colour"] for strip in strips} == {"navy"}


def test_dry_and_wet_are_one_panel_from_which_water_takes_the_veil():
    dry, wet = (LISTED[f"dull_blue_{state}"].scene for state in ("dry", "wet"))
    veil, *rest = dry["defects"]
    assert veil["kind"] == "oxidation"
    assert {**dry, "defects": rest} == wet


# A caption of the National Institute of Standards and Technology: 20 µm wide, 2 µm deep; taken as a V.
def test_the_test_scratch_of_l01_throws_light_some_twenty_degrees_aside():
    slope = degrees(atan(2.0 / (20.0 / 2)))
    assert (round(slope, 1), round(2 * slope, 1)) == (11.3, 22.6)
    text = plain("L01")
    assert "slope = arctan(2 / 10) = 11.3°" in text
    assert "light thrown aside = 2 × 11.3° = 22.6°" in text


# L03: the share of random scratches lit within 5°, and how far the directions of two fans agree: pure geometry.
def test_the_shares_of_l03_come_out():
    lit = 2 * 5 / 180
    assert (round(100 * lit, 1), round(1 / lit)) == (5.6, 18)
    assert sin(radians(10)) / (10 * pi / 180) == pytest.approx(0.995, abs=0.0005)
    text = plain("L03")
    for said in ("2 × 5 / 180 = 5.6 %", "one swirl in eighteen", "sin(10°) / (10 × π / 180) = 0.995"):
        assert said in text


def test_the_image_of_the_lamp_moves_by_half_for_eye_and_lamp_at_one_distance():
    # A mirror's image of a lamp at height h, seen from the same height, lies half way between the two feet.
    eye_mm, lamp_mm, moved_mm = 0.0, 400.0, 300.0
    assert (eye_mm + lamp_mm + moved_mm) / 2 - (eye_mm + lamp_mm) / 2 == 150.0
    assert {(300.0, "mm"), (150.0, "mm")} <= told("L03")
    assert "300 mm / 2 = 150 mm" in plain("L03")


def test_sanding_a_trail_takes_thirty_times_its_depth():
    # Our training model: P1000 takes 3.0 model µm a pass and finer grades less by the grain to the power of 1.25;
    # median grains 18.3 and 12.6 µm, a published table of P grades. The trail a rotary leaves: 0.25.
    set_um = 4 * 3.0 * (12.6 / 18.3) ** 1.25
    assert set_um == pytest.approx(7.5, abs=0.05)
    assert set_um / 0.25 == pytest.approx(30, abs=0.5)
    assert "a set of four passes takes 7.5 model µm, the trails are 0.25 deep" in plain("L03")


def test_what_must_stay_is_what_the_table_of_surfaces_says():
    surfaces = tomllib.loads((FIXTURES / "trade/surfaces.toml").read_text())
    reserves = {(surfaces[substrate]["reserve_um"], "um") for substrate in ("gel_coat", "clear_coat")}
    assert reserves == {(250.0, "um"), (30.0, "um")}
    assert reserves <= told("L04")


# Curriculum L01.1 to 10, L02.1 to 11, L03.1 to 11, L04.1 to 11, L31.1 to 12, in the words of the shipped text.
@pytest.mark.parametrize(
    ("code", "said"),
    [
        ("L01", "Wash the panel and dry it first. Dirt looks like every defect there is"),
        ("L01", "It shows colour: stains, chalking, ghosts of old lettering, high spots"),
        ("L01", "It shows fine marks: swirls, holograms, single scratches"),
        ("L01", "at under 20°. That figure is common practice"),
        ("L01", "It shows shape: sanding marks, blisters, runs, texture"),
        ("L01", "is 20 µm wide and only 2 µm deep"),
        ("L01", "From there it glints. From anywhere else it is gone"),
        ("L01", "No swirls seen on white proves nothing"),
        ("L01", "light paint hides them, and so does cloud"),
        ("L01", "Carry the order home, not the figures"),
        ("L01", "the edge comes back wavy. Raking light shows it too"),
        ("L01", "Our pictures don’t show it well enough to ask you about it"),
        ("L01", "move the lamp and stand still"),
        ("L01", "Write the lamp’s height, its distance and its side on every photograph"),
        ("L02", "Wash and dry. Diffuse light. Colour, stains, ghosts. Wet test. Damp a patch and look. Chalk cloth."),
        ("L02", "Abrasive test spot. Stop when you know"),
        ("L02", "oxidation, residue and fine marring vanish. Fading, stains and cracks stay"),
        ("L02", "White on a dark cloth, or the hull’s own colour, is chalk"),
        ("L02", "Water that stands in beads on a pale patch means wax"),
        ("L02", "until you have wiped"),
        ("L02", "marks return after a wipe, they are not made by it"),
        ("L02", "A mild acid takes lime, tannin and rust. It leaves etches and scratches"),
        ("L02", "that is from memory"),
        ("L02", "“acid does nothing” doesn’t mean “etched”"),
        ("L02", "Raking light decides"),
        ("L02", "Two pages of the trade disagree: one says it catches at about 1 µm"),
        ("L02", "“measure, and assume more than 4 µm”"),
        ("L02", "Firm is a cosmetic crack. Soft is a sign from the structure"),
        ("L02", "Damp that place and the open panel beside it. One shade now: it was oxidation"),
        ("L02", "A test that can’t change your plan isn’t worth its minute"),
        ("L02", "The abrasive spot alone takes some"),
        ("L02", "It never goes on clear plastic"),
        ("L03", "only where it runs round the lamp’s image"),
        ("L03", "everywhere round the lamp there are some that run the right way, and what you see is a closed ring"),
        ("L03", "The rings travel whole with the lamp’s image"),
        ("L03", "two opposite fans, or bands along the pad’s path"),
        ("L03", "The bands stay on their lines. One goes out, the next lights up"),
        ("L03", "So “it follows the lamp” settles nothing"),
        ("L03", "swirls come to 0.95 or more, holograms stay under 0.92"),
        ("L03", "the bands of the hologram come to more than 0.8"),
        ("L03", "Trails are 0.05 to 0.5 µm deep, swirls 0.2 to 2 µm. These figures are common practice"),
        ("L03", "The shallower one shouts louder"),
        ("L03", "The haze is an even fog. It doesn’t dance"),
        ("L03", "One photograph can’t settle it. Use two lamp places at least"),
        ("L03", "Wipe with solvent first"),
        ("L03", "one set takes 0.6 model µm"),
        ("L04", "Star: a blow from the inside"),
        ("L04", "a blow from the outside"),
        ("L04", "the laminate bends over something hard"),
        ("L04", "Soft is a stop, and it is urgent"),
        ("L04", "from a pinhead to 100 mm across"),
        ("L04", "a greasy fluid that smells of vinegar"),
        ("L04", "You never pierce, scrape or sand one"),
        ("L04", "the pad picks up colour from under an unpigmented clear"),
        ("L04", "colour on the pad is normal"),
        ("L04", "A wrinkled one is broken down to the base"),
        ("L04", "Fill it first: water is going in"),
        ("L04", "No polish makes the colour even. Tell the owner. Then one polish for gloss is fine"),
        ("L04", "Wait for full cure"),
        ("L04", "Gel coat under 250 µm, clear coat under 30 µm: that is a stop sign too"),
        ("L04", "97 gloss units at 60°, and with the verdict “harm”"),
        ("L04", "“Not treated.”"),
        ("L31", "A paper beats a test. That is common practice"),
        ("L31", "Gel coat is one colour all through, about half a millimetre of it"),
        ("L31", "Colour on the pad proves neither"),
        ("L31", "the rag finds one-pack, and no more"),
        ("L31", "Makers nearly always advise against wax"),
        ("L31", "in small wet patches and is rinsed off at once"),
        ("L31", "shows as blotches that no clear blends. No paper on it"),
        ("L31", "A washer stays 300 mm or more away, with a wide fan, and never points at an edge"),
        ("L31", "no rag test on anything you see through"),
        ("L31", "No acid, no strong alkali, no chlorine, no ammonia, no compound"),
        ("L31", "Teak: no acid"),
        ("L31", "Anodes, transducers, rubber, upholstery: nothing of ours"),
        ("L31", "Glass: no compound at the seals"),
        ("L31", "nothing that makes them slip"),
        ("L31", "Cell What it is Must not touch it Covered with"),
        ("L31", "“Not with this kit” is a finding. Put it in writing. It is not a failure"),
    ],
)
def test_every_point_of_the_curriculum_is_taught(code, said):
    assert said in plain(code)
