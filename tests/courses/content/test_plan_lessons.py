"""The lessons on planning: whole, in the words of the house, every point said."""

import re
from itertools import pairwise

import pytest

from courses.content.parts import Caution, Drawing, Finder, Mistakes, Pictures, Worked
from tests.courses.content.reading import SOURCES, US, plain, whole_shelf, words

TAUGHT = ("L10", "L11", "L12", "L13")


@pytest.mark.parametrize(
    ("code", "right", "finders", "pictures", "drawings"),
    [
        ("L10", "bacb", ["after_the_spot"], ["spot_diffuse spot_point spot_raking", "spot_oily spot_wiped"], []),
        ("L11", "acbab", [], [], ["film_bars"]),
        ("L12", "bbab", ["grade_scales"], ["strays_navy", "lines_one_way lines_crossed"], ["valley", "grit_ladder"]),
        ("L13", "babc", [], [], ["side_exclusions", "film_steps"]),
    ],
)
def test_each_has_all_its_parts(code, right, finders, pictures, drawings):
    lesson = whole_shelf().lessons[code]
    of = {kind: [part for part in lesson.parts if isinstance(part, kind)] for kind in (Finder, Pictures, Drawing)}
    assert [part.table for part in of[Finder]] == finders
    assert [" ".join(part.codes) for part in of[Pictures]] == pictures
    assert [part.code for part in of[Drawing]] == drawings
    assert [sum(isinstance(part, one) for part in lesson.parts) for one in (Worked, Mistakes, Caution)] == [1, 1, 1]
    assert "".join(check.right.id for check in lesson.checks) == right
    assert all(len({option.why for option in check.options}) == len(check.options) for check in lesson.checks)
    assert set(lesson.sources) <= set(SOURCES)


@pytest.mark.parametrize("code", TAUGHT)
def test_the_words_are_short_and_those_of_the_house(code):
    assert not re.search(r"!|'|\b(please|oops|well done|great|simply|very)\b", plain(code), re.IGNORECASE)
    blocks = re.findall(r"<(?:p|li)>(.*?)</(?:p|li)>", words(code), re.DOTALL)
    ends = [re.sub(r"<[^>]+>", "", block) for block in blocks]
    lengths = [len(one.split()) for block in ends for one in re.split(r"(?<=[.:?])\s", block)]
    assert max(lengths) <= 40
    assert sum(lengths) / len(lengths) <= 12


@pytest.mark.parametrize("code", TAUGHT)
def test_a_micrometre_of_cut_is_called_one_of_the_model(code):
    spoken = re.sub(r"median[^.]*µm|P600 has a grain of 25.8 µm|600 is 16 µm", "", plain(code, US), flags=re.IGNORECASE)
    assert all(before.endswith("model ") for before, _ in pairwise(spoken.split("µm"))), spoken


# Curriculum L10.1 to 10, L11.1 to 12, L12.1 to 11, L13.1 to 11, in the words of the shipped text.
@pytest.mark.parametrize(
    ("code", "said"),
    [
        ("L10", "Begin with the mildest step that could work. If it falls short, you know more"),
        ("L10", "what you overshot is film. It doesn’t grow back"),
        ("L10", "Choose a typical place: as dull as most of the side"),
        ("L10", "a square of 300 mm each way"),
        ("L10", "Never on a stop sign. A test spot is abrasion too"),
        ("L10", "Wipe with solvent. Oils of the polish fill fine marks. Take the tape off and judge in two lights"),
        ("L10", "the tool, or the product, or the number of passes. Going from polish to paper counts as one"),
        ("L10", "a wool set levels 75 % of what it removes, finishing foam 40 %. Both shares are common practice"),
        ("L10", "Oxidation counts as a layer:"),
        ("L10", "Scratches count as valleys:"),
        ("L10", "up to 3.5 model µm on average, clears by polishing alone. At 8 to 9 about two thirds are left"),
        ("L10", "That wants one stage of P1500 first"),
        ("L10", "How deep it goes can’t be seen, only tried"),
        ("L10", "Repeat the spot on the darkest panel and on the sunniest one"),
        ("L10", "Press the test button of the residual-current device: it has to trip"),
        ("L11", "The budget is for the life of the panel, not for this visit"),
        ("L11", "what old invoices tell of, is spent"),
        ("L11", "Budget: may go, over the whole life 60 µm 8 µm Reserve: has to stay 250 µm 30 µm"),
        ("L11", "about 305 µm to hide what is below it. So when a gel coat reads 260 µm, ask why"),
        ("L11", "no plan for a clear coat stands on such a figure"),
        ("L11", "are said to allow 7.5 µm to 12 µm of clear coat. We have that second hand"),
        ("L11", "most of what stops ultraviolet sits high up, so a thin clear is a short-lived one"),
        ("L11", "up to 2.5 times the wear, by common practice"),
        ("L11", "can’t defend 260 µm against 250 µm"),
        ("L11", "Leave it, or take one finishing set, and say why"),
        ("L11", "A missing reading is a question, not a guess. So is a missing history"),
        ("L11", "they cut 16.6, and in our training model the scratch is still open on 44 %"),
        ("L11", "A referral costs no film"),
        ("L11", "Write down what you took"),
        ("L11", "Without a reading of the layer you mean to cut, no paper touches it"),
        ("L12", "P600 25.8 P800 21.8 P1000 18.3 P1200 15.3 P1500 12.6 P2000 10.3 P2500 8.4"),
        ("L12", "“600” there is about P1200, “400” about P800"),
        ("L12", "Up to 1.5 is an easy step, 2 is the limit. Both are common practice"),
        (
            "L12",
            "P1000 → P1500 1.45 easy P1500 → P2000 1.22 easy P1000 → P2000 1.78 inside the limit P800 → P2000 2.12",
        ),
        ("L12", "it is 1.7 times the mean depth"),
        ("L12", "P1500 is the coarsest grade that one heavy wool set clears, P2000 the coarsest for one medium set"),
        ("L12", "a stray of 2.2 model µm is left, and the verdict is “redo”"),
        ("L12", "Skipping isn’t a sin. Leaving strays is"),
        ("L12", "Turn by 90° with each grade, and go on until no line of the grade before is left"),
        ("L12", "P3000 and beyond are extrapolated by us. Use them to compare, never as a size"),
        ("L12", "the maker’s own number. They aren’t P grades"),
        ("L12", "Sand wet: dry dust of gel coat and old paint is nothing to breathe"),
        ("L13", "the customer’s words, and a number beside them"),
        ("L13", "clear plastic, vinyl, wrap, two-pack, bare metal, teak, non-skid, and every stop sign"),
        ("L13", "Each with what covers it"),
        ("L13", "Dry and look after each grade, after each section, and after each surprise"),
        ("L13", "Read the verdict first. Harm can’t be undone, whatever the gloss says"),
        ("L13", "P1000 × 4, P1500 × 4, P2000 × 3, then polish 31.6 pass"),
        ("L13", "the same 31.6 harm: over 8 times the need"),
        ("L13", "flat backing across letters and surround together. It rides on the letters first"),
        ("L13", "P1500 × 4, then P2000 × 3, then polish, 19.5 model µm in all. Stop when raking light shows no edge"),
        (
            "L13",
            "a finishing foam, on a dual action or turned finely on a rotary. The trail is then 0.05 model µm or less",
        ),
        ("L13", "P1500, four passes 9 heavy or medium set, rotary 15 finishing set, dual action 23"),
        ("L13", "About 65 % of that the machine is on the panel"),
        ("L13", "In writing: “C2 not treated: star crack. The stripe below stays as it is.”"),
        ("L13", "First the readings, the kit, the air and the people round you"),
    ],
)
def test_every_point_of_the_curriculum_is_taught(code, said):
    assert said in plain(code)
