"""The door to a proof: `prove [CODE…] --seeds N --json`."""

from typing import Any

from django.core.management.base import CommandParser
from tqdm import tqdm

from assessments.management.numbers import whole_number
from assessments.marking import Proof, prove
from assessments.scenarios.spec import Scenario
from assessments.shipped import marker, scenario, scenarios
from courses.management.door import Door


class Command(Door):
    """Tries every exemplar of scenarios on many draws."""

    help = "Prove scenarios on many draws, such as: prove COA-01 --seeds 200. Without a code, every one."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("codes", nargs="*", help="scenarios such as COA-01 or COA-01@1")
        parser.add_argument("--seeds", required=True, help="how many draws to try of each")
        parser.add_argument("--json", action="store_true", help="answer in JSON")

    def answer(self, **options: Any) -> object:
        seeds = whole_number("--seeds", options["seeds"], least=1, most=100_000)
        proofs = [self._proof(one, seeds) for one in _chosen(options["codes"])]
        if not all(proof.clean for proof in proofs):
            self.wanting()
        if options["json"]:
            return {"seeds": seeds, "scenarios": [proof.as_json() for proof in proofs]}
        return "\n".join(line for proof in proofs for line in proof.in_words())

    def _proof(self, one: Scenario, seeds: int) -> Proof:
        with tqdm(total=seeds, desc=one.ref, unit=" draws", leave=False, disable=None, file=self.stderr) as progress:
            return prove(marker(one.ref), seeds, progress.update)


def _chosen(codes: list[str]) -> list[Scenario]:
    """Return what was named, every version of a bare code; all of them where nothing was."""
    for code in codes:
        scenario(code)
    return [one for one in scenarios().values() if not codes or not {one.code, one.ref}.isdisjoint(codes)]
