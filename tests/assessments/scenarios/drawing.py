"""What the tests of drawn scenarios share: many draws, figures held against printed ranges, pictures that stand."""

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from math import sqrt
from typing import Any

from assessments import shipped
from assessments.scenarios.draw import Drawn, draw, pictures_of
from assessments.scenarios.fields import Record
from assessments.scenarios.story import metric, story, told
from courses.pictures import Scene
from courses.shipped import catalogue

Ranges = Mapping[str, tuple[float, float]]


def draws(ref: str, seeds: int) -> list[Drawn]:
    """The draws of the first seeds of a shipped scenario."""
    return [draw(shipped.scenario(ref), seed) for seed in range(seeds)]


def assert_inside(facts: Record, ranges: Ranges) -> None:
    """Hold figures against printed ranges, both ends included."""
    for name, (low, high) in ranges.items():
        assert low - 1e-9 <= facts.number(name) <= high + 1e-9, (name, facts[name])


def assert_shares(drawn: Sequence[Drawn], says: Callable[[Drawn], object], shares: Mapping[Any, float]) -> None:
    """Hold how often each answer came against its printed share, within four standard errors."""
    seen = Counter(says(one) for one in drawn)
    assert set(seen) == set(shares)
    for answer, share in shares.items():
        doubt = 4 * sqrt(share * (1 - share) * len(drawn))
        assert abs(seen[answer] - share * len(drawn)) <= doubt, (answer, seen)


def assert_pictures_stand(drawn: Drawn) -> None:
    """Every picture of a draw is a scene that can be rendered, and every picture of the file is drawn."""
    shown = pictures_of(drawn.scenario, drawn.facts)
    assert set(shown) == {picture.name for picture in drawn.scenario.pictures}
    for one in shown.values():
        scene = Scene.of(one.scene, catalogue())
        assert all(place < len(scene.defects) for place in (*one.seen, *one.sought, *one.unseen))
        assert all(0 < x < 1 and 0 < y < 1 for x, y in one.lamps)


def told_by(drawn: Drawn, reading: str, *others: str) -> str:
    """What a reading tells on a draw, with others asked for as well."""
    asked = drawn.scenario.the("ask")
    assert asked
    return told(asked.reading(reading).tells, drawn.facts, drawn.scenario.facts, metric, (reading, *others))


def assert_everything_is_told(drawn: Drawn) -> None:
    """No slot of the story is left open; every reading tells something, alone and beside all others."""
    paragraphs = story(drawn.scenario, drawn.facts, metric)
    assert len(paragraphs) == len(drawn.scenario.story)
    asked = drawn.scenario.the("ask")
    readings = asked.option_ids if asked else ()
    said = [told_by(drawn, one, *others) for one in readings for others in ((), readings)]
    assert all(said)
    assert not [text for text in (*paragraphs, *said) if "{" in text or "  " in text]


def assert_captions_tell_nothing(ref: str, words: Sequence[str]) -> None:
    """No caption and no text for those who can't see holds a word that would be the answer."""
    for picture in shipped.scenario(ref).pictures:
        said = f"{picture.caption} {picture.alt}".lower()
        assert not [word for word in words if word in said], said
