"""The door to judging again: `rejudge CODE[@VERSION] [--book N] [--apply --reason WORDS] [--json]`."""

from typing import Any

from django.core.management.base import CommandParser
from django.utils import timezone
from tqdm import tqdm

from assessments.errors import AttemptRefused
from assessments.management.numbers import whole_number
from assessments.models import RuleBook, Scenario
from assessments.rejudging import Change, apply_change, changes, judged_otherwise
from courses.management.door import Door, DoorError
from courses.trade.errors import offer


class Command(Door):
    """Shows which verdicts a rule book would change; changes them only when told to, with a reason."""

    help = "Show which verdicts the rule book in use would change, such as: rejudge COA-01. --apply files them anew."

    def add_arguments(self, parser: CommandParser) -> None:
        parser.add_argument("code", help="the scenario, such as COA-01 or COA-01@1")
        parser.add_argument("--book", metavar="N", help="the version of the rule book; without it, the one in use")
        parser.add_argument("--apply", action="store_true", help="file what changes, beside what it came to before")
        parser.add_argument("--reason", default="", help="why; it stays on every record that changes")
        parser.add_argument("--json", action="store_true", help="answer in JSON")

    def answer(self, **options: Any) -> object:
        scenario = _scenario(options["code"])
        book = _book(scenario, options["book"])
        reason = options["reason"].strip()
        if options["apply"] and not reason:
            raise DoorError("--apply needs --reason: write why, in quotes; it stays on every record that changes.")
        if reason and not options["apply"]:
            raise DoorError("--reason goes with --apply; without it nothing is changed.")
        waiting = judged_otherwise(book).count()
        found = self._looked(book, waiting)
        applied, passed = self._filed(found, book, reason) if options["apply"] else (0, 0)
        if options["json"]:
            return _said(scenario, book, waiting, found, applied, passed)
        return "\n".join(_lines(scenario, book, waiting, found, applied, passed))

    def _looked(self, book: RuleBook, waiting: int) -> list[Change]:
        bar = tqdm(total=waiting, desc=f"{book}", unit=" attempts", leave=False, disable=None, file=self.stderr)
        with bar as progress:
            return list(changes(book, progress.update))

    def _filed(self, found: list[Change], book: RuleBook, reason: str) -> tuple[int, int]:
        """File each change by itself, so that a run that broke off can be run again; return how many, and passed by."""
        applied = passed = 0
        now = timezone.now()
        for change in tqdm(found, desc="filed", unit=" attempts", leave=False, disable=None, file=self.stderr):
            try:
                apply_change(change, book, reason=reason, now=now)
                applied += 1
            except AttemptRefused:  # somebody else judged it again in this very moment
                passed += 1
        return applied, passed


def _scenario(ref: str) -> Scenario:
    """Return the scenario of a code, its newest version, or of a code with a version."""
    code, at, version = ref.partition("@")
    rows = Scenario.objects.filter(code=code).select_related("rule_book").order_by("version")
    if at and version.isascii() and version.isdigit() and len(version) < 10:
        rows = rows.filter(version=int(version))
    row = rows.last() if not at or version.isdigit() else None
    if row is None:
        names = sorted(f"{one}" for one in Scenario.objects.all())
        raise DoorError(f"No scenario here is called {ref!r}; {offer(ref, names)}")
    return row


def _book(scenario: Scenario, number: str | None) -> RuleBook:
    if number is None:
        return scenario.rule_book
    version = whole_number("--book", number, least=1)
    books = RuleBook.objects.filter(code=scenario.code, scenario_version=scenario.version)
    book = books.filter(version=version).first()
    if book is None:
        known = ", ".join(str(one.version) for one in books)
        raise DoorError(f"--book is {version}; the versions that mark {scenario} are {known}.")
    return book


def _said(
    scenario: Scenario, book: RuleBook, waiting: int, found: list[Change], applied: int, passed: int
) -> dict[str, object]:
    return {
        "scenario": scenario.code,
        "version": scenario.version,
        "book": book.version,
        "digest": book.digest,
        "judged": waiting,
        "changes": [one.as_json() for one in found],
        "applied": applied,
        "passed_by": passed,
    }


def _lines(
    scenario: Scenario, book: RuleBook, waiting: int, found: list[Change], applied: int, passed: int
) -> list[str]:
    lines = [
        f"{scenario}, rule book {book.version}: {waiting} judged by another version, "
        f"{len(found)} would come out otherwise."
    ]
    for one in found:
        was, now = one.was, one.now
        rules = ", ".join(f"{each.code} {each.was or 'none'} -> {each.now or 'none'}" for each in one.rules)
        came = f"{was.outcome} {was.points:g}/{was.of:g} -> {now.outcome} {now.points:g}/{now.of:g}"
        lines.append(f"  {one.evidence.attempt_id} {one.evidence.mode}: {came}; {rules or 'in points alone'}")
    if applied or passed:
        lines.append(f"{applied} filed anew, beside what they came to before; {passed} passed by.")
    elif found:
        lines.append('Nothing is changed. To file them anew: add --apply --reason "why".')
    return lines
