"""Plans by chance for the figures, and what holds for every drawing."""

from itertools import combinations

from hypothesis import strategies as st

from courses.figures import FilmStep
from courses.figures.drawing import Box, Drawing

DEPTHS = st.one_of(st.just(0.0), st.floats(0.0, 12.0), st.just(400.0))
NAMES = st.sampled_from(
    [
        "Wash",
        "Inspect, in two lights",
        "Sand P1500, 4 passes, hard disc, the bow",
        "Cut with compound, wool, until clear",
    ]
)


@st.composite
def steps(draw, film: float, most: int = 12) -> list[FilmStep]:
    """Steps that take the film down, some to nothing, and leave marks of any depth."""
    plan = []
    for number in range(1, draw(st.integers(0, most)) + 1):
        film = max(film - draw(st.one_of(st.just(0.0), st.floats(0.0, 9.0), st.floats(0.0, 90.0))), 0.0)
        marks = [("swirls", draw(DEPTHS)), ("a scratch", draw(DEPTHS))]
        plan.append(FilmStep(draw(NAMES), film, marks, draw(DEPTHS), number=number))
    return plan


@st.composite
def films(draw) -> dict[str, object]:
    """Everything that a section takes, for gel coat and clear coat, thick and thin."""
    film = draw(st.sampled_from([0.0, 8.0, 45.0, 120.0, 280.0, 500.0]))
    reserve = draw(st.sampled_from([0.0, 6.0, 30.0, 250.0]))
    budget = draw(st.sampled_from([None, 0.0, 8.0, 60.0]))
    return {"film_um": film, "reserve_um": reserve, "budget_um": budget, "steps": draw(steps(film))}


def holds(outer: Drawing, box: Box) -> bool:
    """Whether a box lies inside the drawing, but for half a line."""
    within = box.x >= -0.01 and box.right <= outer.width + 0.01
    return within and box.y >= -0.01 and box.bottom <= outer.height + 0.01 and min(box.width, box.height) >= 0


def overlap(one: Box, other: Box) -> bool:
    """Whether two boxes share room."""
    beside = one.right <= other.x + 0.01 or other.right <= one.x + 0.01
    return not (beside or one.bottom <= other.y + 0.01 or other.bottom <= one.y + 0.01)


def faults(drawing: Drawing) -> list[str]:
    """What leaves a drawing, and which words stand on each other."""
    out = [f"{mark.look} {mark.box} leaves the drawing" for mark in drawing.marks if not holds(drawing, mark.box)]
    out += [f"{words} leaves the drawing" for words in drawing.words if not holds(drawing, words.box)]
    pairs = combinations(drawing.words, 2)
    return out + [f"{one.text} on {other.text}" for one, other in pairs if overlap(one.box, other.box)]
