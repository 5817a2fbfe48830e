"""Steps that the plans of several keys are made of, as the door ``simulate`` takes them.

What a step leaves unsaid (pad, machine, speeds, force) is filled in by the simulator.
"""

from collections.abc import Iterable, Mapping

Step = dict[str, object]


def acts(*ops: str) -> list[Step]:
    """Return one step for each op, with nothing more said of it.

    >>> acts("wash", "tape")
    [{'op': 'wash'}, {'op': 'tape'}]
    """
    return [{"op": op} for op in ops]


def sanded(*stages: tuple[str, int]) -> list[Step]:
    """Return sanding steps, each a grade and its passes, dried and inspected one by one.

    >>> [step["op"] for step in sanded(("P1500", 4), ("P2000", 3))]
    ['sand', 'dry', 'inspect', 'sand', 'dry', 'inspect']
    """
    each = ([{"op": "sand", "grade": grade, "passes": passes}, *acts("dry", "inspect")] for grade, passes in stages)
    return [step for stage in each for step in stage]


def polished(*ops: str) -> list[Step]:
    """Return polishing steps, each wiped with solvent.

    >>> polished("finish")
    [{'op': 'finish'}, {'op': 'wipe'}]
    """
    return [step for op in ops for step in acts(op, "wipe")]


def in_zone(zone: str, steps: Iterable[Mapping[str, object]]) -> list[Step]:
    """Return the same steps, each in one zone.

    >>> in_zone("rest", acts("cut"))
    [{'op': 'cut', 'zone': 'rest'}]
    """
    return [{**step, "zone": zone} for step in steps]
