"""The door to one rule on one case: `try_rule FILE|-`."""

from typing import Any

from django.core.management.base import CommandParser

from assessments.marking.trade import FUNCTIONS
from assessments.rules import try_rule
from courses.management.door import Door, read_json


class Command(Door):
    """Checks a rule against a schema and tries it on a case; a rule with errors is an answer too."""

    help = "Try a rule, such as: try_rule trial.json, a JSON object of schema, case and rule"

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("file", help='a JSON object {"schema": …, "case": …, "rule": …}; - for standard input')

    def answer(self, **options: Any) -> object:
        return try_rule(read_json(options["file"]), FUNCTIONS)
