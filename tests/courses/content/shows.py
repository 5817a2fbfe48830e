"""The finder `what_shows` from the measured table: `python -m tests.courses.content.shows` after a new measurement."""

from collections import defaultdict
from collections.abc import Iterable
from itertools import product
from pathlib import Path

from courses.pictures.contrast import Contrast, Entry, read_contrast

TRADE = Path(__file__).parents[3] / "fixtures/trade"
MIDDLING = 0.6
"""The severity of a mark of middling strength, of which finder and lesson speak."""
MARKS = {
    "swirl": "swirls",
    "hologram": "holograms",
    "da_haze": "haze of a dual action",
    "scratch": "a single scratch",
    "sanding_marks": "sanding marks",
    "oxidation": "oxidation",
    "decal_ghost": "the ghost of old lettering",
    "tannin_stain": "a tannin stain",
    "water_spots_mineral": "water spots on top",
    "water_spots_etched": "water spots eaten in",
    "crack_star": "a star crack",
    "blisters": "blisters",
    "run": "a run",
    "high_spot": "a high spot of a coating",
}
COLOURS = {colour: colour for colour in ("white", "grey", "red", "navy", "black")}
LIGHTS = {"diffuse": "diffuse light", "point": "the light of a point lamp", "raking": "raking light"}
SAID = {
    "Stands out.": "You can judge it here. Look in the other two lights all the same.",
    "Faint.": "What you see counts. What you don’t see doesn’t: change the light before you write “none”.",
    "Not visible.": "Don’t judge it here. Write “not visible here”, never “none”, and change the light.",
}
HEAD = """code = "what_shows"
title = "What shows in this light"
about = "Say what you look for, on what colour, in which light. It holds for a mark of middling strength in our \
pictures, not for your shop: try it on a panel you know."
"""


def word(entry: Entry) -> str:
    """How a mark shows, as the finder says it."""
    return "Stands out." if entry.askable else "Not visible." if entry.unseen else "Faint."


def finder_text(contrast: Contrast) -> str:
    """The finder as a file: marks that show alike, on colours and in lights that are alike, share a row."""
    choices = (("mark", "You look for", MARKS), ("colour", "On", COLOURS), ("light", "In", LIGHTS))
    blocks = [HEAD, *(_choice(*choice) for choice in choices)]
    blocks += [
        '\n[[result]]\nname = "shows"\ntitle = "In our pictures it"\n',
        '\n[[result]]\nname = "act"\ntitle = "So"\n',
    ]
    alike: dict[tuple[str, tuple[str, ...], str], list[str]] = defaultdict(list)
    for light, colour in product(LIGHTS, COLOURS):
        by_word = defaultdict(list)
        for mark in MARKS:
            by_word[word(contrast.of(mark, colour, light, MIDDLING))].append(mark)
        for said, marks in by_word.items():
            alike[said, tuple(marks), light].append(colour)
    rows = [_row(said, marks, colours, light) for (said, marks, light), colours in alike.items()]
    return "".join(blocks + rows)


def _choice(name: str, title: str, options: dict[str, str]) -> str:
    lines = "".join(f'    {{ id = "{code}", text = "{words}" }},\n' for code, words in options.items())
    return f'\n[[choice]]\nname = "{name}"\ntitle = "{title}"\noptions = [\n{lines}]\n'


def _row(said: str, marks: Iterable[str], colours: Iterable[str], light: str) -> str:
    when = f'{{ mark = {_listed(marks)}, colour = {_listed(colours)}, light = "{light}" }}'
    then = f'{{ shows = "{said}", act = "{SAID[said]}" }}'
    return f'\n[[row]]\nwhen = {when}\nthen = {then}\nsource = "our-pictures"\nmark = "model"\n'


def _listed(codes: Iterable[str]) -> str:
    quoted = (f'"{code}"' for code in codes)
    return f"[{', '.join(quoted)}]"


def figure(contrast: Contrast, mark: str, colour: str, light: str) -> str:
    """The contrast of a middling mark as a lesson writes it: a decimal under 10."""
    cnr = contrast.of(mark, colour, light, MIDDLING).cnr
    return f"{cnr:.0f}" if cnr >= 9.95 else f"{cnr:.1f}"


def measured() -> Contrast:
    """The measured table that is shipped."""
    return read_contrast((TRADE / "contrast.toml").read_text(), "contrast.toml")


if __name__ == "__main__":
    table = measured()
    (TRADE / "what_shows.toml").write_text(finder_text(table))
    for mark, colour, light in product(("swirl", "crack_star", "blisters"), ("white", "black"), LIGHTS):
        print(mark, colour, light, figure(table, mark, colour, light))
