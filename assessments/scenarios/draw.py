"""Drawing: one seed, one set of facts, always the same. The only place where chance enters.

A kind is drawn first by its weight; inside it the rest is drawn again until nothing throws it away.
"""

import random
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from assessments.scenarios.chance import Chance
from assessments.scenarios.errors import DrawNeverSettled, SpecRefused
from assessments.scenarios.fields import Record
from assessments.scenarios.register import sketch_of
from assessments.scenarios.shown import Shop, Shown, ZoneCells, unfit, zone_key, zones_in
from assessments.scenarios.sketch import Thrown
from assessments.scenarios.spec import Kind, Scenario
from assessments.scenarios.story import metric, model_text
from courses.trade.surface import PanelSurface, needed_cut

MOST_TRIES: Final = 20_000


@dataclass(frozen=True, slots=True)
class Drawn:
    """Facts that were kept, the seed and kind they came from, and how many tries it took."""

    scenario: Scenario
    seed: int | str
    kind: str
    facts: Record
    tries: int


def draw(scenario: Scenario, seed: int | str) -> Drawn:
    """Return the facts that ``seed`` draws of this scenario; raise DrawNeverSettled where every try is thrown away.

    The seed is a whole number at the doors; the site hands in a secret text of its own.
    """
    # Not a secret: the secret is the seed. What matters is that every Python gives the same stream.
    chance = Chance(random.Random(f"{scenario.code}/{scenario.version}/{seed}").random)  # noqa: S311
    name = chance.weighted({kind.name: kind.weight for kind in scenario.kinds})
    kind = next(kind for kind in scenario.kinds if kind.name == name)
    facts, tries = _settled(scenario, kind, chance)
    return Drawn(scenario, seed, kind.name, facts, tries)


def key_of(scenario: Scenario, facts: Record) -> Record:
    """Return the key worked from facts: an answer to every task, and the numbers beside them."""
    worked = dict(sketch_of(scenario).key(facts))
    zoned = scenario.the("zones")
    if zoned:
        worked |= zone_key(zoned, zones_of(scenario, facts))
    if scenario.the("plan"):
        worked["needed_cut"] = round(needed_cut(surface_of(scenario, facts), shop_of(scenario).constants), 1)
    for task in scenario.tasks:
        if task.model:
            worked[task.id] = model_text(scenario, task, facts, worked, metric)
    return Record.of(scenario.key_fields, worked, where="key")


def pictures_of(scenario: Scenario, facts: Record) -> Mapping[str, Shown]:
    """Return the pictures of these facts by name."""
    return {shown.name: shown for shown in sketch_of(scenario).pictures(facts)}


def zones_of(scenario: Scenario, facts: Record) -> tuple[ZoneCells, ...]:
    """Return the zones of the picture that is marked, with their cells; none where no task asks for zones."""
    zoned = scenario.the("zones")
    return zones_in(pictures_of(scenario, facts)[zoned.picture], shop_of(scenario)) if zoned else ()


def surface_of(scenario: Scenario, facts: Record) -> PanelSurface:
    """Return the panel that plans are worked on."""
    shop = shop_of(scenario)
    return PanelSurface.of(sketch_of(scenario).surface(facts), shop.catalogue, shop.constants)


def shop_of(scenario: Scenario) -> Shop:
    """Return what is known of pictures; raise SpecRefused where the scenario was read without it."""
    if scenario.shop is None:
        raise SpecRefused(f"{scenario.ref} was read without the tables its pictures need.")
    return scenario.shop


def answer_key(scenario: Scenario, key: Mapping[str, object]) -> Record:
    """Return the part of a key that is an answer: one value for each task."""
    fields = tuple(task.as_field() for task in scenario.tasks)
    return Record.of(fields, {field.name: key[field.name] for field in fields}, where="key")


def _settled(scenario: Scenario, kind: Kind, chance: Chance) -> tuple[Record, int]:
    sketch = sketch_of(scenario)
    thrown: Counter[str] = Counter()
    for tries in range(1, MOST_TRIES + 1):
        drawn = sketch.draw(chance, kind)
        kept = drawn if isinstance(drawn, Thrown) else _fit(scenario, Record.of(scenario.facts, drawn))
        if not isinstance(kept, Thrown):
            return kept, tries
        thrown[kept.why] += 1
    most = ", ".join(f"{why} ({times} times)" for why, times in thrown.most_common(3))
    raise DrawNeverSettled(
        f"{scenario.ref}: no draw of kind '{kind.name}' stood in {MOST_TRIES} tries; thrown away because: {most}."
    )


def _fit(scenario: Scenario, facts: Record) -> Record | Thrown:
    """Return the facts if all their pictures can be asked about, else why one of them can't."""
    found = (unfit(shown, shop_of(scenario)) for shown in pictures_of(scenario, facts).values())
    why = next((one for one in found if one), None)
    return Thrown(why) if why else facts
