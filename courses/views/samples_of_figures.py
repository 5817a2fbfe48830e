"""Samples of the figures of a plan: film kept and film lost, marks cleared and marks left, minutes."""

from typing import Any

from courses.figures import Figure, FilmStep, Load, Rung, film_section, scratch_ladder, workload

LADDER = (
    Rung("Sand P600, 5 passes", 4.3, 7.3, 4.4, 5, 7.3, number=3),
    Rung("Sand P2000, 2 passes", 1.3, 2.2, 1.4, 2, 4.5, number=4),
    Rung("Cut with compound, wool, medium", 0.1, 0.2, 2.25, 2, 0.2, each="set", number=6),
    Rung("Finish, soft foam, fine", 0.03, 0.04, 0.25, 1, 0.04, each="set", number=8),
)


def samples_of_figures() -> dict[str, Any]:
    """Return the figures that the sheet shows."""
    return {
        "film_sections": [crossed(), kept(), long_plan()],
        "ladder": scratch_ladder(LADDER, 15.0),
        "workload": workload(
            [
                Load("Wash", 1.5, number=1),
                Load("Sand P1000, 3 passes, hard disc", 6.8, discs=1.2, number=2),
                Load("Cut with compound, wool, heavy, 3 passes", 15.4, pads=0.3, grams=20.0, number=3),
                Load("Finish, soft foam, fine, dual action", 23.2, pads=0.3, grams=20.0, number=5),
            ]
        ),
    }


def crossed() -> Figure:
    """Return gel coat of which more was spent than the reserve allows."""
    steps = [
        FilmStep("Wash", 291.0, [("chalk", 12.0)], number=1),
        FilmStep("Tape", 291.0, [("chalk", 12.0)], number=2),
        FilmStep("P600, 5 passes", 267.9, stray_um=7.3, number=3),
        FilmStep("P800, 3 passes", 256.7, stray_um=5.9, number=4),
        FilmStep("P1500, 4 passes", 249.2, stray_um=2.9, number=5),
        FilmStep("Inspect", 249.2, stray_um=2.9, number=6),
        FilmStep("Cut, wool, 2 sets", 243.7, stray_um=0.2, trail_um=0.25, number=7),
        FilmStep("Finish, foam, 1 set", 242.9, stray_um=0.04, number=8),
    ]
    return film_section(291.0, 250.0, 60.0, steps, found=[("chalk", 12.0)], name="Navy hull")


def kept() -> Figure:
    """Return clear coat cut inside its budget."""
    found = [("swirls", 1.7), ("a scratch", 6.0)]
    steps = [
        FilmStep("Cut, cutting foam, medium, dual action", 42.3, [("a scratch", 4.2)], stray_um=0.2, number=3),
        FilmStep("Finish, soft foam, fine, dual action", 41.7, [("a scratch", 4.0)], stray_um=0.04, number=5),
    ]
    return film_section(45.0, 30.0, 8.0, steps, found=found, name="Clear coat, the bonnet")


def long_plan() -> Figure:
    """Return a plan with as many steps as one may have, through to nothing."""
    steps = [
        FilmStep(
            "Cut with compound, wool, heavy, until clear", max(48.0 - 1.3 * count, 0.0), stray_um=0.4, number=count
        )
        for count in range(1, 41)
    ]
    return film_section(48.0, 30.0, None, steps, found=[("a crack", 400.0)], name="Forty steps")
