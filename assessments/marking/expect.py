"""An exemplar as it came out: what an author who is asked may call right."""

from dataclasses import replace

from assessments.marking.exemplars import drawn_case, trials
from assessments.marking.mark import Marker, mark
from assessments.scenarios.draw import draw, key_of
from assessments.scenarios.spec import Exemplar


def as_it_came(marker: Marker, name: str, seeds: int) -> Exemplar | None:
    """Return an exemplar with the outcomes and the rules not met that it had on the draws of seeds 1 to ``seeds``.

    ``exactly`` holds where the same rules were not met on every draw; otherwise those that always were. None where
    no exemplar of that name applied to any of the draws.
    """
    outcomes: dict[str, None] = {}
    missed: list[frozenset[str]] = []
    for seed in range(1, seeds + 1):
        facts = draw(marker.scenario, seed).facts
        key = key_of(marker.scenario, facts)
        for trial in trials(marker.expressions, key, drawn_case(marker.scenario, facts, key)):
            if trial.name == name:
                marked = mark(marker, facts, trial.answers, key)
                outcomes[marked.outcome] = None
                missed.append(frozenset(one.code for one in marked.findings if one.verdict == "not_met"))
    written = next((one for one in marker.scenario.exemplars if one.name == name), None)
    if written is None or not missed:
        return None
    always = frozenset.intersection(*missed)
    order = [rule.code for rule in marker.book.book.rules if rule.code in always]
    return replace(written, outcomes=tuple(outcomes), not_met=tuple(order), exactly=len(set(missed)) == 1)
